import { existsSync, mkdirSync, readdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { describe, expect, it } from 'vitest'
import { createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { type Layouts, layouts } from '../../src/sqlite/layout.ts'
import { openWithLayouts } from '../../src/sqlite/open-project-file.ts'
import { allFacts, field, sheet } from '../facts.ts'
import { testPath } from '../folder.ts'
import { refusal } from '../refusal.ts'

/** A layout 0 that never was: it had no way to find facts by subject, and called the kind of a fact its sort. */
const withLayoutZero: Layouts = {
  newest: 1,
  steps: [
    {
      from: 0,
      run: (db) =>
        db.exec(
          'alter table fact rename column sort to kind; create index fact_subject on fact (subject) where subject is not null',
        ),
    },
  ],
}

async function projectOfLayoutZero(): Promise<string> {
  const path = testPath()
  const log = await createProjectFile(path)
  await log.append([field('Weir'), ...sheet('spring')])
  await log.close()
  byHand(path, 'drop index fact_subject; alter table fact rename column kind to sort; pragma user_version = 0')
  return path
}

function byHand(path: string, sql: string): void {
  const db = new DatabaseSync(path)
  db.exec(sql)
  db.close()
}

function layoutAndFacts(path: string): readonly unknown[] {
  const db = new DatabaseSync(path, { readOnly: true })
  const version = Object.values(db.prepare('pragma user_version').get() ?? {})[0]
  const facts = Object.values(db.prepare('select count(*) from fact').get() ?? {})[0]
  db.close()
  return [version, facts]
}

describe('a file of an older layout', () => {
  it('is lifted when opened for writing, after a backup beside it', async () => {
    const path = await projectOfLayoutZero()
    const log = await openWithLayouts(path, { mode: 'write' }, withLayoutZero)
    expect(log.access.mode).toBe('write')
    await log.append([field('Mill')])
    expect((await allFacts(log)).map(({ kind }) => kind).filter((kind) => kind === 'field-described')).toHaveLength(2)
    await log.close()
    expect(readdirSync(dirname(path)).sort()).toEqual(['ostrel-vale.thrum', 'ostrel-vale.thrum.layout-0.backup'])
    expect(layoutAndFacts(path)).toEqual([1, 6])
    expect(layoutAndFacts(`${path}.layout-0.backup`)).toEqual([0, 5])
    // The backup is a project of its own.
    const old = await openWithLayouts(`${path}.layout-0.backup`, { mode: 'write' }, withLayoutZero)
    expect(await old.factCount()).toBe(5)
    await old.close()
  })

  it('is lifted through several layouts at once', async () => {
    const path = await projectOfLayoutZero()
    const three: Layouts = {
      newest: 3,
      steps: [
        { from: 2, run: (db) => db.exec('create table weather (station text)') },
        ...withLayoutZero.steps,
        { from: 1, run: (db) => db.exec('alter table peer add column seen text') },
      ],
    }
    await (await openWithLayouts(path, { mode: 'write' }, three)).close()
    expect(layoutAndFacts(path)).toEqual([3, 5])
  })

  it('stays as it was when a step fails, and the backup stays too', async () => {
    const path = await projectOfLayoutZero()
    const failing: Layouts = { newest: 1, steps: [{ from: 0, run: (db) => db.exec('drop table fact; create table fact (') }] }
    await expect(openWithLayouts(path, { mode: 'write' }, failing)).rejects.toThrow()
    expect(layoutAndFacts(path)).toEqual([0, 5])
    // The next try does not replace the first backup.
    await (await openWithLayouts(path, { mode: 'write' }, withLayoutZero)).close()
    expect(readdirSync(dirname(path)).sort()).toEqual([
      'ostrel-vale.thrum',
      'ostrel-vale.thrum.layout-0-2.backup',
      'ostrel-vale.thrum.layout-0.backup',
    ])
  })

  it('is not lifted without a sound backup', async () => {
    const path = await projectOfLayoutZero()
    // A folder stands where the copy would be written.
    mkdirSync(`${path}.layout-0.backup.partial-${process.pid}`)
    await expect(openWithLayouts(path, { mode: 'write' }, withLayoutZero)).rejects.toThrow()
    expect(layoutAndFacts(path)).toEqual([0, 5])
  })

  it('is left alone when opened for reading, or when no step leads on', async () => {
    const path = await projectOfLayoutZero()
    await refusal(openWithLayouts(path, { mode: 'read' }, withLayoutZero), 'store/older-layout')
    await refusal(openProjectFile(path, { mode: 'write' }), 'store/layout-unreadable')
    expect(layouts.newest).toBe(1)
    expect(existsSync(`${path}.layout-0.backup`)).toBe(false)
    expect(layoutAndFacts(path)).toEqual([0, 5])
  })

  it('is lifted once by two programs that open it together', async () => {
    const path = await projectOfLayoutZero()
    const both = await Promise.all([1, 2].map(() => openWithLayouts(path, { mode: 'write' }, withLayoutZero)))
    for (const log of both) expect(await log.factCount()).toBe(5)
    for (const log of both) await log.close()
    expect(readdirSync(dirname(path)).sort()).toEqual(['ostrel-vale.thrum', 'ostrel-vale.thrum.layout-0.backup'])
  })
})
