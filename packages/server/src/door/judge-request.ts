import { ThrumError } from '@thrum/model/ground'
import { tokenHeader } from '../api/stream.ts'
import { isPlainPath } from './plain-path.ts'
import { isToken } from './token.ts'

/** What a door must see of a request. */
export interface Knock {
  readonly method: string
  /** As it came, before anything was read into it. */
  readonly url: string
  readonly headers: { readonly [name: string]: string | readonly string[] | undefined }
  /** Names and values as they came: a second Host is not lost in them. */
  readonly rawHeaders: readonly string[]
}

export interface Doors {
  readonly token: string
  /** The port that is listened on. */
  readonly port: number
}

const isRead = (method: string): boolean => method === 'GET' || method === 'HEAD'
export const isApi = (url: string): boolean => /^\/api(?:[/?#]|$)/u.test(url)

function requireHost({ headers, rawHeaders }: Knock, port: number): string {
  const hosts = rawHeaders.filter((name, at) => at % 2 === 0 && name.toLowerCase() === 'host')
  const { host } = headers
  const known = [`127.0.0.1:${port}`, `localhost:${port}`]
  if (hosts.length !== 1 || typeof host !== 'string' || !known.includes(host.toLowerCase())) {
    throw new ThrumError('server/door/host', { found: typeof host === 'string' ? host.slice(0, 200) : '' })
  }
  return host.toLowerCase()
}

/** Only our own page asks: what another page sends has its Origin, or says that it comes from elsewhere. */
function requireOrigin({ method, headers }: Knock, host: string): void {
  const { origin } = headers
  const site = headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    throw new ThrumError('server/door/origin', { found: String(site) })
  if (origin === undefined && isRead(method)) return
  if (origin !== `http://${host}`) throw new ThrumError('server/door/origin', { found: String(origin ?? '').slice(0, 200) })
}

/**
 * Judges a request before anything else looks at it. Our own page alone may speak: asked under our own name, from our own
 * origin, with the key of this run.
 *
 * @throws ThrumError server/door/path (400), server/door/host (403), server/door/origin (403), server/door/token (401)
 */
export function judgeRequest(knock: Knock, { token, port }: Doors): void {
  const host = requireHost(knock, port)
  if (!isPlainPath(knock.url)) throw new ThrumError('server/door/path')
  if (!isApi(knock.url) && isRead(knock.method)) return
  requireOrigin(knock, host)
  if (isApi(knock.url) && !isToken(token, knock.headers[tokenHeader])) throw new ThrumError('server/door/token')
}
