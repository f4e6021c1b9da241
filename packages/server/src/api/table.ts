import { z } from 'zod'
import { jobName } from './question.ts'
import { cellShape, failureShape, toldShape } from './told.ts'

/** Largest table that is taken [byte]. */
export const largestTable = 256 * 1024 * 1024

export const tableQuery = z.strictObject({ name: z.string().min(1).max(255), job: jobName.optional() })
export type TableQuery = z.infer<typeof tableQuery>

export const tableParams = z.strictObject({ table: z.string().regex(/^[\w-]{1,64}$/u) })

/** A mapping as its file beside the table has it; its shape is checked where it is used. */
export const mappingJson = z.record(z.string(), z.unknown())

const mends = {
  /** The name of the file that this one mends, where it is not its own. */
  mends: z.string().min(1).max(255).optional(),
  /** True: it is another file, though it has the name of one that was brought. */
  separate: z.boolean().optional(),
}

const job = jobName.optional()
export const offerBody = z.strictObject({ mapping: mappingJson, options: z.strictObject(mends).optional(), job })
export type OfferBody = z.infer<typeof offerBody>

export const acceptBody = z.strictObject({
  mapping: mappingJson,
  options: z
    .strictObject({
      ...mends,
      /** Rows that are no longer in a mended file are withdrawn. */
      withdrawMissing: z.boolean().optional(),
    })
    .optional(),
  job,
})
export type AcceptBody = z.infer<typeof acceptBody>

const differenceShape = z.object({ line: z.number(), column: z.string(), of: z.string(), from: cellShape, to: cellShape })

/** What accepting a mended file would do. */
export const mendedShape = z.object({
  /** The file that it mends, and the day on which that was brought. */
  file: z.string(),
  day: z.string(),
  /** Columns that name a watch: by them rows were matched. */
  key: z.array(z.string()),
  equal: z.int(),
  changed: z.array(differenceShape),
  /** Cells that a person corrected here meanwhile: what the person said stays. */
  kept: z.array(differenceShape),
  added: z.int(),
  addedTallies: z.int(),
  gone: z.array(z.object({ address: z.string(), row: z.string() })),
  goneTallies: z.int(),
  withdrawnLines: z.array(z.number()),
  columnsGone: z.array(z.string()),
})
export type MendedTold = z.infer<typeof mendedShape>

/** What one row of the table becomes. */
export const previewRowShape = z.object({
  line: z.number(),
  state: z.enum(['accepted', 'waiting', 'refused']),
  /** Why it waits or was refused, cell by cell. */
  because: z.array(toldShape),
  cells: z.array(
    z.object({
      header: z.string(),
      written: z.string(),
      /** What the column is taken for: a role of the mapping. */
      as: z.string(),
    }),
  ),
  /** What of it enters the project: columns of the count, then how many of each kind. */
  becomes: z.array(z.object({ column: z.string(), value: cellShape, isTally: z.boolean() })),
})

/** A table under a mapping. Nothing is written. */
export const offerShape = z
  .object({
    table: z.string(),
    file: z.string(),
    bytes: z.int(),
    /** `known`: it is in the project already. `refused`: it cannot be read under this mapping; `refusal` says why. */
    state: z.enum(['new', 'mended', 'known', 'refused']),
    refusal: failureShape.nullable(),
    mapping: mappingJson,
    /** Every column with its first different values as they were written. */
    columns: z.array(z.object({ header: z.string(), samples: z.array(z.string()) })),
    reasons: z.array(z.object({ header: z.string(), as: z.string(), because: toldShape })),
    /** What a person has to decide; `proposed` is what the mapping says for now. */
    questions: z.array(z.object({ header: z.string().nullable(), asks: toldShape, proposed: z.string().nullable() })),
    /** accepted + waiting + refused = read */
    rows: z.object({ read: z.int(), accepted: z.int(), waiting: z.int(), refused: z.int() }),
    counts: z.int(),
    tallies: z.int(),
    kinds: z.array(
      z.object({
        kind: z.string(),
        total: z.number(),
        clean: z.int(),
        marked: z.int(),
        waiting: z.int(),
        missing: z.int(),
      }),
    ),
    /** What the first rows become. */
    preview: z.array(previewRowShape),
    /** What the whole becomes, in sentences, the most important first. */
    sentences: z.array(toldShape),
    mended: mendedShape.nullable(),
  })
  .meta({ id: 'Offer' })
export type OfferTold = z.infer<typeof offerShape>

/** What accepting a table did. */
export const broughtShape = z
  .object({
    file: z.string(),
    /** `known`: it was in the project already, and nothing was added. */
    state: z.enum(['accepted', 'mended', 'known']),
    counts: z.int(),
    tallies: z.int(),
    corrections: z.int(),
    withdrawn: z.int(),
    /** False where the file itself was not kept, because it holds what is forgotten here. */
    kept: z.boolean(),
    digest: z.string(),
  })
  .meta({ id: 'Brought' })
export type BroughtTold = z.infer<typeof broughtShape>

export const droppedShape = z.object({ dropped: z.boolean() }).meta({ id: 'Dropped' })
export type Dropped = z.infer<typeof droppedShape>
