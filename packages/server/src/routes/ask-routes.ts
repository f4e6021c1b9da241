import { z } from 'zod'
import {
  answerShape,
  askBody,
  askedShape,
  figureBody,
  pinBody,
  pinnedShape,
  questionsShape,
  receiptBody,
  walkShape,
} from '../api/question.ts'
import type { App, DeskContext } from './desk-context.ts'
import { answers, leftSignal, sendReply } from './send-reply.ts'

/** Bytes of a file. */
const fileShape = z.string().meta({ format: 'binary' })

/** Questions: what there is to be asked, asking, drawing, and what was asked before. */
export function askRoutes(app: App, { thread, jobs }: DeskContext): void {
  app.get('/api/questions', { schema: { response: answers(questionsShape) } }, async (_, reply) =>
    sendReply(reply, await thread.call('questions', null)),
  )
  app.post('/api/ask', { schema: { body: askBody, response: answers(answerShape) } }, async (request, reply) => {
    const { body } = request
    const left = leftSignal(reply)
    return sendReply(reply, await jobs.run(body.job, left, (watched) => thread.call('ask', body, watched)))
  })
  app.get('/api/asked', { schema: { response: answers(askedShape) } }, async (_, reply) =>
    sendReply(reply, await thread.call('asked', null)),
  )
  app.get('/api/walk', { schema: { response: answers(walkShape) } }, async (_, reply) =>
    sendReply(reply, await thread.call('walk', null)),
  )
  app.post('/api/pins', { schema: { body: pinBody, response: answers(pinnedShape) } }, async ({ body }, reply) =>
    sendReply(reply, await thread.call('pin', body)),
  )
  app.post('/api/receipt', { schema: { body: receiptBody, response: answers(fileShape) } }, async (request, reply) => {
    const { body } = request
    const left = leftSignal(reply)
    return sendReply(reply, await jobs.run(body.job, left, (watched) => thread.call('receipt', body, watched)))
  })
  app.post('/api/figure', { schema: { body: figureBody, response: answers(fileShape) } }, async (request, reply) => {
    const { body } = request
    const left = leftSignal(reply)
    return sendReply(reply, await jobs.run(body.job, left, (watched) => thread.call('figure', body, watched)))
  })
}
