import { words, wordsEs } from '@thrum/exchange'
import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'

/** What reads the same in both languages, or holds English on purpose, and why. */
const sameInBoth = {
  'exchange/typed/refused/remedy': 'words that are typed',
}

describe('Spanish words', () => testSpanish(words, wordsEs, sameInBoth))
