import { mkdtempSync, rmSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDemonstration, createProject } from '@thrum/host'
import { onTestFinished } from 'vitest'
import { startServer } from '../src/index.ts'

/** What is to be done when a test is over; or all tests of a file, which then share what they do not change. */
export type AtEnd = (end: () => void | Promise<void>) => void

/** A folder of its own for one test, gone when the test is over; what belongs to this machine is kept in it, too. */
export function testFolder(atEnd: AtEnd = onTestFinished): string {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-server-'))
  process.env.THRUM_HOME = join(folder, 'home')
  process.env.THRUM_BY = 'walker'
  atEnd(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

export interface Knocked {
  readonly status: number
  readonly headers: { readonly [name: string]: string | readonly string[] | undefined }
  readonly bytes: Buffer
  readonly text: string
  /** The reply as JSON. */
  json<T = unknown>(): T
}

/** What is said to a port of this machine, to the letter: nothing is mended on the way as a browser would. */
export function knock(
  port: number,
  method: string,
  path: string,
  headers: { readonly [name: string]: string } = {},
  body?: string | Uint8Array,
): Promise<Knocked> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, method, path, headers }, (reply) => {
      const parts: Buffer[] = []
      reply.on('data', (part: Buffer) => parts.push(part))
      reply.on('error', reject)
      reply.on('end', () => {
        const bytes = Buffer.concat(parts)
        const text = bytes.toString('utf8')
        resolve({
          status: reply.statusCode ?? 0,
          headers: reply.headers,
          bytes,
          text,
          json: <T>() => JSON.parse(text) as T,
        })
      })
    })
    asked.on('error', reject)
    asked.end(body)
  })
}

/** A server as its own page speaks to it. */
export interface Serving {
  readonly folder: string
  readonly port: number
  readonly key: string
  readonly base: string
  readonly own: { readonly [name: string]: string }
  get(path: string): Promise<Knocked>
  post(path: string, body: unknown): Promise<Knocked>
  drop(path: string): Promise<Knocked>
  bring(name: string, table: string | Uint8Array): Promise<Knocked>
  close(): Promise<void>
}

async function serveIn(folder: string, project: string | null, desk?: string, atEnd: AtEnd = onTestFinished): Promise<Serving> {
  const server = await startServer({ folder, project, port: 0, ...(desk === undefined ? {} : { desk }) })
  let isClosed = false
  const close = async (): Promise<void> => {
    if (!isClosed) await server.close()
    isClosed = true
  }
  atEnd(close)
  const { port } = server
  const [base = '', key = ''] = server.address.split('/#key=')
  const own = { 'x-thrum-token': key, origin: base }
  const json = { ...own, 'content-type': 'application/json' }
  return {
    folder,
    port,
    key,
    base,
    own,
    get: (path) => knock(port, 'GET', path, { 'x-thrum-token': key, 'sec-fetch-site': 'same-origin' }),
    post: (path, body) => knock(port, 'POST', path, json, JSON.stringify(body)),
    drop: (path) => knock(port, 'DELETE', path, own),
    bring: (name, table) =>
      knock(
        port,
        'POST',
        `/api/tables?name=${encodeURIComponent(name)}`,
        { ...own, 'content-type': 'application/octet-stream' },
        table,
      ),
    close,
  }
}

/** Things to be done at the end of all tests of a file, the last begun first. */
export function untilAllEnd(): { readonly atEnd: AtEnd; readonly end: () => Promise<void> } {
  const ends: (() => void | Promise<void>)[] = []
  return {
    atEnd: (end) => void ends.unshift(end),
    end: async () => {
      for (const end of ends) await end()
    },
  }
}

/** An empty project, served. */
export async function serveEmpty(title = 'My Vale', atEnd: AtEnd = onTestFinished): Promise<Serving> {
  const folder = testFolder(atEnd)
  await (await createProject(join(folder, 'own.thrum'), title)).close()
  return await serveIn(folder, join(folder, 'own.thrum'), undefined, atEnd)
}

/** The demonstration, served. */
export async function serveDemonstration(desk?: string, atEnd: AtEnd = onTestFinished): Promise<Serving> {
  const folder = testFolder(atEnd)
  await createDemonstration(join(folder, 'vale.thrum'))
  return await serveIn(folder, join(folder, 'vale.thrum'), desk, atEnd)
}

/** A folder without a project, served. */
export const serveNothing = (): Promise<Serving> => serveIn(testFolder(), null)
