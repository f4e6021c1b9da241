import type { Answer } from '@thrum/model'
import { z } from 'zod'
import { type Told, toldShape } from './told.ts'
import { languageShape } from './words.ts'

/** One option of a question, as its one declaration has it, with what this project offers for it. */
export const optionShape = z.object({
  name: z.string(),
  type: z.enum(['text', 'texts', 'date', 'number', 'choice']),
  /** For `choice`. */
  choices: z.array(z.string()).nullable(),
  /** For `number`: it must be above this. */
  above: z.number().nullable(),
  offers: z.enum(['kinds', 'fields', 'crops', 'seasons', 'factors', 'levels', 'conditions', 'none']),
  /** What the blank may be filled with here; for `levels` it hangs on `between` and stands with the project's factors. */
  offered: z.array(z.string()),
  explained: toldShape,
})
export type OptionTold = z.infer<typeof optionShape>

export const questionsShape = z
  .array(z.object({ id: z.string(), title: toldShape, options: z.array(optionShape) }))
  .meta({ id: 'Questions' })
export type QuestionsTold = z.infer<typeof questionsShape>

const text = z.string().max(2000)
/** Options as the terminal takes them: texts, numbers, or lists of texts, by name. */
export const optionsBody = z.record(z.string().max(60), z.union([text, z.number(), z.array(text).max(500)]))
export type OptionsAsked = z.infer<typeof optionsBody>

const question = z.string().min(1).max(60)
const seed = z.string().min(1).max(200).optional()
/** A name of a piece of work, made by the page: progress is told under it, and by it the work is stopped. */
export const jobName = z.string().regex(/^[\w-]{1,64}$/u)

export const askBody = z.strictObject({ question, options: optionsBody, seed, job: jobName.optional() })
export type AskBody = z.infer<typeof askBody>

/** What `thrum ask --json` prints, to the letter. */
export type ToldAnswer = Told<Answer>
export const answerShape = z
  .looseObject({ version: z.literal(1), question: z.string(), verdict: z.string().nullable(), headline: toldShape })
  .meta({ id: 'Answer' })

export const receiptBody = z.strictObject({ question, options: optionsBody, seed, job: jobName.optional() })
export type ReceiptBody = z.infer<typeof receiptBody>

export const figureBody = z.strictObject({
  question,
  options: optionsBody,
  seed,
  job: jobName.optional(),
  /** Which figure of the answer, from 0; all of them on one page where it is absent. */
  index: z.int().min(0).max(100).optional(),
  look: z.enum(['light', 'dark']),
  language: languageShape.default('en'),
  format: z.enum(['svg', 'png']),
  /** Width of the page [px]; a PNG is twice as fine. */
  width: z.int().min(280).max(4000).optional(),
})
export type FigureBody = z.infer<typeof figureBody>

/** Questions asked before, the latest first. */
export const askedShape = z
  .array(
    z.object({
      question: z.string(),
      /** Key of what was asked: the same whatever S it is held against. */
      asked: z.string(),
      options: z.record(z.string(), z.union([z.string(), z.number(), z.array(z.string())])),
      /** States of the data it was looked at with. */
      looks: z.int(),
      lastAt: z.string(),
      lastDigest: z.string().nullable(),
      lastVerdict: z.string().nullable(),
      /** S as it was set last; null where it never was. */
      worth: z.number().nullable(),
      pinned: z.boolean(),
      /** True where facts came since it was last looked at. */
      stale: z.boolean(),
    }),
  )
  .meta({ id: 'Asked' })
export type AskedTold = z.infer<typeof askedShape>

/** Questions of the demonstration, one for each of several verdicts; none where another project is open. */
export const walkShape = z
  .array(
    z.object({ question: z.string(), options: optionsBody, verdict: z.enum(['shown', 'alike', 'unsettled', 'design-blocks']) }),
  )
  .meta({ id: 'Walk' })
export type WalkTold = z.infer<typeof walkShape>

export const pinBody = z.strictObject({ question, options: optionsBody, pinned: z.boolean() })
export type PinBody = z.infer<typeof pinBody>
export const pinnedShape = z.object({ question: z.string(), asked: z.string(), pinned: z.boolean() }).meta({ id: 'Pinned' })
export type Pinned = z.infer<typeof pinnedShape>
