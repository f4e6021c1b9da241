import { languages } from '@thrum/report'
import { z } from 'zod'

export const languageShape = z.enum(languages)
export const wordsParams = z.strictObject({ language: languageShape })

/** ICU message texts by id. */
export const wordsShape = z.record(z.string(), z.string()).meta({ id: 'Words' })
export type WordsTold = z.infer<typeof wordsShape>
