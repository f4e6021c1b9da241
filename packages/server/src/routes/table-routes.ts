import type { Readable } from 'node:stream'
import { ThrumError } from '@thrum/model/ground'
import {
  acceptBody,
  broughtShape,
  droppedShape,
  largestTable,
  offerBody,
  offerShape,
  tableParams,
  tableQuery,
} from '../api/table.ts'
import type { App, DeskContext } from './desk-context.ts'
import { answers, sendReply } from './send-reply.ts'

/** Largest edited mapping that is taken [byte]: a thousand columns with what their texts mean. */
const largestMapping = 16 * 1024 * 1024

/** Bringing tables: taken in, offered under a mapping, accepted or dropped. */
export function tableRoutes(app: App, { thread, jobs, shelf }: DeskContext): void {
  // The bytes of a table are taken here and nowhere else; they are never read as text by this thread.
  void app.register(async (own: App) => {
    own.addContentTypeParser('application/octet-stream', (_request, payload, done) => done(null, payload))
    own.post(
      '/api/tables',
      { bodyLimit: largestTable, schema: { querystring: tableQuery, response: answers(offerShape) } },
      async (request, reply) => {
        const { name, job } = request.query
        if (Number(request.headers['content-length'] ?? 0) > largestTable) throw new ThrumError('server/request/too-large')
        if (request.headers['content-type'] !== 'application/octet-stream') throw new ThrumError('server/request/media-type')
        const at = await shelf.put(name, request.body as Readable)
        try {
          return sendReply(reply, await jobs.run(job, null, (watched) => thread.call('propose', at, watched)))
        } catch (error) {
          await shelf.drop(at.table)
          throw error
        }
      },
    )
  })
  app.post(
    '/api/tables/:table/offer',
    { bodyLimit: largestMapping, schema: { params: tableParams, body: offerBody, response: answers(offerShape) } },
    async ({ params, body }, reply) => {
      const { mapping, options, job } = body
      const asked = { ...shelf.find(params.table), mapping, options }
      return sendReply(reply, await jobs.run(job, null, (watched) => thread.call('offer', asked, watched)))
    },
  )
  app.post(
    '/api/tables/:table/accept',
    { bodyLimit: largestMapping, schema: { params: tableParams, body: acceptBody, response: answers(broughtShape) } },
    async ({ params, body }, reply) => {
      const { mapping, options, job } = body
      const at = shelf.find(params.table)
      const brought = await jobs.run(job, null, (watched) => thread.call('accept', { ...at, mapping, options }, watched))
      await thread.call('dropTable', at.table)
      await shelf.drop(at.table)
      return sendReply(reply, brought)
    },
  )
  app.delete(
    '/api/tables/:table',
    { schema: { params: tableParams, response: answers(droppedShape) } },
    async ({ params }, reply) => {
      const { table } = shelf.find(params.table)
      const dropped = await thread.call('dropTable', table)
      await shelf.drop(table)
      return sendReply(reply, dropped)
    },
  )
}
