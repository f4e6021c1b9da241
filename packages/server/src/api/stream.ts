import { z } from 'zod'
import { jobName } from './question.ts'

/** How far a piece of work is. `total` is absent where it cannot be known. */
export const progressEvent = z.object({ job: jobName, done: z.number(), total: z.number().optional(), unit: z.string() })
export type ProgressEvent = z.infer<typeof progressEvent>

/** Facts came, from here or from another program. */
export const projectEvent = z.object({ digest: z.string(), askedDigest: z.string() })
export type ProjectEvent = z.infer<typeof projectEvent>

/** Events of the stream by name. `ping` says only that the line is alive. */
export type StreamEvent =
  | { readonly event: 'progress'; readonly data: ProgressEvent }
  | { readonly event: 'project'; readonly data: ProjectEvent }
  | { readonly event: 'ping'; readonly data: Record<string, never> }

export const jobParams = z.strictObject({ job: jobName })
export const cancelledShape = z.object({ cancelled: z.boolean() }).meta({ id: 'Cancelled' })
export type Cancelled = z.infer<typeof cancelledShape>

/** Header that every request under /api carries. */
export const tokenHeader = 'x-thrum-token'
/** Header that says whether an answer was kept from before. */
export const keptHeader = 'x-thrum-kept'
