import type { Words } from '@thrum/model/ground'

/** What a person reads before accepting a sheet. */
export const previewWords: Words = {
  'exchange/preview/rows':
    '{read, plural, one {# row} other {# rows}} read: {accepted} accepted, {waiting} waiting for an answer, {refused} set aside with the reason. Nothing was dropped.',
  'exchange/preview/watches':
    '{counts, plural, one {# watch} other {# watches}}, {minutes} minutes in all, {fields, plural, =0 {no field named} one {# field} other {# fields}}{days, plural, =0 {, no date} =1 {, on {first}} other {, on # days from {first} to {last}}}.',
  'exchange/preview/no-effort': 'How long the watches lasted is not recorded: shares can be told, rates cannot.',
  'exchange/preview/kind':
    '{kind}: {total}. {clean, plural, one {# number is} other {# numbers are}} clean{marked, plural, =0 {} one {, # is usable with a mark} other {, # are usable with a mark}}{waiting, plural, =0 {} one {, # needs an answer from you} other {, # need an answer from you}}{missing, plural, =0 {} one {, # is missing} other {, # are missing}}.',
  'exchange/preview/row': 'Line {line}: {cells}.',
  'exchange/preview/shown':
    '{column}: "{written}" is read as {printed} ({because}){cells, plural, one {.} other {, in # cells.}}',
  'exchange/preview/more-shown': '{more, plural, one {# more reading of this sort.} other {# more readings of this sort.}}',
  'exchange/preview/cell-waits': 'Line {line}, {column}: "{written}" waits: {because}',
  'exchange/preview/row-waits': 'Line {line} waits: {because}',
  'exchange/preview/row-refused': 'Line {line} is set aside: {because}.',
  'exchange/preview/more-waiting':
    '{more, plural, one {# more line waits or is set aside.} other {# more lines wait or are set aside.}}',
}
