import { createProject } from '@thrum/host'
import { createRng } from '@thrum/model/ground'
import { expect, it } from 'vitest'
import { roundAuthor } from '../../../trials/kills-facts.ts'
import { killMigration } from '../../../trials/kills-migration.ts'
import { killOnce, nothingAcknowledged } from '../../../trials/kills-round.ts'
import { testPath } from './folder.ts'

it('recovery: killed writers, importers and lifters lose nothing that was acknowledged, and tear no step', async () => {
  const path = testPath()
  await (await createProject(path, 'Kills', roundAuthor('beginning'))).close()
  const acknowledged = nothingAcknowledged()
  for (let kill = 1; kill <= 5; kill++) {
    const after = 150 + createRng(`full/kill/${kill}`).below(500)
    expect(await killOnce(path, `full/${kill}`, after, acknowledged)).toMatchObject({
      lost: 0,
      torn: 0,
      check: 'sound',
      unsoundBackups: 0,
    })
  }
  // A trial in which nothing was written would prove nothing.
  expect(acknowledged.facts.size).toBeGreaterThan(50)
  expect(acknowledged.tables.size).toBeGreaterThan(0)
  const migration = await killMigration(path, `${path}-lifted`, 600)
  expect(migration).toMatchObject({ lost: 0, torn: 0 })
  expect(migration.copies).toBeGreaterThan(0)
})
