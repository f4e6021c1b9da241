import { z } from 'zod'
import { columnHeads } from '../columns/codec.ts'
import { markNames } from '../columns/mark.ts'

/** One kind of fact: the newest version of its body, its shape, and whether it is about asking rather than about the data. */
export interface FactKind<S extends z.ZodType = z.ZodType> {
  readonly kind: string
  readonly v: number
  readonly shape: S
  /** Facts about asking are logged and merged but have a digest of their own: a look must not change the data's digest. */
  readonly about: 'data' | 'asking'
  /** Lifts an older body to the next version when it is read; the log is never rewritten. */
  readonly lifts?: { readonly [from: number]: (body: unknown) => unknown }
}

const kind = <S extends z.ZodType>(name: string, shape: S, about: 'data' | 'asking' = 'data'): FactKind<S> => ({
  kind: name,
  v: 1,
  shape,
  about,
})

/** Version 2 of a kind that only gained what may be left out: a body of version 1 is one of version 2 as it stands. */
const grown = <S extends z.ZodType>(name: string, shape: S): FactKind<S> => ({
  ...kind(name, shape),
  v: 2,
  lifts: { 1: (body) => body },
})

const name = z.string().min(1).max(200)
const isoDate = z.iso.date()
const point = { latitude: z.number().min(-90).max(90).optional(), longitude: z.number().min(-180).max(180).optional() }
const ring = z.array(z.tuple([z.number(), z.number()])).min(3)
const cell = z.union([z.string(), z.number(), z.null()])
const reason = z.string().min(1).max(2000)

/** How the levels of a factor came to their fields. It decides which words an answer may use. */
export const assignment = z.enum(['at random', 'chosen', 'not known'])
export type Assignment = z.infer<typeof assignment>

// What a project is made of
export const projectDescribed = kind('project-described', z.object({ project: z.string().min(8), title: name }))
export const fieldDescribed = kind(
  'field-described',
  z.object({
    field: name,
    crop: name.optional(),
    cultivar: name.optional(),
    ...point,
    polygon: ring.optional(),
    hectares: z.number().positive().optional(),
  }),
)
export const kindDescribed = kind(
  'kind-described',
  z.object({ kind: name, taxon: name.optional(), group: name.optional(), note: z.string().optional() }),
)
export const treatmentSet = kind(
  'treatment-set',
  z.object({
    factor: name,
    level: name,
    field: name.optional(),
    plot: name.optional(),
    from: isoDate.optional(),
    to: isoDate.optional(),
    assigned: assignment,
  }),
)
export const factorDescribed = kind(
  'factor-described',
  z.object({ factor: name, assigned: assignment, note: z.string().optional() }),
)
export const hivesPlaced = kind(
  'hives-placed',
  z.object({
    hives: z.number().positive(),
    ...point,
    field: name.optional(),
    metres: z.number().nonnegative().optional(),
    from: isoDate.optional(),
    to: isoDate.optional(),
    owner: z.enum(['known', 'not known']).optional(),
  }),
)
export const hivesLookedFor = kind(
  'hives-looked-for',
  z.object({
    field: name,
    result: z.enum(['counted', 'none found', 'not looked for']),
    from: isoDate.optional(),
    to: isoDate.optional(),
  }),
)
export const planMade = kind(
  'plan-made',
  z.object({ lastVisit: isoDate.optional(), primaryKind: name.optional(), block: name.optional(), note: z.string().optional() }),
)

// What a sheet brings
export const sheetRead = kind(
  'sheet-read',
  z.object({
    sheet: name,
    file: z.string(),
    fileHash: z.string(),
    bytes: z.number(),
    mapping: z.record(z.string(), z.json()),
    rows: z.object({ read: z.number(), accepted: z.number(), waiting: z.number(), refused: z.number() }),
    notes: z.array(z.object({ id: z.string(), values: z.record(z.string(), z.union([z.string(), z.number()])) })),
    /** The sheet of the earlier version of the same file, where this one is a mended one. */
    mends: name.optional(),
  }),
)
export const rowsBrought = kind(
  'rows-brought',
  z.object({
    sheet: name,
    table: name,
    batch: z.int().min(0),
    first: z.int().min(0),
    rows: z.int().min(0).max(65_536),
    columns: columnHeads,
  }),
)
export const sheetAccepted = kind('sheet-accepted', z.object({ sheet: name, batches: z.int().min(0) }))
export const sheetDiscarded = kind('sheet-discarded', z.object({ sheet: name, reason }))

// What a person changes

/**
 * What two corrections of one cell share. `after` is the last correction of the cell that was known where this one was made,
 * `knowing` the others that were known and not yet decided between: whatever neither names was not known. `mark` says what
 * stands beside a number where it is not "as written" (with a number) or "lost" (with none); a text that waits for a person
 * is kept as `to` under the mark `waiting`.
 */
const correction = {
  of: z.string(),
  column: name,
  knowing: z.array(z.string()).optional(),
  to: cell,
  mark: z.enum(markNames).optional(),
}
export const amended = grown(
  'amended',
  z.object({
    ...correction,
    after: z.string().nullable(),
    from: cell,
    reason,
    /** The sheet whose mended file says so; absent where a person does. */
    sheet: name.optional(),
  }),
)
export const withdrawn = grown(
  'withdrawn',
  z.object({
    of: z.string(),
    reason,
    /** The sheet whose mended file no longer has the row; absent where a person takes it back. */
    sheet: name.optional(),
  }),
)
export const cellSettled = grown(
  'cell-settled',
  z.object({ ...correction, after: z.string().nullable().optional(), approximate: z.boolean().optional() }),
)

const hash = z.string().regex(/^[0-9a-f]{64}$/u)

/**
 * What is to be forgotten in every copy: a fact or a row of a batch (`of`); a name of a person wherever it stands, known by a
 * keyed hash and replaced by `instead`; or the exact place of a field. Version 1 knew `of` alone. Of a row that was a count,
 * `keys` recognise it in a mended file: columns that name a watch, and a keyed hash of what stood in them.
 */
export const redacted = grown(
  'redacted',
  z
    .object({
      of: z.string().optional(),
      keys: z.array(z.object({ key: z.array(z.string()).min(1), hash })).optional(),
      name: z
        .object({
          key: z.string().min(8),
          hash,
          words: z.int().min(1).max(20),
          instead: name,
        })
        .optional(),
      place: name.optional(),
      because: reason,
    })
    .refine(({ of, name: forgotten, place }) => [of, forgotten, place].filter((what) => what !== undefined).length === 1, {
      error: 'names one thing to forget',
    }),
)

// About asking
export const worthSet = kind('worth-set', z.object({ question: name, asked: z.string(), worth: z.number().gt(1) }), 'asking')
export const questionLookedAt = kind(
  'question-looked-at',
  z.object({ question: name, asked: z.string(), digest: z.string(), verdict: z.string().nullable() }),
  'asking',
)
/** A question kept at hand, with the options it is asked with, or let go again; the last word stands. */
export const questionPinned = kind(
  'question-pinned',
  z.object({
    question: name,
    asked: z.string(),
    options: z.record(z.string(), z.union([z.string(), z.number(), z.array(z.string())])),
    pinned: z.boolean(),
  }),
  'asking',
)

const all = [
  projectDescribed,
  fieldDescribed,
  kindDescribed,
  treatmentSet,
  factorDescribed,
  hivesPlaced,
  hivesLookedFor,
  planMade,
  sheetRead,
  rowsBrought,
  sheetAccepted,
  sheetDiscarded,
  amended,
  withdrawn,
  cellSettled,
  redacted,
  worthSet,
  questionLookedAt,
  questionPinned,
] as const

/** Every kind this version can read, by name. */
export const factKinds: ReadonlyMap<string, FactKind> = new Map(all.map((entry) => [entry.kind, entry as FactKind]))

export type BodyOf<K extends FactKind> = z.infer<K['shape']>
