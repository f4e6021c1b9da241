import { readdirSync, readFileSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { servingNow } from '../../src/index.ts'
import { sayServing } from '../../src/lock/lock-file.ts'
import { serveEmpty, serveNothing } from '../serving.ts'

/** The file that says where a port is served. */
function lockOf(port: number): string {
  const folder = join(tmpdir(), `thrum-serving${process.getuid === undefined ? '' : `-${process.getuid()}`}`)
  const found = readdirSync(folder)
    .map((name) => join(folder, name))
    .find((path) => JSON.parse(readFileSync(path, 'utf8')).port === port)
  if (found === undefined) throw new Error('no such file')
  return found
}

describe('a project that is served', () => {
  it('says so for its owner alone, and takes it back', async () => {
    const { folder, port, base, key, close } = await serveEmpty()
    const path = join(folder, 'own.thrum')
    expect(await servingNow(path)).toMatchObject({ port, address: `${base}/#key=${key}`, pid: process.pid })
    if (process.platform !== 'win32') expect(statSync(lockOf(port)).mode & 0o777).toBe(0o600)
    await close()
    expect(await servingNow(path)).toBeNull()
  })

  it('that another was opened in place of is served no more', async () => {
    const { folder, post } = await serveEmpty()
    await post('/api/projects', { how: 'empty', title: 'Other' })
    expect(await servingNow(join(folder, 'own.thrum'))).toBeNull()
    expect(await servingNow(join(folder, 'other.thrum'))).not.toBeNull()
  })

  it('by a server that is gone, or serves another, is not served', async () => {
    const { folder, port } = await serveEmpty()
    const path = join(folder, 'own.thrum')
    const said = { pid: process.pid, port, project: 'another project', address: 'x' }
    sayServing(path, said)
    expect(await servingNow(path)).toBeNull()
    sayServing(path, { ...said, port: 1 })
    expect(await servingNow(path)).toBeNull()
  })

  it('the port that is taken is left to whoever has it', async () => {
    const one = await serveNothing()
    const { startServer } = await import('../../src/index.ts')
    const other = await startServer({ folder: one.folder, project: null, port: one.port })
    try {
      expect(other.port).toBeGreaterThan(one.port)
    } finally {
      await other.close()
    }
  })
})
