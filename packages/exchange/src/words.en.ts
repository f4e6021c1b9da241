import type { Words } from '@thrum/model/ground'

export const words: Words = {}
