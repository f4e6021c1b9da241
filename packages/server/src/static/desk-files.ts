import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import staticFiles from '@fastify/static'
import { ThrumError } from '@thrum/model/ground'
import type { FastifyInstance } from 'fastify'
import { isApi } from '../door/judge-request.ts'
import { missingDesk } from './missing-desk.ts'

/** Where the built desk lies. */
export const usualDesk = fileURLToPath(new URL('../../../desk/dist', import.meta.url))

/** True for an address that a person may have typed or kept: no file of its own, and asked for as a page. */
function looksLikePage(method: string, url: string, accept: string | undefined): boolean {
  const path = url.split('?', 1)[0] ?? ''
  const last = path.slice(path.lastIndexOf('/') + 1)
  return (method === 'GET' || method === 'HEAD') && !last.includes('.') && (accept?.includes('text/html') ?? false)
}

/** Serves the built desk; where there is none, a page that says how to make it. */
export async function serveDesk(app: FastifyInstance, folder: string): Promise<void> {
  const isBuilt = existsSync(join(folder, 'index.html'))
  if (isBuilt) {
    await app.register(staticFiles, {
      root: folder,
      wildcard: false,
      dotfiles: 'deny',
      // The files of a build have new names; the page that names them is asked for each time.
      setHeaders: (reply, path) => {
        reply.header('cache-control', path.endsWith('.html') ? 'no-cache' : 'private, max-age=3600')
      },
    })
  } else
    app.get('/', { schema: { hide: true } }, (_, reply) =>
      reply.header('content-type', 'text/html; charset=utf-8').send(missingDesk()),
    )
  app.setNotFoundHandler((request, reply) => {
    const { method, headers } = request.raw
    if (isApi(request.originalUrl) || !looksLikePage(method ?? '', request.originalUrl, headers.accept))
      throw new ThrumError('server/no-such-route')
    return isBuilt ? reply.sendFile('index.html') : reply.header('content-type', 'text/html; charset=utf-8').send(missingDesk())
  })
}
