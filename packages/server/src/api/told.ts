import { z } from 'zod'

/** A sentence as data with its English beside it: the id and values say what is meant, the text is for reading. */
export const toldShape = z
  .object({ id: z.string(), values: z.record(z.string(), z.unknown()), text: z.string() })
  .meta({ id: 'Told' })
export type ToldSentence = z.infer<typeof toldShape>

/** A cell as a person reads it: what was written, or a sentence in its place ("not looked for"). */
export const cellShape = z.union([z.string(), toldShape])

/** Every failure of the server. `code` and `values` are for programs, `text` and `remedy` for people. */
export const failureShape = z
  .object({ code: z.string(), values: z.record(z.string(), z.unknown()), text: z.string(), remedy: z.string() })
  .meta({ id: 'Failure' })
export type Failure = z.infer<typeof failureShape>

/** Plain data in which every sentence has its text beside it: what `withTexts` of the report makes of it. */
export type Told<T> = T extends { readonly id: string; readonly values: infer V }
  ? { readonly id: string; readonly values: V; readonly text: string }
  : T extends readonly (infer I)[]
    ? readonly Told<I>[]
    : T extends object
      ? { readonly [K in keyof T]: Told<T[K]> }
      : T
