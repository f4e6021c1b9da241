import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { fieldDescribed, makeFact, worthSet } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { createSpeaker } from '@thrum/report'
import { describe, expect, it } from 'vitest'
import { createProject, english, factsOf, openProject, requireWritable } from '../../src/index.ts'
import { testFolder } from '../folder.ts'

async function codeOf(run: () => Promise<unknown>): Promise<string> {
  try {
    await run()
  } catch (error) {
    if (error instanceof ThrumError) return error.code
    throw error
  }
  return 'none'
}

it('a project of a newer layout is not for writing, and the remedy is that of the reason', async () => {
  const path = join(testFolder(), 'own.thrum')
  await (await createProject(path, 'Ostrel Vale')).close()
  const db = new DatabaseSync(path)
  db.exec('pragma user_version = 7')
  db.close()
  const project = await openProject(path, 'write')
  try {
    requireWritable(project)
    expect.unreachable()
  } catch (error) {
    if (!(error instanceof ThrumError)) throw error
    const say = createSpeaker(english)
    expect(say(error.remedy)).toBe('Nothing was changed. Install the newer Thrum to write in it.')
  } finally {
    await project.close()
  }
})

describe('a project', () => {
  it('is made with its title, and an id of its own', async () => {
    const folder = testFolder()
    const ids = []
    for (const name of ['one', 'two']) {
      const project = await createProject(join(folder, `${name}.thrum`), 'Ostrel Vale')
      const snapshot = await project.snapshot()
      expect(snapshot.project?.title).toBe('Ostrel Vale')
      ids.push(snapshot.project?.id)
      await project.close()
    }
    expect(new Set(ids).size).toBe(2)
  })

  it('with a title that cannot be one leaves no file behind', async () => {
    const path = join(testFolder(), 'own.thrum')
    expect(await codeOf(() => createProject(path, ''))).toBe('model/fact/misshapen')
    expect(existsSync(path)).toBe(false)
  })

  it('keeps its snapshot until something new comes, from here or from another program', async () => {
    const path = join(testFolder(), 'own.thrum')
    const project = await createProject(path, 'Ostrel Vale')
    const first = await project.snapshot()
    expect(await project.snapshot()).toBe(first)

    await project.log.append([makeFact(fieldDescribed, { field: 'Weir' }, project.author)])
    const second = await project.snapshot()
    expect(second.fields.map(({ name }) => name)).toEqual(['Weir'])

    const other = await openProject(path, 'write')
    await other.log.append([makeFact(fieldDescribed, { field: 'Ings' }, other.author)])
    await other.close()
    const third = await project.snapshot()
    expect(third.fields.map(({ name }) => name)).toEqual(['Weir', 'Ings'])
    expect(await project.snapshot()).toBe(third)
    await project.close()
  })

  it('does not fold its data again for what was asked of it', async () => {
    const path = join(testFolder(), 'own.thrum')
    const project = await createProject(path, 'Ostrel Vale')
    const first = await project.snapshot()
    for (const worth of [2, 3]) {
      await project.log.append([makeFact(worthSet, { question: 'what-differs', asked: '{}', worth }, project.author)])
      const { tables, worths } = await project.snapshot()
      expect(tables).toBe(first.tables)
      expect(worths.at(-1)?.worth).toBe(worth)
    }
    await project.log.append([makeFact(fieldDescribed, { field: 'Weir' }, project.author)])
    const last = await project.snapshot()
    expect(last.tables).not.toBe(first.tables)
    expect([last.fields.length, last.worths.length]).toEqual([1, 2])
    await project.close()
  })

  it('writes later than everything it has read, though its own clock is behind', async () => {
    const path = join(testFolder(), 'own.thrum')
    const ahead = await createProject(path, 'Ostrel Vale')
    const fact = makeFact(fieldDescribed, { field: 'Weir' }, ahead.author)
    await ahead.log.append([{ ...fact, at: `2999-01-01T00:00:00.000Z/0000/${fact.device}` }])
    await ahead.close()
    const project = await openProject(path, 'write')
    await project.snapshot()
    expect(project.author.clock.next() > '2999-01-01T00:00:00.000Z').toBe(true)
    await project.close()
  })

  it('opened for reading refuses to be written, and says why', async () => {
    const path = join(testFolder(), 'own.thrum')
    await (await createProject(path, 'Ostrel Vale')).close()
    const before = readFileSync(path)
    const project = await openProject(path, 'read')
    expect(project.access).toMatchObject({ mode: 'read', because: { id: 'store/read/asked' } })
    expect(() => requireWritable(project)).toThrow('host/read-only')
    await project.close()
    expect(await factsOf(path)).toHaveLength(1)
    expect(readFileSync(path).equals(before)).toBe(true)
  })
})
