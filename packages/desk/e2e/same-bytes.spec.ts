import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { expect, test } from './served.ts'

const root = join(import.meta.dirname, '..', '..', '..')

/** Each file of a built folder, with what it holds. */
function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => `${relative(folder, file)} ${createHash('sha256').update(readFileSync(file)).digest('hex')}`)
    .toSorted()
}

test('built once more, elsewhere, it is the same bytes', async ({ folder }) => {
  test.setTimeout(120_000)
  const to = join(folder, 'built')
  const { status } = spawnSync(process.execPath, [join(root, 'tools', 'build-desk.ts'), '--to', to], { cwd: folder })
  expect(status).toBe(0)
  const built = filesIn(join(root, 'packages', 'desk', 'dist'))
  expect(built.length).toBeGreaterThan(8)
  expect(filesIn(to)).toEqual(built)
})
