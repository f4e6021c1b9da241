import type { Words } from '@thrum/model/ground'

/** What `who-visits` says, in English. ICU message texts by id. */
export const words: Words = {
  'questions/who-visits/title': 'rates and shares per kind, by field, stage or season',
  'questions/who-visits/asked': 'Who visits, and how much ({kinds}{grouped, select, yes {; by {by}} other {}})?',
  'questions/who-visits/headline/rate': 'Most frequent: {rate}.',
  'questions/who-visits/headline/rate-and-share':
    'Most frequent: {rate}; {share, number, ::scale/100 @@}\u00a0% of all visitors ({low, number, ::scale/100 @@}\u00a0% to {high, number, ::scale/100 @@}\u00a0%).',
  'questions/who-visits/headline/none': 'None of these kinds was counted in {counts, plural, one {one watch} other {# watches}}.',
  'questions/who-visits/headline/groups': '{counts} counts in {groups} groups; the rates stand below.',
  'questions/who-visits/headline/blocked': 'No rate can be given: {reasons}. Shares among what was seen stand below.',
  'questions/who-visits/rate/fields':
    '{kind} {value, number, ::@@@} {unit} ({low, number, ::@@@} to {high, number, ::@@@}; {n} fields)',
  'questions/who-visits/rate/watches':
    '{kind} {value, number, ::@@@} {unit} ({low, number, ::@@@} to {high, number, ::@@@}; {n, plural, one {one watch} other {# watches}}, these minutes only)',
  'questions/who-visits/rate/none': '{kind}: none seen, at most {high, number, ::@@@} {unit}',
  'questions/who-visits/can-say/counted':
    '{named, select, yes {{group}: } other {}}In {watches, plural, one {one watch} other {# watches}} of {fields, plural, one {one field} other {# fields}} we counted {each}.',
  'questions/who-visits/can-say/total': '{kind} {total}',
  'questions/who-visits/can-say/rates': '{named, select, yes {{group}: } other {}}{each}.',
  'questions/who-visits/can-say/shares-fields':
    '{named, select, yes {{group}: of} other {Of}} all {among, select, sightings {sightings} other {visitors}}, over fields: {each}.',
  'questions/who-visits/can-say/shares-watches':
    '{named, select, yes {{group}: of} other {Of}} all {among, select, sightings {sightings} other {visitors counted}}, in these watches only: {each}.',
  'questions/who-visits/cannot-say/rate': 'How many visited per hour.',
  'questions/who-visits/cannot-say/other-fields':
    'What the rate is in other fields: with fewer than three fields the interval holds for these minutes only.',
  'questions/who-visits/cannot-say/pollinates': 'How much of the pollination each kind does: visits are not pollination.',
  'questions/who-visits/cannot-say/difference':
    'That groups differ: compare them with what-differs, which looks at the design first.',
  'questions/who-visits/next/fields':
    '{more, plural, one {One more field} other {# more fields}} would let the rate speak for fields like these.',
  'questions/who-visits/next/few-fields': '{fields} fields carry the interval; more fields narrow it, more minutes hardly.',
  'questions/who-visits/next/compare': 'To compare groups, ask what-differs.',
}
