import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'
import { words as figureWords } from '../src/figure/words.en.ts'
import { words as figureWordsEs } from '../src/figure/words.es.ts'
import { words as reportWords } from '../src/words.en.ts'
import { words as reportWordsEs } from '../src/words.es.ts'

/** What reads the same in both languages, or holds English on purpose, and why. */
const sameInBoth = {
  'report/fit/row-scatter': 'blanks alone',
  'report/fit/row-scatter/none': 'blanks alone',
  'report/fit/small-p': 'blanks alone',
  'report/table-of/values': 'blanks alone',
  'report/figure/level': 'a share',
  'report/figure/intervals/told': 'blanks alone',
  'report/figure/intervals/told/none': 'blanks alone',
  'report/figure/column/n': 'the letter of a sample size',
}

describe('Spanish words', () =>
  testSpanish({ ...reportWords, ...figureWords }, { ...reportWordsEs, ...figureWordsEs }, sameInBoth))
