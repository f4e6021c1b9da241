import { readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { listBackups, restoreBackup } from '@thrum/host'
import type { Saying } from '@thrum/model/ground'
import { checkProjectFile } from '@thrum/store/sqlite'
import { describe, expect, it } from 'vitest'
import { told } from '../corrections/made-counts.ts'
import { backupsOf, noon, on, projectWithCounts, write } from './days.ts'

describe('the backup of a day', () => {
  it('is made before its first writing, and holds what stood there before', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    await write(path, 5, 22)
    expect(backupsOf(path)).toEqual(['vale.2031-06-05.thrum'])
    const backup = join(dirname(path), 'backups', 'vale.2031-06-05.thrum')
    await checkProjectFile(backup)
    expect(await on(backup, 5, told)).toEqual(['Ings edge 10 honey bee 7', 'Weir edge 10 honey bee 12'])
    expect(await on(path, 5, told)).toEqual(['Ings edge 10 honey bee 7', 'Weir edge 10 honey bee 22'])
  })

  it('is not made by looking, nor on the day a project begins', async () => {
    const path = await projectWithCounts()
    await on(path, 5, told)
    expect(backupsOf(path)).toEqual([])
    await write(path, 1, 13)
    expect(backupsOf(path)).toEqual([])
  })

  it('the last seven are kept, and nothing else in the folder is touched', async () => {
    const path = await projectWithCounts()
    await write(path, 3, 1)
    const other = join(dirname(path), 'backups', 'vale.second.2031-06-01.thrum')
    writeFileSync(other, 'another project’s')
    for (let day = 4; day <= 12; day++) await write(path, day, day)
    expect(backupsOf(path)).toEqual([
      ...[6, 7, 8, 9, 10, 11, 12].map((day) => `vale.2031-06-${String(day).padStart(2, '0')}.thrum`),
      'vale.second.2031-06-01.thrum',
    ])
    expect(readFileSync(other, 'utf8')).toBe('another project’s')
  })

  it('that cannot be made is a note, and the writing goes on', async () => {
    const path = await projectWithCounts()
    writeFileSync(join(dirname(path), 'backups'), 'a file where the folder should be')
    const notes: Saying[] = []
    expect(await write(path, 5, 21, (note) => notes.push(note))).toMatchObject({ to: '21' })
    expect(notes.map(({ id }) => id)).toEqual(['host/backup/failed'])
    expect(await on(path, 5, told)).toContain('Weir edge 10 honey bee 21')
  })

  it('lies beside the file itself where the project is reached by a link', async () => {
    const path = await projectWithCounts()
    const link = join(dirname(await projectWithCounts()), 'link.thrum')
    symlinkSync(path, link)
    await write(link, 5, 21)
    expect(backupsOf(path)).toEqual(['vale.2031-06-05.thrum'])
  })
})

describe('restoring a backup', () => {
  it('puts the day back, keeps what stood there, and says what only that has', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    await write(path, 6, 22)
    expect((await listBackups(path)).map(({ day, facts }) => [day, facts])).toEqual([
      ['2031-06-06', 6],
      ['2031-06-05', 5],
    ])
    const restored = await restoreBackup(path, '2031-06-05', noon(7))
    expect(restored).toMatchObject({ day: '2031-06-05', facts: 5, missing: 2 })
    expect(await on(path, 7, told)).toContain('Weir edge 10 honey bee 12')
    await checkProjectFile(restored.before ?? '')
    expect(await on(restored.before ?? '', 7, told)).toContain('Weir edge 10 honey bee 22')
    expect(readdirSync(dirname(path)).sort()).toEqual(['backups', 'vale.thrum', 'vale.thrum.before-restore-2031-06-07-120000'])
  })

  it('does so for a damaged project, and for one that is gone', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    writeFileSync(path, readFileSync(path).fill(0, 4096, 12_288))
    expect(await restoreBackup(path, '2031-06-05', noon(7))).toMatchObject({ facts: 5, missing: null })
    expect(await on(path, 7, told)).toContain('Weir edge 10 honey bee 12')
    rmSync(path)
    expect(await restoreBackup(path, '2031-06-05', noon(8))).toMatchObject({ before: null })
    expect(await on(path, 8, told)).toContain('Weir edge 10 honey bee 12')
  })

  it('is refused while another program has the project open, and for a day without a backup', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    await on(path, 5, async () => {
      await expect(restoreBackup(path, '2031-06-05', noon(7))).rejects.toMatchObject({ code: 'store/in-use' })
    })
    expect(await on(path, 5, told)).toContain('Weir edge 10 honey bee 21')
    await expect(restoreBackup(path, '2031-06-04', noon(7))).rejects.toMatchObject({
      code: 'host/restore/no-backup',
      values: { days: '2031-06-05' },
    })
    expect(readdirSync(dirname(path)).filter((name) => name.includes('restor'))).toEqual([])
  })

  it('a damaged backup is refused, and the project left as it was', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    const backup = join(dirname(path), 'backups', 'vale.2031-06-05.thrum')
    writeFileSync(backup, readFileSync(backup).fill(0, 4096, 12_288))
    await expect(restoreBackup(path, '2031-06-05', noon(7))).rejects.toMatchObject({ code: 'store/damaged' })
    expect(await on(path, 5, told)).toContain('Weir edge 10 honey bee 21')
  })
})
