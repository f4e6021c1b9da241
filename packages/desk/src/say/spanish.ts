import type { Words } from '@thrum/model/ground'
import { spanish } from '@thrum/report'
import { words as deskWords } from './words.es.ts'

/** Spanish of the desk and of answers; fetched only where Spanish is read. */
export const words: Words = { ...spanish, ...deskWords }
