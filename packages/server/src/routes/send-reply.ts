import type { Readable } from 'node:stream'
import type { FastifyReply } from 'fastify'
import type { z } from 'zod'
import { keptHeader } from '../api/stream.ts'
import { failureShape } from '../api/told.ts'
import type { Reply } from '../thread/protocol.ts'

/** What a route answers, for its description: its own shape, or a failure. */
export const answers = <S extends z.ZodType>(shape: S) => ({ 200: shape, default: failureShape })

/** Sends what the thread made, as it is. */
export function sendReply(reply: FastifyReply, { media, body, file, kept }: Reply): FastifyReply {
  if (kept !== undefined) reply.header(keptHeader, kept ? 'yes' : 'no')
  if (file !== undefined) reply.header('content-disposition', `attachment; filename="${file}"`)
  // Bytes come out of the other thread as a plain array of them.
  return reply.header('content-type', media).send(typeof body === 'string' ? body : Buffer.from(body))
}

/** Sends a line of events that goes on until the page leaves. */
export function sendEvents(reply: FastifyReply, line: Readable): FastifyReply {
  return reply.header('content-type', 'text/event-stream; charset=utf-8').send(line)
}

/** Aborts when the page that asked goes away before it was answered. */
export function leftSignal(reply: FastifyReply): AbortSignal {
  const left = new AbortController()
  reply.raw.once('close', () => {
    if (!reply.raw.writableFinished) left.abort()
  })
  return left.signal
}
