import { parentPort, workerData } from 'node:worker_threads'
import { ThrumError } from '@thrum/model/ground'
import { openDesk } from '../work/desk.ts'
import { methods } from '../work/methods.ts'
import type { FromWorker, Method, Reply, ToWorker, WorkerStart } from './protocol.ts'
import { protocolVersion } from './protocol.ts'

/** Work that writes nothing a person asked for: stopped too late, its result is dropped all the same. */
const stoppable: ReadonlySet<Method> = new Set(['ask', 'receipt', 'figure', 'counts', 'propose', 'offer'])

/** Progress is told at most this often [ms]. */
const between = 100

const port = parentPort
if (port === null) throw new Error('this file is the entry of a thread')
const post = (message: FromWorker): void => port.postMessage(message)
const running = new Map<number, { readonly stop: AbortController; readonly ended: Promise<void> }>()

/** Lets messages in, and stops the work where one of them said so. */
const breatheUntil = (signal: AbortSignal) => async (): Promise<void> => {
  await new Promise((resolve) => setImmediate(resolve))
  signal.throwIfAborted()
}

function tellProgress(id: number): (progress: { readonly done: number; readonly total?: number; readonly unit: string }) => void {
  let last = Number.NEGATIVE_INFINITY
  return (progress) => {
    const now = performance.now()
    if (now - last < between && progress.done !== progress.total) return
    last = now
    post({ kind: 'progress', id, progress })
  }
}

/** Errors cross between threads as code and values. */
function asTold(error: unknown): ThrumError {
  if (error instanceof ThrumError) return error
  return new ThrumError('server/mishap', { what: error instanceof Error ? `${error.name}: ${error.message}` : String(error) })
}

async function start({ version, folder, project }: WorkerStart): Promise<void> {
  if (version !== protocolVersion) throw new ThrumError('server/mishap', { what: `protocol ${version}` })
  const desk = await openDesk(folder, project)

  const answer = async (id: number, method: Method, params: unknown, signal: AbortSignal): Promise<void> => {
    const work = { signal, onProgress: tellProgress(id), breathe: breatheUntil(signal) }
    try {
      await work.breathe()
      // Each method is handed what its own name promises: the types of the calling side see to it.
      const run = methods[method] as (own: typeof desk, given: unknown, watched: typeof work) => Promise<Reply>
      const reply = await run(desk, params, work)
      if (stoppable.has(method)) await work.breathe()
      post({ kind: 'done', id, reply })
    } catch (error) {
      const { code, values } = asTold(error)
      post({ kind: 'failed', id, code, values })
    }
  }
  port?.on('message', (message: ToWorker) => {
    if (message.kind === 'cancel') running.get(message.id)?.stop.abort(new ThrumError('server/cancelled'))
    else if (message.kind === 'call') {
      const { id, method, params } = message
      const stop = new AbortController()
      const ended = answer(id, method, params, stop.signal).finally(() => running.delete(id))
      running.set(id, { stop, ended })
    } else {
      for (const { stop } of running.values()) stop.abort(new ThrumError('server/cancelled'))
      void Promise.allSettled([...running.values()].map(({ ended }) => ended))
        .then(() => desk.close())
        .finally(() => post({ kind: 'closed' }))
    }
  })
  post({ kind: 'ready', version, opened: desk.opened() })
}

try {
  await start(workerData as WorkerStart)
} catch (error) {
  const { code, values } = asTold(error)
  post({ kind: 'not-opened', code, values })
}
