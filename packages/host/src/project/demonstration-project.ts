import { createProjectFile } from '@thrum/store/sqlite'
import { demonstrationFacts } from '../demonstration/demonstration-facts.ts'

import { shippedSeed } from '../demonstration/shipped-seed.ts'

import { localAuthor } from '../platform/person.ts'

/** Makes the demonstration project Ostrel Vale. @throws ThrumError store/exists, ... */
export async function createDemonstration(path: string): Promise<void> {
  const log = await createProjectFile(path)
  try {
    await log.append(demonstrationFacts({ seed: shippedSeed, author: localAuthor() }))
  } finally {
    await log.close()
  }
}
