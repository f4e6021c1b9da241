import type { Words } from '@thrum/model/ground'
import { cellWords } from './words/cells.es.ts'
import { fileWords } from './words/files.es.ts'
import { mappingWords } from './words/mapping.es.ts'
import { mendedWords } from './words/mended.es.ts'
import { previewWords } from './words/preview.es.ts'

/** What `exchange` says to a person, in Spanish. ICU message texts by id; errors have their remedy under `<code>/remedy`. */
export const words: Words = { ...fileWords, ...cellWords, ...mappingWords, ...previewWords, ...mendedWords }
