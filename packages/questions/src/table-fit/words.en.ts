import type { Words } from '@thrum/model/ground'
import { words as asking } from './asking.words.en.ts'
import { words as telling } from './telling.words.en.ts'

export const words: Words = { ...asking, ...telling }
