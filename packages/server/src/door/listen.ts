import type { AddressInfo } from 'node:net'
import { ThrumError } from '@thrum/model/ground'
import type { FastifyInstance } from 'fastify'

/** Where the desk is served when nobody says otherwise. */
export const usualPort = 4711
/** Ports that are tried, one after the other. */
const mostTries = 50

/** The only address that is ever listened on: this machine, seen from itself. */
export const loopback = '127.0.0.1'

/**
 * Listens on a port, or on the next free one above it; 0 takes any free one.
 *
 * @throws ThrumError server/no-port where none of them is free
 */
export async function listenOn(app: Pick<FastifyInstance, 'listen' | 'server'>, wished: number): Promise<number> {
  for (let port = wished; port < wished + mostTries && port <= 65_535; port++) {
    try {
      await app.listen({ host: loopback, port })
      return (app.server.address() as AddressInfo).port
    } catch (cause) {
      const { code } = cause as NodeJS.ErrnoException
      if (code !== 'EADDRINUSE' && code !== 'EACCES') throw cause
    }
  }
  throw new ThrumError('server/no-port', { port: wished })
}
