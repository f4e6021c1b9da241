import { spawnSync } from 'node:child_process'
import { chmodSync, copyFileSync, mkdirSync, readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { createProjectFile, openProjectFile } from '../../src/sqlite/index.ts'
import { field } from '../facts.ts'
import { testFolder } from '../folder.ts'

const teller = fileURLToPath(new URL('../children/tell.ts', import.meta.url))

/** Another person's view: rights do not bind the administrator, so the child gives its powers away. */
function tell(what: 'open-write' | 'open-read' | 'create', path: string): { readonly [name: string]: unknown } {
  const nobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {}
  const { stdout, stderr } = spawnSync(process.execPath, [teller, what, path], { ...nobody, encoding: 'utf8' })
  if (stdout === '') throw new Error(stderr)
  return JSON.parse(stdout)
}

async function projectIn(folder: string): Promise<string> {
  chmodSync(folder, 0o755)
  const path = join(folder, 'ostrel-vale.thrum')
  const log = await createProjectFile(path)
  await log.append([field('Weir')])
  await log.close()
  return path
}

const reading = (id: string) => ({ access: { mode: 'read', because: { id, values: {} } }, facts: 1 })

describe.skipIf(process.platform === 'win32')('a place that takes no writing', () => {
  it.each([
    { file: 0o444, folder: 0o555, because: 'store/read/file-protected' },
    { file: 0o444, folder: 0o777, because: 'store/read/file-protected' },
    { file: 0o666, folder: 0o555, because: 'store/read/folder-protected' },
  ])('is read all the same, and leaves nothing beside: file $file, folder $folder', async ({ file, folder, because }) => {
    const place = testFolder()
    const path = await projectIn(place)
    chmodSync(path, file)
    chmodSync(place, folder)
    expect(tell('open-write', path)).toEqual(reading(because))
    expect(tell('open-read', path)).toEqual(reading('store/read/asked'))
    expect(readdirSync(place)).toEqual(['ostrel-vale.thrum'])
    chmodSync(place, 0o777)
  })

  it('takes no new project', () => {
    const place = testFolder()
    chmodSync(place, 0o555)
    expect(tell('create', join(place, 'new.thrum'))).toEqual({ code: 'store/folder-protected' })
    expect(readdirSync(place)).toEqual([])
    chmodSync(place, 0o777)
  })

  it('and a file that may not be read', async () => {
    const place = testFolder()
    const path = await projectIn(place)
    chmodSync(path, 0o000)
    expect(tell('open-write', path)).toEqual({ code: 'store/unreadable' })
  })

  it('with facts that were not taken up yet: they are read if that is possible, and never passed over', async () => {
    const path = await projectIn(testFolder())
    const place = join(testFolder(), 'left')
    mkdirSync(place)
    chmodSync(join(place, '..'), 0o755)
    const left = join(place, 'ostrel-vale.thrum')
    const log = await openProjectFile(path, { mode: 'write' })
    await log.append([field('Mill')])
    // As a killed program leaves it: the newest fact stands in the second file only.
    for (const side of ['', '-wal', '-shm']) copyFileSync(path + side, left + side)
    await log.close()
    chmodSync(place, 0o555)
    expect(tell('open-write', left)).toEqual({ ...reading('store/read/file-protected'), facts: 2 })
    chmodSync(place, 0o777)
    rmSync(`${left}-shm`)
    chmodSync(place, 0o555)
    expect(tell('open-write', left)).toEqual({ code: 'store/newest-out-of-reach' })
    chmodSync(place, 0o777)
  })
})
