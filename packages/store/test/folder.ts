import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'

/** A folder of its own for one test, gone when the test is over. */
export function testFolder(parent = tmpdir()): string {
  const folder = mkdtempSync(join(parent, 'thrum-store-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** The same on a disk in memory where the system has one: for tests of many small commits in which no disk is at stake. */
export function quickFolder(): string {
  return testFolder(existsSync('/dev/shm') ? '/dev/shm' : tmpdir())
}

/** The path of a project that does not exist yet, in a folder of its own. */
export function testPath(name = 'ostrel-vale.thrum'): string {
  return join(testFolder(), name)
}
