import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'
import { words } from '../src/say/words.en.ts'
import { words as wordsEs } from '../src/say/words.es.ts'

/** What reads the same in both languages, or holds English on purpose, and why. */
const sameInBoth = {
  'desk/sentence/more/who-visits': 'blanks alone',
  'desk/sentence/more/what-differs': 'blanks alone',
  'desk/sentence/more/is-design-sound': 'blanks alone',
  'desk/sentence/more/kinds': 'blanks alone',
  'desk/blank/worth/told': 'a number',
  'desk/mark/approximate': 'a sign and a blank',
  'desk/mark/atLeast': 'a sign and a blank',
  'desk/mark/atMost': 'a sign and a blank',
}

describe('Spanish words', () => testSpanish(words, wordsEs, sameInBoth))
