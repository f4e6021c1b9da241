import { rmSync, statSync } from 'node:fs'
import type { ProjectLog } from '@thrum/store'
import { createProjectFile, openProjectFile } from '@thrum/store/sqlite'
import { demonstrationFacts } from '../demonstration/demonstration-facts.ts'
import { shippedSeed } from '../demonstration/shipped-seed.ts'
import { localAuthor } from '../platform/person.ts'

/** The file, whether it is there or not. One that a killed program left without a byte is made anew. */
async function openOrCreate(path: string): Promise<ProjectLog> {
  const size = statSync(path, { throwIfNoEntry: false })?.size
  if (size === 0) rmSync(path)
  return size === undefined || size === 0 ? await createProjectFile(path) : await openProjectFile(path, { mode: 'write' })
}

/**
 * Makes the demonstration project Ostrel Vale where it is not there, or where nothing of it is but the file. Any other file
 * is left as it is.
 *
 * @throws ThrumError store/...
 */
export async function createDemonstration(path: string): Promise<void> {
  const log = await openOrCreate(path)
  try {
    if ((await log.factCount()) > 0) return
    await log.append(demonstrationFacts({ seed: shippedSeed, author: localAuthor() }))
  } finally {
    await log.close()
  }
}
