import { questionsWords, questionsWordsEs } from '@thrum/questions'
import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'

/** What reads the same in both languages, or holds English on purpose, and why. */
const sameInBoth = {
  text: 'blanks alone',
  'questions/fit/choice/reference': 'blanks alone',
  'questions/fit/levels-together': 'blanks alone',
  'questions/fit/part/level': 'blanks alone',
  'questions/fit/part/number': 'blanks alone',
  'questions/fit/part/together': 'blanks alone',
  'questions/fit/scatter/dispersion-beta-binomial': 'a sign',
  'questions/fit/scatter/dispersion-nb1': 'a sign',
  'questions/fit/scatter/dispersion-nb2': 'a sign',
  'questions/headline/with-notes': 'blanks alone',
  'questions/contrast/levels': 'blanks alone',
  'questions/cause/level': 'blanks alone',
  'questions/estimate/ratio': 'blanks alone',
  'questions/estimate/ratio-90': 'blanks and a number',
  'questions/estimate/rate': 'blanks alone',
  'questions/check/holm-one': 'blanks alone',
  'questions/analyses/missing/one': 'blanks alone',
  'questions/analyses/and': 'blanks alone',
  'questions/analyses/row': 'blanks alone',
  'questions/who-visits/can-say/total': 'blanks alone',
  'questions/who-visits/can-say/rates': 'blanks alone',
  'questions/model-checks/label/value': 'blanks alone',
  'questions/model-checks/label/level': 'blanks alone',
  'questions/model-checks/label/date': 'blanks alone',
  'questions/option/between': 'names that are typed',
  'questions/option/by': 'names that are typed',
  'questions/option/window': 'words that are typed',
}

describe('Spanish words', () => testSpanish(questionsWords, questionsWordsEs, sameInBoth))
