import type { Words } from '@thrum/model/ground'
import { cellWords } from './words/cells.en.ts'
import { fileWords } from './words/files.en.ts'
import { mappingWords } from './words/mapping.en.ts'
import { mendedWords } from './words/mended.en.ts'
import { previewWords } from './words/preview.en.ts'

/** What `exchange` says to a person, in English. ICU message texts by id; errors have their remedy under `<code>/remedy`. */
export const words: Words = { ...fileWords, ...cellWords, ...mappingWords, ...previewWords, ...mendedWords }
