import {
  correctionBody,
  correctionShape,
  countsQuery,
  countsShape,
  historyQuery,
  historyShape,
  settlingBody,
  waitingShape,
  withdrawalBody,
  withdrawalShape,
} from '../api/counts.ts'
import type { App, DeskContext } from './desk-context.ts'
import { answers, leftSignal, sendReply } from './send-reply.ts'

const listOf = (given: string | readonly string[] | undefined): readonly string[] =>
  given === undefined ? [] : typeof given === 'string' ? [given] : given

/** The counts as a grid, and what a person changes in them. */
export function countsRoutes(app: App, { thread }: DeskContext): void {
  app.get('/api/counts', { schema: { querystring: countsQuery, response: answers(countsShape) } }, async (request, reply) => {
    const { offset, limit, sort, filter, addresses } = request.query
    const asked = {
      offset,
      limit,
      sort: sort ?? null,
      filters: listOf(filter),
      addresses: addresses === undefined ? null : listOf(addresses),
    }
    return sendReply(reply, await thread.call('counts', asked, { signal: leftSignal(reply) }))
  })
  app.get('/api/history', { schema: { querystring: historyQuery, response: answers(historyShape) } }, async ({ query }, reply) =>
    sendReply(reply, await thread.call('history', query)),
  )
  app.post(
    '/api/corrections',
    { schema: { body: correctionBody, response: answers(correctionShape) } },
    async ({ body }, reply) => sendReply(reply, await thread.call('correct', body)),
  )
  app.post(
    '/api/withdrawals',
    { schema: { body: withdrawalBody, response: answers(withdrawalShape) } },
    async ({ body }, reply) => sendReply(reply, await thread.call('withdraw', body)),
  )
  app.post('/api/settlings', { schema: { body: settlingBody, response: answers(correctionShape) } }, async ({ body }, reply) =>
    sendReply(reply, await thread.call('settle', body)),
  )
  app.get('/api/waiting', { schema: { response: answers(waitingShape) } }, async (_, reply) =>
    sendReply(reply, await thread.call('waiting', null)),
  )
}
