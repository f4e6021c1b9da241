import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'

/** A folder of its own for one test, gone when the test is over. */
export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'thrum-store-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** The path of a project that does not exist yet, in a folder of its own. */
export function testPath(name = 'ostrel-vale.thrum'): string {
  return join(testFolder(), name)
}
