import { z } from 'zod'
import { cellShape, toldShape } from './told.ts'

const many = z.union([z.string().max(2000), z.array(z.string().max(2000)).max(1000)]).optional()

/** A page of the counts. Lists may be given once or repeatedly. */
export const countsQuery = z.strictObject({
  offset: z.coerce.number().int().min(0).default(0),
  limit: z.coerce.number().int().min(1).max(5000).default(100),
  /** A column's name; with `-` before it the greatest first. */
  sort: z.string().max(200).optional(),
  /** `column=value`, `column~text` (holds the text), `column>0`, `column<5`, or `column=` for empty cells; all must hold. */
  filter: many,
  /** Addresses of rows: only these. */
  addresses: many,
})
export type CountsQuery = z.input<typeof countsQuery>

export const countsColumnShape = z.object({
  name: z.string(),
  /** As a person reads it: a sentence, or the words of the file it came with. */
  title: cellShape,
  /** `date`: year-month-day; `time`: hours and minutes; `tally`: how many of one kind. */
  type: z.enum(['text', 'number', 'date', 'time', 'tally']),
  /** UCUM code; null where it has none. */
  unit: z.string().nullable(),
  values: z.array(z.union([z.string(), z.number(), z.null()])),
  /** What stands beside each value; null where every one is as written. */
  marks: z.array(z.enum(['asWritten', 'notLookedFor', 'lost', 'approximate', 'atLeast', 'atMost', 'waiting'])).nullable(),
})
export type CountsColumn = z.infer<typeof countsColumnShape>

export const countsShape = z
  .object({
    digest: z.string(),
    /** Rows that pass the filters. */
    total: z.int(),
    offset: z.int(),
    rows: z.array(z.string()),
    /** Lines of the original files; null where a row has none. */
    lines: z.array(z.int().nullable()),
    columns: z.array(countsColumnShape),
  })
  .meta({ id: 'Counts' })
export type CountsPage = z.infer<typeof countsShape>

const row = z.string().min(1).max(512)
const column = z.string().min(1).max(200)
const value = z.string().min(1).max(2000)
const reason = z.string().min(1).max(2000)

export const historyQuery = z.strictObject({ row, column: column.optional() })
export type HistoryQuery = z.infer<typeof historyQuery>

const stepShape = z.object({
  fact: z.string(),
  to: cellShape,
  by: z.string(),
  at: z.string(),
  reason: z.string().nullable(),
  file: z.string().nullable(),
  takenBack: z.boolean(),
  contested: z.boolean(),
})

/** What happened to a row: how it came, what became of each cell, and what stands. */
export const historyShape = z
  .object({
    row: z.string(),
    address: z.string(),
    told: z.string(),
    line: z.object({ file: z.string(), number: z.number(), cells: z.array(z.tuple([z.string(), z.string()])) }).nullable(),
    cells: z.array(
      z.object({
        of: z.string(),
        column: z.string(),
        brought: cellShape.nullable(),
        steps: z.array(stepShape),
        stands: cellShape.nullable(),
        contested: z.boolean(),
      }),
    ),
    withdrawals: z.array(
      z.object({
        fact: z.string(),
        of: z.string(),
        by: z.string(),
        at: z.string(),
        reason: z.string(),
        takenBack: z.boolean(),
      }),
    ),
    stands: z.boolean(),
    /** The same in sentences, in order. */
    sentences: z.array(toldShape),
  })
  .meta({ id: 'History' })
export type HistoryTold = z.infer<typeof historyShape>

export const correctionBody = z.strictObject({ row, column, value, reason })
export type CorrectionBody = z.infer<typeof correctionBody>
export const settlingBody = z.strictObject({ row, column, value })
export type SettlingBody = z.infer<typeof settlingBody>
export const withdrawalBody = z.strictObject({ row, reason, column: column.optional() })
export type WithdrawalBody = z.infer<typeof withdrawalBody>

/** A correction or a settling as it was written down. */
export const correctionShape = z
  .object({
    fact: z.string(),
    of: z.string(),
    row: z.string(),
    column: z.string(),
    from: cellShape,
    to: cellShape,
    /** True where no row of the project says the new text so far: perhaps it was mistyped. */
    isNewWord: z.boolean(),
    decides: z.boolean(),
  })
  .meta({ id: 'Correction' })
export type CorrectionTold = z.infer<typeof correctionShape>

export const withdrawalShape = z
  .object({
    fact: z.string(),
    of: z.string(),
    what: z.enum(['count', 'tally', 'row', 'file', 'correction', 'withdrawal', 'fact']),
    row: z.string(),
    told: z.string(),
    tallies: z.int(),
  })
  .meta({ id: 'Withdrawal' })
export type WithdrawalTold = z.infer<typeof withdrawalShape>

/** Everything that waits for a person. */
export const waitingShape = z
  .object({
    cells: z.array(
      z.object({
        of: z.string(),
        row: z.string(),
        column: z.string(),
        told: z.string(),
        written: z.string(),
        because: toldShape.nullable(),
        proposed: z.string().nullable(),
      }),
    ),
    rows: z.array(z.object({ row: z.string(), because: toldShape })),
    contested: z.array(
      z.object({
        of: z.string(),
        row: z.string(),
        column: z.string(),
        told: z.string(),
        choices: z.array(z.object({ fact: z.string(), to: cellShape, by: z.string(), at: z.string() })),
      }),
    ),
  })
  .meta({ id: 'Waiting' })
export type WaitingTold = z.infer<typeof waitingShape>

/** What `thrum check --json` finds. */
export const checkShape = z
  .object({
    project: z.string(),
    digest: z.string(),
    holds: z.boolean(),
    findings: z.array(
      z.object({
        code: z.string(),
        severity: z.enum(['note', 'warn', 'block']),
        text: toldShape,
        rows: z.array(z.string()),
        cure: toldShape.nullable(),
      }),
    ),
    unfinishedSheets: z.array(z.string()),
  })
  .meta({ id: 'Check' })
export type CheckTold = z.infer<typeof checkShape>
