import { spawnSync } from 'node:child_process'
import { DatabaseSync } from 'node:sqlite'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { createConnection } from '../../src/sqlite/connection.ts'
import { checkProjectFile, createProjectFile } from '../../src/sqlite/index.ts'
import { createSqliteLog } from '../../src/sqlite/sqlite-log.ts'
import { allFacts, author, bytesOf, field } from '../facts.ts'
import { testPath } from '../folder.ts'
import { refusal } from '../refusal.ts'

const teller = fileURLToPath(new URL('../children/tell.ts', import.meta.url))

describe('a full disk', () => {
  it('refuses the append whole, keeps every earlier fact, and goes on when there is room', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    const db = new DatabaseSync(path)
    db.exec('pragma max_page_count = 40')
    const log = createSqliteLog(createConnection(db, path, { mode: 'write' }))
    const by = author()
    await log.append([field('Weir', by)])
    const small = await log.putAttachment('text/csv', [Uint8Array.of(1, 2, 3)])
    const many = Array.from({ length: 300 }, (_, k) => ({ ...field(`f${k}`, by), data: new Uint8Array(2000) }))
    const { values } = await refusal(log.append(many), 'store/disk-full')
    expect(values.file).toBe(path)
    await refusal(log.putAttachment('image/jpeg', [new Uint8Array(3_000_000)]), 'store/disk-full')
    await refusal(log.keepDerived('snapshot', { digest: 'd', bytes: new Uint8Array(1_000_000) }), 'store/disk-full')
    expect((await allFacts(log)).map(({ id }) => id)).toEqual(['field-Weir'])
    expect([...(await bytesOf((await log.attachment(small.hash))?.parts()))]).toEqual([1, 2, 3])
    db.exec('pragma max_page_count = 4000')
    expect((await log.append(many)).added).toHaveLength(300)
    await log.close()
    expect(await checkProjectFile(path)).toEqual({ facts: 301, attachments: 1 })
  })

  it.skipIf(process.platform === 'win32')('looks the same where a limit of the system is met', async () => {
    const path = testPath()
    await (await createProjectFile(path)).close()
    // No file of this program may grow beyond 600 blocks of 512 or 1024 bytes, as the shell counts them.
    const limited = spawnSync('sh', ['-c', 'ulimit -f 600; exec "$0" "$@"', process.execPath, teller, 'fill', path], {
      encoding: 'utf8',
    })
    const told = JSON.parse(limited.stdout)
    expect(told).toMatchObject({ code: 'store/disk-full', facts: told.kept })
    expect(told.kept).toBeGreaterThan(0)
    expect(await checkProjectFile(path)).toEqual({ facts: told.kept, attachments: 0 })
  })
})
