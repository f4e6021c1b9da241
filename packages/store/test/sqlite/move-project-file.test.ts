import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createProjectFile, moveProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { allFacts, field } from '../facts.ts'
import { testPath } from '../folder.ts'
import { refusal } from '../refusal.ts'

async function projectWithFacts(): Promise<string> {
  const path = testPath()
  const log = await createProjectFile(path)
  await log.append([field('Weir'), field('Mill')])
  await log.close()
  return path
}

describe('moving a project file', () => {
  it('takes what stands beside it along, and leaves one file that many may open again', async () => {
    const path = await projectWithFacts()
    const killed = await openProjectFile(path, { mode: 'write' })
    await killed.append([field('Ings')])
    // As a killed program leaves it: the newest facts stand in the file ending in -wal.
    const [whole, wal] = [readFileSync(path), readFileSync(`${path}-wal`)]
    await killed.close()
    writeFileSync(path, whole)
    writeFileSync(`${path}-wal`, wal)
    await moveProjectFile(path, `${path}.kept`)
    expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum.kept'])
    const [a, b] = [
      await openProjectFile(`${path}.kept`, { mode: 'write' }),
      await openProjectFile(`${path}.kept`, { mode: 'write' }),
    ]
    await a.append([field('Oxlea')])
    expect((await allFacts(b)).map(({ id }) => id)).toEqual(['field-Weir', 'field-Mill', 'field-Ings', 'field-Oxlea'])
    await a.close()
    await b.close()
  })

  it('is refused while another program has it open, and where a file stands already', async () => {
    const path = await projectWithFacts()
    const log = await openProjectFile(path, { mode: 'write' })
    await refusal(moveProjectFile(path, `${path}.kept`), 'store/in-use')
    await log.append([field('Ings')])
    await log.close()
    writeFileSync(`${path}.kept`, 'somebody else’s')
    await refusal(moveProjectFile(path, `${path}.kept`), 'store/exists')
    expect(existsSync(path)).toBe(true)
    expect(readFileSync(`${path}.kept`, 'utf8')).toBe('somebody else’s')
  })
})
