import { z } from 'zod'
import { cancelledShape, jobParams } from '../api/stream.ts'
import type { App, DeskContext } from './desk-context.ts'
import { answers, sendEvents } from './send-reply.ts'

/** What happens, as it happens; and stopping what is being done. */
export function streamRoutes(app: App, { jobs, listeners }: DeskContext): void {
  const events = z.string().meta({ description: 'Server-sent events: progress, project, ping.' })
  app.post('/api/stream', { schema: { response: answers(events) } }, async (_, reply) => sendEvents(reply, listeners.listen()))
  app.delete('/api/jobs/:job', { schema: { params: jobParams, response: answers(cancelledShape) } }, async ({ params }) => ({
    cancelled: jobs.cancel(params.job),
  }))
}
