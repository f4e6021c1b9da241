import { Worker } from 'node:worker_threads'
import { type Progress, ThrumError } from '@thrum/model/ground'
import {
  type Calls,
  type FromWorker,
  type Method,
  type OpenedProject,
  protocolVersion,
  type Reply,
  type ToWorker,
  type WorkerStart,
} from './protocol.ts'

export interface Watched {
  readonly signal?: AbortSignal
  readonly onProgress?: (progress: Progress) => void
}

/** The one thread that works on the project, seen from the thread that answers requests. */
export interface ProjectThread {
  /** The project that is open; null for none. */
  readonly opened: OpenedProject | null
  /** @throws ThrumError what the work throws; server/cancelled; server/thread-ended where the thread died */
  call<M extends Method>(method: M, params: Calls[M], watched?: Watched): Promise<Reply>
  /** Ends what is being done, closes the project, and ends the thread. */
  close(): Promise<void>
}

interface Pending {
  readonly resolve: (reply: Reply) => void
  readonly reject: (error: ThrumError) => void
  readonly onProgress: ((progress: Progress) => void) | undefined
}

interface Running {
  readonly worker: Worker
  readonly pending: Map<number, Pending>
  closed: (() => void) | null
}

/** A thread that does not close when asked to is ended after this long [ms]; what was written stays whole. */
const patience = 10_000

/** Where the messages of the thread are read. A test starts another one. */
const usualEntry = new URL('./worker.ts', import.meta.url)

/**
 * Starts the thread and waits until the project is open.
 *
 * A thread that dies is started anew with the next call, on the project that was open last; what was being done fails with
 * `server/thread-ended`.
 *
 * @throws ThrumError store/... where the project cannot be opened
 */
export async function startProjectThread(start: Omit<WorkerStart, 'version'>, entry: URL = usualEntry): Promise<ProjectThread> {
  let opened: OpenedProject | null = null
  let running: Promise<Running> | null = null
  let isClosing = false
  let nextId = 1

  const run = (project: string | null): Promise<Running> =>
    new Promise((resolve, reject) => {
      const workerData: WorkerStart = { ...start, project, version: protocolVersion }
      const worker = new Worker(entry, { workerData, execArgv: [] })
      const own: Running = { worker, pending: new Map(), closed: null }
      worker.on('message', (message: FromWorker) => {
        if (message.kind === 'ready') {
          opened = message.opened
          resolve(own)
        } else if (message.kind === 'not-opened') {
          reject(new ThrumError(message.code, message.values))
          void worker.terminate()
        } else take(own, message)
      })
      let cause: unknown
      worker.on('error', (error) => {
        cause = error
      })
      worker.on('exit', () => {
        running = null
        const ended = new ThrumError('server/thread-ended', {}, { cause })
        for (const { reject: fail } of own.pending.values()) fail(ended)
        own.pending.clear()
        own.closed?.()
        reject(ended)
      })
    })

  const take = (own: Running, message: Exclude<FromWorker, { kind: 'ready' | 'not-opened' }>): void => {
    const waiting = message.kind === 'closed' ? undefined : own.pending.get(message.id)
    if (message.kind === 'closed') own.closed?.()
    else if (message.kind === 'progress') waiting?.onProgress?.(message.progress)
    else {
      own.pending.delete(message.id)
      if (message.kind === 'failed') waiting?.reject(new ThrumError(message.code, message.values))
      else {
        opened = message.reply.opened ?? opened
        waiting?.resolve(message.reply)
      }
    }
  }

  const current = (): Promise<Running> => {
    running ??= run(opened === null ? start.project : opened.path)
    return running
  }

  await current()
  return {
    get opened() {
      return opened
    },
    call: async (method, params, { signal, onProgress } = {}) => {
      const own = isClosing || signal?.aborted === true ? null : await current()
      // It may have been stopped while the thread was being started.
      if (own === null || signal?.aborted === true) throw new ThrumError('server/cancelled')
      const id = nextId++
      const post = (message: ToWorker): void => own.worker.postMessage(message)
      const stop = (): void => post({ kind: 'cancel', id })
      const reply = new Promise<Reply>((resolve, reject) => own.pending.set(id, { resolve, reject, onProgress }))
      post({ kind: 'call', id, method, params })
      signal?.addEventListener('abort', stop, { once: true })
      try {
        return await reply
      } finally {
        signal?.removeEventListener('abort', stop)
      }
    },
    close: async () => {
      isClosing = true
      const own = await running?.catch(() => null)
      if (own == null) return
      await new Promise<void>((resolve) => {
        const late = setTimeout(resolve, patience)
        own.closed = () => {
          clearTimeout(late)
          resolve()
        }
        own.worker.postMessage({ kind: 'close' } satisfies ToWorker)
      })
      await own.worker.terminate()
    },
  }
}
