import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'
import { words } from '../src/words.en.ts'
import { words as wordsEs } from '../src/words.es.ts'

describe('Spanish words', () => testSpanish(words, wordsEs, {}))
