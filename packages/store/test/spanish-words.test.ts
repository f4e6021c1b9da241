import { words, wordsEs } from '@thrum/store'
import { describe } from 'vitest'
import { testSpanish } from '../../model/test/translated.ts'

describe('Spanish words', () => testSpanish(words, wordsEs, {}))
