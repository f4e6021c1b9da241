import { countingUnits } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { z } from 'zod'
import { measureRoles, type Role, tallyRoles, textRoles, timeRoles } from './roles.ts'

const words = z.string().min(1).max(200)
const meaning = z.union([z.string().max(2000), z.number(), z.null()])
/** What a text in a cell stands for: a number, another text, or null for "nobody looked". */
const meanings = z.record(z.string(), meaning)

const role = z.enum([...textRoles, ...measureRoles, ...timeRoles, ...tallyRoles, 'factor', 'ignore'] as [Role, ...Role[]])

const column = z.strictObject({
  /** The header as the sheet shows it, plain. */
  header: words,
  as: role,
  /** UCUM code, where the sheet's unit is not the table's own. */
  unit: z.string().max(40).optional(),
  /** For `tally`: the kind counted in this column. Several columns of one kind are summed. */
  kind: words.optional(),
  caste: words.optional(),
  behaviour: words.optional(),
  /** For `factor`: its name, where it is not the header. */
  factor: words.optional(),
  means: meanings.optional(),
})

export const mappingShape = z.strictObject({
  version: z.literal(1),
  file: z
    .strictObject({
      encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252']).optional(),
      delimiter: z.enum([',', ';', '\t', '|']).optional(),
      /** Decimal mark of every number of the file. */
      decimal: z.enum(['.', ',']).optional(),
      /** Line numbers of the header, one or two. */
      header: z.array(z.int().min(1)).min(1).max(2).optional(),
      dateOrder: z.enum(['day first', 'month first']).optional(),
      /** For dates written without a year. */
      year: z.int().min(1800).max(2199).optional(),
    })
    .optional(),
  shape: z.enum(['wide', 'long']),
  /** The rows are planned watches: nothing is counted yet. */
  plan: z.literal(true).optional(),
  /** Long tables: what a kind without a row means. */
  absent: z.enum(['none-seen', 'not-looked-for', 'not-known']).optional(),
  columns: z.array(column).min(1).max(1000),
  /** What is the same for every row and stands in no column. */
  constants: z
    .strictObject({
      minutes: z.number().positive().max(1440).optional(),
      /** [m2] */
      area: z.number().positive().optional(),
      unit: z.enum(countingUnits).optional(),
      field: words.optional(),
      plot: words.optional(),
      observer: words.optional(),
      crop: words.optional(),
      cultivar: words.optional(),
      season: words.optional(),
      method: words.optional(),
      position: words.optional(),
      flowersHow: words.optional(),
      kind: words.optional(),
      date: z.iso.date().optional(),
    })
    .optional(),
  /** Said by a person: nobody wrote down how long they watched. Shares only, then. */
  effort: z.literal('not recorded').optional(),
  /** How the levels of a factor came to their fields. */
  assigned: z.record(z.string(), z.enum(['at random', 'chosen', 'not known'])).optional(),
  /** Roles that together name one watch of a long table. */
  key: z.array(words).optional(),
  /** What texts mean in every number column. */
  means: meanings.optional(),
  /** What to do with rows that were entered twice with equal values; without it they wait. */
  duplicates: z.enum(['keep-one', 'keep-all']).optional(),
  /** Single lines of the file a person decided about. */
  lines: z.record(z.string().regex(/^\d+$/u), z.enum(['keep', 'leave-out'])).optional(),
})

/** How a sheet becomes counts: a JSON file, version 1. */
export type Mapping = z.infer<typeof mappingShape>
export type MappedColumn = z.infer<typeof column>

/**
 * A mapping from parsed JSON.
 *
 * @throws ThrumError exchange/mapping/misshapen, naming the place and what is wrong there
 */
export function parseMapping(json: unknown): Mapping {
  const checked = mappingShape.safeParse(json)
  if (checked.success) return checked.data
  const first = checked.error.issues[0]
  throw new ThrumError('exchange/mapping/misshapen', { where: first?.path.join('.') ?? '', what: first?.message ?? '' })
}
