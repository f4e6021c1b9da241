import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Measured, measuredOf } from './processes.ts'

const root = join(import.meta.dirname, '..')
const windows = process.platform === 'win32'

interface Start {
  readonly work: string
  readonly command: string
  readonly args: readonly string[]
  /** What must stand in what it prints. */
  readonly prints: RegExp
  /** Made ready before each run. */
  readonly before: () => void
  readonly env: { readonly [name: string]: string }
}

function runStart({ work, command, args, prints, before, env }: Start, folder: string): number {
  before()
  const start = performance.now()
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd: folder,
    encoding: 'utf8',
    shell: windows,
    env: { ...process.env, ...env },
  })
  const seconds = (performance.now() - start) / 1000
  if (status !== 0 || !prints.test(stdout)) throw new Error(`${work} did not print what it should:\n${stdout}\n${stderr}`)
  return seconds
}

/**
 * From the command to its end: `thrum help`, and `npm start` in a folder of its own, where its demonstration may lie.
 * Cold is without Node's cache of compiled code and, for `npm start`, without the demonstration; warm is with both. Files are
 * in the system's own cache either way.
 */
export function measureStart(folder: string, runs: number, tell: (text: string) => void): readonly Measured[] {
  mkdirSync(folder, { recursive: true })
  const script = `node ${JSON.stringify(join(root, 'tools', 'boot.mjs'))} packages/cli/src/start.ts`
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ private: true, scripts: { start: script } }))
  const demonstration = join(folder, 'ostrel-vale.thrum')
  const cold = { NODE_DISABLE_COMPILE_CACHE: '1' }
  const nothing = (): void => undefined
  const help = { command: join(root, windows ? 'thrum.cmd' : 'thrum'), args: ['help'], prints: /thrum/u, before: nothing }
  const start = { command: 'npm', args: ['start', '--', '--exit'], prints: /Ostrel Vale/u }
  const starts: readonly Start[] = [
    { work: 'thrum help, cold', ...help, env: cold },
    { work: 'thrum help, warm', ...help, env: {} },
    {
      work: 'npm start, cold',
      ...start,
      before: () => {
        for (const side of ['', '-wal', '-shm']) rmSync(demonstration + side, { force: true })
      },
      env: cold,
    },
    { work: 'npm start, warm', ...start, before: nothing, env: {} },
  ]
  return starts.map((own) => {
    // Once untimed, so that warm is warm from its first run.
    runStart(own, folder)
    const found = measuredOf(
      own.work,
      null,
      Array.from({ length: runs }, () => ({ seconds: { 'to its end': runStart(own, folder) }, peak: null })),
    )
    tell(`${own.work}: ${found.seconds['to its end']?.toFixed(2)} s`)
    if (own.work.startsWith('npm') && !existsSync(demonstration)) throw new Error('npm start made no demonstration')
    return found
  })
}
