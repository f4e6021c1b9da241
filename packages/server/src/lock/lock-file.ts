import { createHash } from 'node:crypto'
import { chmodSync, lstatSync, mkdirSync, readFileSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { z } from 'zod'

/** A server that said it serves a project: where, and the key of its page. */
const shape = z.object({
  pid: z.int(),
  port: z.int().min(1).max(65_535),
  /** Hash by which the server that is there now is known to serve this project. */
  project: z.string(),
  /** With the key in it: the file may be read by its owner alone. */
  address: z.string(),
})
export type Serving = z.infer<typeof shape>

/** What a server says of itself to anybody on this machine. */
const pingShape = z.object({ thrum: z.literal(true), project: z.string().nullable() })
export type Ping = z.infer<typeof pingShape>

/** A server on this machine answers within this time [ms], or is none. */
const patience = 2000

/** A folder of this account's own; null where something else has its name. */
function lockFolder(): string | null {
  const own = process.getuid?.()
  const folder = join(tmpdir(), `thrum-serving${own === undefined ? '' : `-${own}`}`)
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    const found = lstatSync(folder)
    if (!found.isDirectory() || (own !== undefined && found.uid !== own)) return null
    chmodSync(folder, 0o700)
    return folder
  } catch {
    return null
  }
}

function lockPath(project: string): string | null {
  const folder = lockFolder()
  if (folder === null) return null
  try {
    return join(folder, `${createHash('sha256').update(realpathSync(project)).digest('hex')}.json`)
  } catch {
    return null
  }
}

function readLock(path: string): Serving | null {
  try {
    return shape.parse(JSON.parse(readFileSync(path, 'utf8')))
  } catch {
    return null
  }
}

/** Asks a port of this machine whether a server of ours is behind it. No key is sent. */
function ping(port: number): Promise<Ping | null> {
  return new Promise((resolve) => {
    const asked = request({ host: '127.0.0.1', port, path: '/ping', timeout: patience }, (reply) => {
      let text = ''
      reply.setEncoding('utf8')
      reply.on('data', (part: string) => {
        text += part
        if (text.length > 1000) asked.destroy()
      })
      reply.on('end', () => {
        try {
          resolve(pingShape.parse(JSON.parse(text)))
        } catch {
          resolve(null)
        }
      })
    })
    asked.on('timeout', () => asked.destroy())
    asked.on('error', () => resolve(null))
    asked.on('close', () => resolve(null))
    asked.end()
  })
}

/** The server that serves a project now; null where none does, whatever an old file says. */
export async function servingNow(project: string): Promise<Serving | null> {
  const path = lockPath(project)
  const found = path === null ? null : readLock(path)
  if (found === null) return null
  const alive = await ping(found.port)
  return alive?.project === found.project ? found : null
}

/**
 * The key of a server of this project that was killed: a page that it had open goes on with the next one. Null where the last
 * one ended by itself (it took its word back), or its process is still there.
 */
export function keyLeftBehind(project: string): string | null {
  const path = lockPath(project)
  const found = path === null ? null : readLock(path)
  if (found === null || isAlive(found.pid)) return null
  return /#key=([\w-]{43})$/u.exec(found.address)?.[1] ?? null
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** Says that a project is served. Where it cannot be said, a second server will simply start. */
export function sayServing(project: string, serving: Serving): void {
  const path = lockPath(project)
  if (path === null) return
  const beside = `${path}.${process.pid}`
  try {
    writeFileSync(beside, `${JSON.stringify(serving)}\n`, { mode: 0o600 })
    renameSync(beside, path)
  } catch {
    rmSync(beside, { force: true })
  }
}

/** Takes back what this program said of a project; what another said meanwhile stays. */
export function sayNotServing(project: string, port: number): void {
  const path = lockPath(project)
  const found = path === null ? null : readLock(path)
  if (path !== null && found?.pid === process.pid && found.port === port) rmSync(path, { force: true })
}
