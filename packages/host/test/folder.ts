import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'

/** A folder of its own for one test, gone when the test is over; what belongs to this machine is kept in it, too. */
export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-host-'))
  process.env.THRUM_HOME = join(folder, 'home')
  process.env.THRUM_BY = 'walker'
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}
