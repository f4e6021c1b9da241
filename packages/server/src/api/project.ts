import { z } from 'zod'
import { toldShape } from './told.ts'

export const fieldShape = z.object({
  name: z.string(),
  crop: z.string().nullable(),
  cultivar: z.string().nullable(),
  /** Degrees, WGS 84. */
  point: z.object({ latitude: z.number(), longitude: z.number() }).nullable(),
  /** Corners as [longitude, latitude]. */
  polygon: z.array(z.tuple([z.number(), z.number()])).nullable(),
  hectares: z.number().nullable(),
  /** False where counts name the field and nobody described it. */
  described: z.boolean(),
  /** Counts made in it. */
  counts: z.int(),
})

/** Something that counts can be told apart by: an offer for `between`. */
export const factorShape = z.object({
  name: z.string(),
  levels: z.array(z.string()),
  /** True where it was measured, and can be compared per `step`. */
  measured: z.boolean(),
})

/** The open project at a glance. */
export const projectShape = z
  .object({
    title: z.string(),
    /** Name of its file, without a folder. */
    file: z.string(),
    digest: z.string(),
    askedDigest: z.string(),
    mode: z.enum(['write', 'read']),
    /** Why it takes no writing; null where it does. */
    because: toldShape.nullable(),
    counts: z.int(),
    tallies: z.int(),
    fields: z.array(fieldShape),
    /** The most counted first. `count` sums the numbers that were counted. */
    kinds: z.array(z.object({ name: z.string(), class: z.string(), count: z.number() })),
    seasons: z.array(z.string()),
    crops: z.array(z.string()),
    factors: z.array(factorShape),
    /** Cells and rows that wait for a person. */
    waiting: z.int(),
    /** Cells about which corrections contradict each other. */
    contested: z.int(),
    /** Files begun and neither accepted nor discarded. */
    unfinishedSheets: z.array(z.string()),
    plan: z
      .object({ lastVisit: z.string().nullable(), primaryKind: z.string().nullable(), block: z.string().nullable() })
      .nullable(),
    /** True for the project that shows Thrum: nothing in it is real. */
    demonstration: z.boolean(),
    /** Version of Thrum. */
    version: z.string(),
  })
  .meta({ id: 'Project' })
export type ProjectTold = z.infer<typeof projectShape>

/** A name of a project in the folder of the server: a name, never a path. */
export const projectFileName = z
  .string()
  .min(7)
  .max(200)
  .regex(/^[^/\\\p{Cc}]+\.thrum$/u)

export const projectsShape = z
  .object({ files: z.array(z.object({ file: z.string(), open: z.boolean() })) })
  .meta({ id: 'Projects' })
export type ProjectsTold = z.infer<typeof projectsShape>

export const newProjectBody = z.strictObject({
  how: z.enum(['empty', 'demonstration']),
  title: z.string().min(1).max(200).optional(),
})
export type NewProject = z.infer<typeof newProjectBody>

export const openBody = z.strictObject({ file: projectFileName })
export type OpenAsked = z.infer<typeof openBody>

/** The project that is open now. */
export const openedShape = z.object({ file: z.string(), title: z.string() }).meta({ id: 'Opened' })
export type Opened = z.infer<typeof openedShape>

const name = z.string().min(1).max(200)
export const fieldsBody = z
  .array(
    z.strictObject({
      field: name,
      crop: name,
      hectares: z.number().positive().max(1_000_000).optional(),
      latitude: z.number().min(-90).max(90).optional(),
      longitude: z.number().min(-180).max(180).optional(),
    }),
  )
  .min(1)
  .max(1000)
export type FieldsDescribed = z.infer<typeof fieldsBody>

export const fieldsShape = z.object({ facts: z.array(z.string()) }).meta({ id: 'FieldsWritten' })
export type FieldsWritten = z.infer<typeof fieldsShape>
