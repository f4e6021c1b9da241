import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'
import { asFailure, failureTold, statusOf } from './failure.ts'
import { type Doors, isApi, judgeRequest } from './judge-request.ts'
import { helmetSettings } from './policy.ts'

/** What is asked for but the page itself is never kept by the browser. */
const neverKept = 'no-store'

/**
 * Puts the doors before everything else: headers first, so that a refusal has them too; then the judgement; and one shape for
 * whatever goes wrong.
 *
 * @param doors asked at each request: the port is known only once it is listened on
 */
export async function openDoors(app: FastifyInstance, doors: () => Doors): Promise<void> {
  await app.register(helmet, helmetSettings)
  app.addHook('onRequest', async (request, reply) => {
    const { method, headers, rawHeaders } = request.raw
    const url = request.originalUrl
    if (isApi(url)) reply.header('cache-control', neverKept)
    judgeRequest({ method: method ?? '', url, headers, rawHeaders }, doors())
  })
  app.setErrorHandler((error, _request, reply) => {
    const failure = asFailure(error)
    return reply.code(statusOf(failure.code)).header('cache-control', neverKept).send(failureTold(failure))
  })
  // Forms and plain text need no preflight from a foreign page: they are not read here at all.
  app.removeContentTypeParser('text/plain')
}
