import { parentPort, workerData } from 'node:worker_threads'
import type { FromWorker, ToWorker, WorkerStart } from '../../src/thread/protocol.ts'

/** A thread that dies over one question, keeps silent over another until it is stopped, and says what it was started on. */
const { version, project } = workerData as WorkerStart
const post = (message: FromWorker): void => parentPort?.postMessage(message)
parentPort?.on('message', (message: ToWorker) => {
  if (message.kind === 'cancel') post({ kind: 'failed', id: message.id, code: 'server/cancelled', values: {} })
  else if (message.kind === 'close') post({ kind: 'closed' })
  else if (message.method === 'check') process.exit(7)
  else if (message.method === 'open') {
    const opened = { path: String(message.params), hash: 'h' }
    post({ kind: 'done', id: message.id, reply: { media: 'a', body: 'opened', opened } })
  } else if (message.method !== 'ask') post({ kind: 'done', id: message.id, reply: { media: 'a', body: project ?? 'none' } })
})
post({ kind: 'ready', version, opened: project === null ? null : { path: project, hash: 'h' } })
