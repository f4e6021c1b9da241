import type { Words } from '@thrum/model/ground'

/** What `is-design-sound` says, in English. ICU message texts by id. */
export const words: Words = {
  'questions/is-design-sound/title': 'the audit alone, before or after counting',
  'questions/is-design-sound/asked': 'Can this design carry the comparison: {contrast}?',
  'questions/is-design-sound/headline/sound':
    'The design carries this comparison: {arms}; nothing that was recorded is tangled with it.',
  'questions/is-design-sound/headline/warned':
    'The design carries this comparison, with {warnings, plural, one {one warning} other {# warnings}}: {arms}.',
  'questions/is-design-sound/headline/blocked': 'The design cannot carry this comparison: {reasons}.',
  'questions/is-design-sound/arm': '{fields, plural, =0 {no field} one {one field} other {# fields}} with {level}',
  'questions/is-design-sound/pairs': '{fields, plural, =0 {no field} one {one field} other {# fields}} with all of {levels}',
  'questions/is-design-sound/can-say/design': 'The comparison rests on {watches} watches: {arms}.',
  'questions/is-design-sound/can-say/describe': 'What was counted in these fields, on these days, as a description.',
  'questions/is-design-sound/can-say/planned': 'What would be counted, and where. Nothing has been counted yet.',
  'questions/is-design-sound/can-say/compare': 'A difference in {contrast}, if one is shown, with the cautions below.',
  'questions/is-design-sound/cannot-say/credit': 'That a difference comes from {contrast}.',
  'questions/is-design-sound/cannot-say/enough':
    'That there are enough fields to show a difference: that depends on how much fields scatter.',
}
