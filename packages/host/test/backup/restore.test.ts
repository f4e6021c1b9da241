import { copyFileSync, existsSync, lstatSync, readdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { forget, listBackups, mergeProject, offerForget, restoreBackup } from '@thrum/host'
import { sha256Hex, unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { bring, copyOf, madeProject, person, told } from '../corrections/made-counts.ts'
import { bytesBeside, noon, on, projectWithCounts, write } from './days.ts'

const named = `field,plot,date,start,minutes,observer,honey bee
Weir,edge,2031-05-04,09:10,10,Orla Invented,12
Ings,edge,2031-05-04,10:10,10,Berno Madeup,7
`
const forgetOrla = { what: 'observer', name: 'Orla Invented', because: 'asked to' } as const

/** A project with a backup of 5 June that holds a name, and a copy of it that has forgotten the name. */
async function copyForgot(): Promise<{ readonly path: string; readonly other: string }> {
  const project = await madeProject()
  await bring(project, 'counts.csv', named)
  const there = await copyOf(project, 'there', person('tablet', Date.UTC(2031, 5, 2)))
  await project.close()
  await write(project.path, 5, 21)
  await forget(there, await offerForget(there, forgetOrla))
  await there.close()
  const other = join(dirname((await madeProject()).path), 'there.thrum')
  renameSync(there.path, other)
  return { path: project.path, other }
}

describe('forgetting that a merge brought', () => {
  it('reaches the backups beside the project', async () => {
    const { path, other } = await copyForgot()
    await on(path, 5, async (project) => {
      expect(await mergeProject(project, other, unwatched)).toMatchObject({
        copies: ['vale.2031-06-05.thrum'],
        copiesLeft: [],
      })
      expect(await mergeProject(project, other, unwatched)).toMatchObject({ copies: [], copiesLeft: [] })
    })
    expect(bytesBeside(path).toLowerCase()).not.toContain('invented')
  })

  it('is not undone by restoring a backup that had not heard of it', async () => {
    const { path, other } = await copyForgot()
    const backup = join(dirname(path), 'backups', 'vale.2031-06-05.thrum')
    const before = readFileSync(backup)
    await on(path, 5, async (project) => void (await mergeProject(project, other, unwatched)))
    writeFileSync(backup, before)
    await restoreBackup(path, '2031-06-05', noon(7))
    expect(readFileSync(path, 'latin1').toLowerCase()).not.toContain('invented')
    expect(await on(path, 7, told)).toContain('Weir edge 10 honey bee 12')
  })

  it('leaves a file of another project alone, though it has the name of a backup', async () => {
    const { path, other } = await copyForgot()
    const strange = await projectWithCounts()
    const backup = join(dirname(path), 'backups', 'vale.2031-06-05.thrum')
    copyFileSync(strange, backup)
    const before = readFileSync(backup)
    await on(path, 5, async (project) => void (await mergeProject(project, other, unwatched)))
    expect(readFileSync(backup).equals(before)).toBe(true)
  })
})

describe('copies that a killed program left half made', () => {
  // Above every number that a system gives to a program.
  const gone = 2 ** 31 - 1

  it('are dropped when something is forgotten; one that is being made is told', async () => {
    const { path } = await copyForgot()
    const backups = join(dirname(path), 'backups')
    const left = [
      `${path}.restoring-${gone}`,
      `${path}.restoring-${gone}-wal`,
      join(backups, `vale.2031-06-04.thrum.partial-${gone}`),
      join(backups, `vale.2031-06-04.thrum.partial-${process.pid}`),
      join(backups, `vale.second.2031-06-04.thrum.partial-${gone}`),
    ]
    for (const file of left) writeFileSync(file, 'Orla Invented')
    await on(path, 5, async (project) => {
      const forgot = await forget(project, await offerForget(project, forgetOrla))
      expect(forgot.copiesLeft.map(({ file }) => file)).toEqual([`vale.2031-06-04.thrum.partial-${process.pid}`])
    })
    expect(left.map((file) => existsSync(file))).toEqual([false, false, false, true, true])
  })
})

describe('restoring', () => {
  it('through a link puts the backup in the place of the project; the link stays one', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    const link = join(dirname(await projectWithCounts()), 'link.thrum')
    symlinkSync(path, link)
    const restored = await restoreBackup(link, '2031-06-05', noon(7))
    expect(restored.before).toBe(`${path}.before-restore-2031-06-07-120000`)
    expect(lstatSync(link).isSymbolicLink()).toBe(true)
    expect(await on(path, 7, told)).toContain('Weir edge 10 honey bee 12')
    renameSync(path, `${path}.moved`)
    await restoreBackup(link, '2031-06-05', noon(8))
    expect(lstatSync(link).isSymbolicLink()).toBe(true)
    expect(await on(path, 8, told)).toContain('Weir edge 10 honey bee 12')
  })

  it('is refused where the backup is of another project that had the name', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    const strange = await projectWithCounts()
    copyFileSync(strange, path)
    expect((await listBackups(path)).map(({ day, isOfOther }) => [day, isOfOther])).toEqual([['2031-06-05', true]])
    await expect(restoreBackup(path, '2031-06-05', noon(7))).rejects.toMatchObject({ code: 'host/restore/other-project' })
    expect(readFileSync(path).equals(readFileSync(strange))).toBe(true)
    expect(readdirSync(dirname(path)).sort()).toEqual(['backups', 'vale.thrum'])
  })

  it('is refused where the project has a newer layout, and not a byte of that changes', async () => {
    const path = await projectWithCounts()
    await write(path, 5, 21)
    const db = new DatabaseSync(path)
    db.exec('pragma user_version = 7; alter table fact rename to facts')
    db.close()
    const before = sha256Hex(readFileSync(path, 'latin1'))
    const refused = await restoreBackup(path, '2031-06-05', noon(7)).catch((error: unknown) => error)
    expect(refused).toMatchObject({
      code: 'store/read-only',
      values: { remedy: { id: 'store/read/newer-layout/remedy' } },
    })
    expect(sha256Hex(readFileSync(path, 'latin1'))).toBe(before)
    expect(readdirSync(dirname(path)).sort()).toEqual(['backups', 'vale.thrum'])
  })

  it('says so where there is neither a project nor a backup', async () => {
    const path = join(dirname(await projectWithCounts()), 'nothing.thrum')
    await expect(listBackups(path)).rejects.toMatchObject({ code: 'store/no-such-file' })
  })
})
