import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { type AddressInfo, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test as base, expect, type Page } from '@playwright/test'
import { createDemonstration } from '@thrum/host'

const thrum = join(import.meta.dirname, '..', '..', 'cli', 'src', 'thrum.ts')

/** The command line, to its end. */
export function run(
  folder: string,
  ...words: readonly string[]
): Promise<{ readonly code: number | null; readonly out: string }> {
  const child = spawn(process.execPath, [thrum, ...words], {
    cwd: folder,
    env: { ...process.env, THRUM_HOME: join(folder, 'home') },
  })
  let out = ''
  child.stdout.on('data', (part: Buffer) => {
    out += part.toString()
  })
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, out })))
}

export interface Served {
  readonly folder: string
  readonly project: string
  /** Where the page opens, with its key. */
  readonly address: string
  readonly process: ChildProcess
}

/** Serves a project until the test ends, and says where. */
export function serve(folder: string, project: string, port = 0): Promise<Served> {
  const words = ['serve', project, ...(port === 0 ? [] : ['--port', String(port)])]
  const child = spawn(process.execPath, [thrum, ...words], {
    cwd: folder,
    env: { ...process.env, THRUM_HOME: join(folder, 'home') },
  })
  return new Promise((resolve, reject) => {
    let said = ''
    const hear = (part: Buffer): void => {
      said += part.toString()
      const address = /http:\/\/127\.0\.0\.1:\d+\/#key=[\w-]+/u.exec(said)?.[0]
      if (address !== undefined) resolve({ folder, project: join(folder, project), address, process: child })
    }
    child.stdout.on('data', hear)
    child.stderr.on('data', hear)
    child.on('close', (code) => reject(new Error(`the server ended with ${code}: ${said}`)))
  })
}

/** A port that nobody has, and that no server takes by itself: for a server that is to come back at the same address. */
export function ownPort(): Promise<number> {
  const probe = createServer()
  return new Promise((resolve) => {
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo
      probe.close(() => resolve(port))
    })
  })
}

/** Ends a server, and waits until it is over. */
export async function end({ process: child }: Served, signal: 'SIGTERM' | 'SIGKILL' = 'SIGTERM'): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const over = new Promise((resolve) => child.on('close', resolve))
  child.kill(signal)
  await over
}

interface Fixtures {
  /** A folder of the test's own. */
  readonly folder: string
  /** Starts a server on a project in the folder. */
  readonly start: (project: string) => Promise<Served>
  /** What the page complained of: errors in the console, and errors that nobody caught. */
  readonly complaints: readonly string[]
}

export const test = base.extend<Fixtures>({
  folder: async ({ browserName: _ }, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'thrum-desk-'))
    await use(folder)
    rmSync(folder, { recursive: true, force: true })
  },
  start: async ({ folder }, use) => {
    const started: Served[] = []
    await use(async (project) => {
      const served = await serve(folder, project)
      started.push(served)
      return served
    })
    for (const served of started) await end(served)
  },
  complaints: async ({ page }, use) => {
    const complaints: string[] = []
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text())
    })
    page.on('pageerror', (error) => complaints.push(error.message))
    await use(complaints)
  },
})

/** The demonstration, in the folder of a test. */
export const makeDemonstration = (folder: string): Promise<void> => createDemonstration(join(folder, 'ostrel-vale.thrum'))

/** An address of the page for a question. */
export function questionAddress({ address }: Served, question: string, options: object): string {
  const [origin = '', key = ''] = address.split('/#')
  return `${origin}/?q=${question}&o=${encodeURIComponent(JSON.stringify(options))}#${key}`
}

export async function settled(page: Page): Promise<void> {
  await expect(page.locator('.working')).toHaveCount(0)
  await expect(page.locator('[aria-busy="true"]')).toHaveCount(0)
}

export { expect }
