import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { describe, expect, it } from 'vitest'
import { checkProjectFile, createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { author, field } from '../facts.ts'
import { testFolder, testPath } from '../folder.ts'
import { refusal, requireWords } from '../refusal.ts'

describe('createProjectFile', () => {
  it('makes one file, marked as ours, with the tables of layout 1', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum'])
    expect(readFileSync(path).toString('latin1', 68, 72)).toBe('Thrm')
    const db = new DatabaseSync(path, { readOnly: true })
    const tables = db.prepare("select name from sqlite_schema where type = 'table' order by name").all()
    expect(tables.map(({ name }) => name)).toEqual(['attachment', 'attachment_part', 'derived', 'fact', 'peer'])
    expect(Object.values(db.prepare('pragma journal_mode').get() ?? {})).toEqual(['wal'])
    db.close()
  })

  it('replaces nothing, and says which folder is missing', async () => {
    const path = testPath()
    writeFileSync(path, 'my notes')
    await refusal(createProjectFile(path), 'store/exists')
    expect(readFileSync(path, 'utf8')).toBe('my notes')
    const { values } = await refusal(createProjectFile(join(dirname(path), 'nowhere', 'a.thrum')), 'store/folder-missing')
    expect(values.folder).toBe(join(dirname(path), 'nowhere'))
    expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum'])
  })

  it('of two that want one name, one is refused', async () => {
    const path = testPath()
    const both = await Promise.allSettled([createProjectFile(path), createProjectFile(path)])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    for (const one of both) if (one.status === 'fulfilled') await one.value.close()
  })
})

describe('openProjectFile', () => {
  it('finds what was written, and leaves a single file when closed, whoever reads meanwhile', async () => {
    const path = testPath()
    const log = await createProjectFile(path)
    await log.append([field('Weir')])
    const reader = await openProjectFile(path, { mode: 'read' })
    expect(await reader.factCount()).toBe(1)
    await log.append([field('Mill')])
    expect(await reader.factCount()).toBe(2)
    await log.close()
    // Nothing is left outside the project file even while the reader holds on.
    expect(statSync(`${path}-wal`).size).toBe(0)
    expect(await reader.factCount()).toBe(2)
    await reader.close()
    expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum'])
    expect(await checkProjectFile(path)).toEqual({ facts: 2, attachments: 0 })
  })

  it('takes no facts when it was opened for reading, and says so', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const log = await openProjectFile(path, { mode: 'read' })
    expect(log.access).toEqual({ mode: 'read', because: { id: 'store/read/asked', values: {} } })
    await refusal(log.append([field('Weir')]), 'store/read-only')
    await refusal(log.putAttachment('text/csv', []), 'store/read-only')
    await refusal(log.keepDerived('a', { digest: 'b', bytes: new Uint8Array() }), 'store/read-only')
    await refusal(log.keepPeer({ id: 'a', name: 'b', key: 'c', sent: 0, received: 0 }), 'store/read-only')
    await log.close()
  })

  it('follows a link to the file itself', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const link = join(testFolder(), 'link.thrum')
    symlinkSync(path, link)
    const log = await openProjectFile(link, { mode: 'write' })
    await log.append([field('Weir')])
    expect(existsSync(`${path}-wal`)).toBe(true)
    await log.close()
    expect(await checkProjectFile(path)).toEqual({ facts: 1, attachments: 0 })
  })

  it('says that there is no such file, and makes none', async () => {
    const path = testPath()
    await refusal(openProjectFile(path, { mode: 'write' }), 'store/no-such-file')
    expect(readdirSync(dirname(path))).toEqual([])
  })

  const otherDatabase = (path: string): void => {
    const db = new DatabaseSync(path)
    db.exec('create table note (text)')
    db.close()
  }
  const strangers: readonly [string, (path: string) => void][] = [
    ['empty', (path) => writeFileSync(path, '')],
    ['folder', (path) => mkdirSync(path)],
    ['other-file', (path) => writeFileSync(path, 'field,plot,date,tally\nWeir,1,2026-05-04,3\n')],
    [
      'other-file',
      (path) =>
        writeFileSync(
          path,
          Uint8Array.from({ length: 5000 }, (_, k) => (k * k) & 255),
        ),
    ],
    ['other-file', (path) => writeFileSync(path, 'SQLite')],
    ['other-database', otherDatabase],
  ]
  it.each(strangers)('tells what it found instead of a project: %s', async (found, make) => {
    const path = testPath('counts.thrum')
    make(path)
    const before = hashOf(path)
    for (const mode of ['write', 'read'] as const) {
      const { values } = await refusal(openProjectFile(path, { mode }), 'store/not-a-project')
      expect(values.found).toEqual({ id: `store/found/${found}`, values: {} })
    }
    expect(hashOf(path)).toBe(before)
    expect(readdirSync(dirname(path))).toEqual(['counts.thrum'])
  })

  it('reads a newer layout as far as it can, and says why it does not write', async () => {
    const path = testPath()
    const log = await createProjectFile(path)
    await log.append([field('Weir')])
    await log.close()
    changeByHand(path, 'pragma user_version = 2; alter table fact add column colour text')
    const newer = await openProjectFile(path, { mode: 'write' })
    expect(newer.access).toEqual({ mode: 'read', because: { id: 'store/read/newer-layout', values: { found: 2, known: 1 } } })
    if (newer.access.mode === 'read') requireWords(newer.access.because)
    expect(await newer.factById('field-Weir')).toMatchObject({ id: 'field-Weir' })
    await refusal(newer.append([field('Mill')]), 'store/read-only')
    await newer.close()
    changeByHand(path, 'alter table fact rename to happening')
    await refusal(openProjectFile(path, { mode: 'write' }), 'store/layout-unreadable')
    expect(readdirSync(dirname(path))).toEqual(['ostrel-vale.thrum'])
  })

  it('keeps facts of kinds and versions it does not know', async () => {
    const path = testPath()
    const log = await createProjectFile(path)
    const stranger = { ...field('Weir', author()), kind: 'moth-trap-emptied', v: 3, body: { moths: 12 } }
    await log.append([stranger])
    await log.close()
    const again = await openProjectFile(path, { mode: 'write' })
    expect(await again.factById(stranger.id)).toEqual({ ...stranger, seq: 1 })
    await again.close()
  })
})

function changeByHand(path: string, sql: string): void {
  const db = new DatabaseSync(path)
  db.exec(sql)
  db.close()
}

function hashOf(path: string): string {
  try {
    return createHash('sha256').update(readFileSync(path)).digest('hex')
  } catch {
    return 'no file'
  }
}
