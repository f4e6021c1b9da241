import type { Words } from '@thrum/model/ground'
import { words as asking } from './asking.words.es.ts'
import { words as telling } from './telling.words.es.ts'

export const words: Words = { ...asking, ...telling }
