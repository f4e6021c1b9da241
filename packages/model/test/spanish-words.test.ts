import { modelWords, modelWordsEs } from '@thrum/model'
import { describe } from 'vitest'
import { testSpanish } from './translated.ts'

describe('Spanish words', () => testSpanish(modelWords, modelWordsEs, {}))
