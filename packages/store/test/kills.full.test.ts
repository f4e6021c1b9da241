import { createRng } from '@thrum/model/ground'
import { expect, it } from 'vitest'
import { killOnce } from '../../../trials/kills-round.ts'
import { createProjectFile } from '../src/sqlite/index.ts'
import { testPath } from './folder.ts'

it('recovery: five killed writers lose nothing that was acknowledged, and tear no step', async () => {
  const path = testPath()
  await (await createProjectFile(path)).close()
  const acknowledged = { facts: new Set<string>(), files: new Set<string>() }
  for (let kill = 1; kill <= 5; kill++) {
    const after = 50 + createRng(`full/kill/${kill}`).below(300)
    expect(await killOnce(path, `full/${kill}`, after, acknowledged)).toMatchObject({ lost: 0, torn: 0, check: 'sound' })
  }
  // A trial in which nothing was written would prove nothing.
  expect(acknowledged.facts.size).toBeGreaterThan(100)
})
