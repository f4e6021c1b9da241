import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createDemonstration, createProject, factsOf } from '@thrum/host'
import { createProjectFile } from '@thrum/store/sqlite'
import { describe, expect, it } from 'vitest'
import { testFolder } from '../folder.ts'

describe('the demonstration', () => {
  it('is made anew where a killed program left its file without a fact, or without a byte', async () => {
    const folder = testFolder()
    const [empty, blank] = [join(folder, 'empty.thrum'), join(folder, 'blank.thrum')]
    await (await createProjectFile(empty)).close()
    writeFileSync(blank, '')
    for (const path of [empty, blank]) {
      await createDemonstration(path)
      expect((await factsOf(path)).length).toBeGreaterThan(20)
    }
  })

  it('is left as it is where anything stands in it', async () => {
    const path = join(testFolder(), 'own.thrum')
    await (await createProject(path, 'Mine')).close()
    await createDemonstration(path)
    expect(await factsOf(path)).toHaveLength(1)
  })
})
