import { words, wordsEs } from '@thrum/server/words'
import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'

/** What reads the same in both languages, or holds English on purpose, and why. */
const sameInBoth = {
  'server/desk/title': 'a name',
}

describe('Spanish words', () => testSpanish(words, wordsEs, sameInBoth))
