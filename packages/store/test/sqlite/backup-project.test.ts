import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { describe, expect, it } from 'vitest'
import { backupProject, checkProjectFile, createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { allFacts, author, field, sheet } from '../facts.ts'
import { testFolder, testPath } from '../folder.ts'
import { refusal } from '../refusal.ts'

describe('backupProject', () => {
  it('copies what is committed, also while the project is open and not yet in one file', async () => {
    const path = testPath()
    const log = await createProjectFile(path)
    await log.append(sheet('spring'))
    await log.putAttachment('text/csv', [new Uint8Array(2_000_000)])
    const to = join(testFolder(), 'copy.thrum')
    const { bytes } = await backupProject(path, to)
    expect(bytes).toBe(statSync(to).size)
    expect(readdirSync(dirname(to))).toEqual(['copy.thrum'])
    const copy = await openProjectFile(to, { mode: 'write' })
    expect(await allFacts(copy)).toEqual(await allFacts(log))
    // The copy is a project of its own.
    await copy.append([field('Mill')])
    expect(await log.factCount()).toBe(4)
    await copy.close()
    await log.close()
    expect(await checkProjectFile(to)).toEqual({ facts: 5, attachments: 1 })
  })

  it('is the state of one moment while another writes', async () => {
    const path = testPath()
    const log = await createProjectFile(path)
    const by = author()
    let isWriting = true
    const writing = (async () => {
      // Pairs: a copy with half of one would show.
      for (let k = 0; isWriting; k++) {
        await log.append([field(`left ${k}`, by), field(`right ${k}`, by)])
        await setImmediate()
      }
    })()
    for (let k = 0; k < 5; k++) {
      await backupProject(path, `${path}.${k}`)
      expect((await checkProjectFile(`${path}.${k}`)).facts % 2).toBe(0)
    }
    isWriting = false
    await writing
    await log.close()
  })

  it('replaces nothing unless told, and never the project itself', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const to = join(dirname(path), 'old.thrum')
    writeFileSync(to, 'last week')
    await refusal(backupProject(path, to), 'store/exists')
    expect(readFileSync(to, 'utf8')).toBe('last week')
    await backupProject(path, to, { replace: true })
    expect(await checkProjectFile(to)).toEqual({ facts: 0, attachments: 0 })
    await refusal(backupProject(path, path, { replace: true }), 'store/same-file')
    await refusal(backupProject(path, join(dirname(path), 'nowhere', 'x.thrum')), 'store/folder-missing')
  })

  it('is as private as the project', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    chmodSync(path, 0o600)
    await backupProject(path, `${path}.copy`)
    expect(statSync(`${path}.copy`).mode & 0o777).toBe(0o600)
  })

  it('leaves nothing behind when it fails', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const to = join(testFolder(), 'copy.thrum')
    mkdirSync(to)
    await expect(backupProject(path, to, { replace: true })).rejects.toThrow()
    expect(readdirSync(dirname(to))).toEqual(['copy.thrum'])
  })
})
