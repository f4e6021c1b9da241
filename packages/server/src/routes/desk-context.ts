import type {
  FastifyBaseLogger,
  FastifyInstance,
  RawReplyDefaultExpression,
  RawRequestDefaultExpression,
  RawServerDefault,
} from 'fastify'
import type { ZodTypeProvider } from 'fastify-type-provider-zod'
import type { TableShelf } from '../tables/table-shelf.ts'
import type { ProjectThread } from '../thread/project-thread.ts'
import type { Jobs } from './jobs.ts'
import type { Listeners } from './listeners.ts'

/** What every route is handed. */
export interface DeskContext {
  readonly thread: ProjectThread
  readonly jobs: Jobs
  readonly listeners: Listeners
  readonly shelf: TableShelf
  /** Told where another project was opened. */
  onOpened(): void
}

/** The server with shapes for types. */
export type App = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression<RawServerDefault>,
  RawReplyDefaultExpression<RawServerDefault>,
  FastifyBaseLogger,
  ZodTypeProvider
>
