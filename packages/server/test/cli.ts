import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const entry = fileURLToPath(new URL('../../cli/src/thrum.ts', import.meta.url))

/** The program of the terminal, given in a folder: what it printed. */
export function thrum(folder: string, ...argv: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, [entry, ...argv], {
    cwd: folder,
    env: { ...process.env, THRUM_HOME: `${folder}/home`, THRUM_BY: 'walker' },
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  })
  if (status !== 0) throw new Error(`thrum ${argv.join(' ')} ended with ${status}: ${stderr}`)
  return stdout
}
