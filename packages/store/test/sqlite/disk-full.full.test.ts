import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it, onTestFinished } from 'vitest'
import { checkProjectFile, createProjectFile } from '../../src/sqlite/index.ts'
import { testFolder, testPath } from '../folder.ts'

const teller = fileURLToPath(new URL('../children/tell.ts', import.meta.url))

/** A disk of half a megabyte in memory; null where this person may not make one (that takes an administrator on Linux). */
function tinyDisk(): string | null {
  const place = join(testFolder(), 'tiny')
  mkdirSync(place)
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=512k', 'tmpfs', place]).status !== 0) return null
  onTestFinished(() => void spawnSync('umount', [place]))
  return place
}

describe('a disk that is really full', () => {
  it('keeps every acknowledged fact, and the project can be carried away and goes on', async (context) => {
    const disk = tinyDisk()
    if (disk === null) return context.skip('needs the right to mount a disk')
    const path = join(disk, 'ostrel-vale.thrum')
    await (await createProjectFile(path)).close()
    const { stdout } = spawnSync(process.execPath, [teller, 'fill', path], { encoding: 'utf8' })
    const told = JSON.parse(stdout)
    expect(told).toMatchObject({ code: 'store/disk-full', facts: told.kept })
    expect(told.kept).toBeGreaterThan(0)
    expect((await checkProjectFile(path)).facts).toBe(told.kept)
    const elsewhere = testPath()
    copyFileSync(path, elsewhere)
    const side = `${path}-wal`
    if (spawnSync('test', ['-s', side]).status === 0) copyFileSync(side, `${elsewhere}-wal`)
    expect((await checkProjectFile(elsewhere)).facts).toBe(told.kept)
  })
})
