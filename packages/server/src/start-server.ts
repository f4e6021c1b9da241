import swagger from '@fastify/swagger'
import { version } from '@thrum/host'
import { fastify } from 'fastify'
import { jsonSchemaTransform, jsonSchemaTransformObject, serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod'
import type { ProjectEvent, StreamEvent } from './api/stream.ts'
import { listenOn, loopback, usualPort } from './door/listen.ts'
import { openDoors } from './door/open-doors.ts'
import { isPlainPath } from './door/plain-path.ts'
import { makeToken } from './door/token.ts'
import { keyLeftBehind, sayNotServing, sayServing } from './lock/lock-file.ts'
import { askRoutes } from './routes/ask-routes.ts'
import { countsRoutes } from './routes/counts-routes.ts'
import type { App, DeskContext } from './routes/desk-context.ts'
import { createJobs } from './routes/jobs.ts'
import { createListeners } from './routes/listeners.ts'
import { projectRoutes } from './routes/project-routes.ts'
import { streamRoutes } from './routes/stream-routes.ts'
import { tableRoutes } from './routes/table-routes.ts'
import { wordsRoutes } from './routes/words-routes.ts'
import { serveDesk, usualDesk } from './static/desk-files.ts'
import { createTableShelf } from './tables/table-shelf.ts'
import { type ProjectThread, startProjectThread } from './thread/project-thread.ts'

export interface ServerAsked {
  /** Folder whose projects can be listed, opened and made. */
  readonly folder: string
  /** Path of the project that is open first; null for none. */
  readonly project: string | null
  /** The port that is wished; the next free one is taken. 0 takes any. */
  readonly port?: number
  /** Folder of the built desk. */
  readonly desk?: string
}

/** A server that listens. */
export interface Server {
  readonly port: number
  /** The address of the desk, with the key of this run behind `#`: browsers never send that part. */
  readonly address: string
  /** Ends what is being done, closes the project and stops listening. */
  close(): Promise<void>
}

const routes = [projectRoutes, askRoutes, countsRoutes, tableRoutes, streamRoutes, wordsRoutes]

/** Looks for facts that came, by whoever. */
async function look(thread: ProjectThread): Promise<StreamEvent | null> {
  const { body } = await thread.call('watch', null)
  const found = JSON.parse(String(body)) as ProjectEvent | null
  return found === null ? null : { event: 'project', data: found }
}

async function describe(app: App): Promise<void> {
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  await app.register(swagger, {
    openapi: { openapi: '3.1.0', info: { title: 'Thrum', version } },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  })
}

/**
 * Serves the desk of a project on this machine alone.
 *
 * The thread that answers requests only checks the doors, validates and passes on; everything that touches the project is done
 * by one other thread.
 *
 * @throws ThrumError store/... where the project cannot be opened, server/no-port
 */
export async function startServer({ folder, project, port: wished = usualPort, desk = usualDesk }: ServerAsked): Promise<Server> {
  const token = (project === null ? null : keyLeftBehind(project)) ?? makeToken()
  let port = 0
  const thread = await startProjectThread({ folder, project })
  const shelf = await createTableShelf()
  const app: App = fastify({
    logger: false,
    forceCloseConnections: true,
    // A path that is not plain is judged by the door as it came; no route ever sees it.
    rewriteUrl: ({ url = '/' }) => (isPlainPath(url) ? url : '/'),
    routerOptions: { maxParamLength: 128 },
  })
  const listeners = createListeners(() => look(thread))
  const address = (): string => `http://${loopback}:${port}/#key=${token}`
  let served: string | null = null
  const sayNow = (): void => {
    const now = thread.opened
    if (served !== null) sayNotServing(served, port)
    served = now?.path ?? null
    if (now !== null) sayServing(now.path, { pid: process.pid, port, project: now.hash, address: address() })
  }
  const close = async (): Promise<void> => {
    if (served !== null) sayNotServing(served, port)
    listeners.close()
    await app.close()
    await thread.close()
    await shelf.close()
  }
  try {
    await openDoors(app, () => ({ token, port }))
    await describe(app)
    await app.register(async (own: App) => {
      const context: DeskContext = { thread, jobs: createJobs(listeners), listeners, shelf, onOpened: sayNow }
      for (const route of routes) route(own, context)
      own.get('/api/openapi.json', { schema: { hide: true } }, () => own.swagger())
      // All that anybody on this machine may know: that it is Thrum, and whether it serves the project they have in hand.
      own.get('/ping', { schema: { hide: true } }, () => ({ thrum: true, project: thread.opened?.hash ?? null }))
    })
    await serveDesk(app, desk)
    port = await listenOn(app, wished)
  } catch (error) {
    await close()
    throw error
  }
  sayNow()
  return { port, address: address(), close }
}
