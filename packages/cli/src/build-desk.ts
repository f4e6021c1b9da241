import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const script = fileURLToPath(new URL('../../../tools/build-desk.ts', import.meta.url))

/** Builds the pages of the desk where their sources changed; a build that fails leaves those that are there. */
export function buildDesk(): Promise<void> {
  if (!existsSync(script)) return Promise.resolve()
  return new Promise((done) => {
    const child = spawn(process.execPath, [script], { stdio: ['ignore', 'ignore', 'inherit'] })
    child.on('error', () => done())
    child.on('close', () => done())
  })
}
