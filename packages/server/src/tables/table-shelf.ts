import { randomUUID } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { plainName } from '@thrum/exchange'
import { ThrumError } from '@thrum/model/ground'
import { largestTable } from '../api/table.ts'
import type { TableAt } from '../thread/protocol.ts'

/** Tables that lie here at once; of more the oldest goes. */
const mostTables = 8

/** Tables on their way into the project: each a file in a folder that nobody else may enter, gone when it is not needed. */
export interface TableShelf {
  /** @throws ThrumError server/table/name, server/request/too-large; nothing of it is left then */
  put(name: string, bytes: Readable): Promise<TableAt>
  /** @throws ThrumError server/table/gone */
  find(table: string): TableAt
  drop(table: string): Promise<boolean>
  close(): Promise<void>
}

/** Slashes of either kind and control codes: with them a name is a path, or no name. */
const unheld = /[/\\\p{Cc}]/u

/** The name of a file as a person gave it; never a path. @throws ThrumError server/table/name */
export function tableName(given: string): string {
  const name = unheld.test(given) ? '' : plainName(given)
  if (name === '' || name === '.' || name === '..') throw new ThrumError('server/table/name')
  return name
}

/** Passes bytes on, and stops at the largest size. */
async function* limited(bytes: AsyncIterable<Buffer>, largest: number): AsyncGenerator<Buffer> {
  let size = 0
  for await (const part of bytes) {
    size += part.length
    if (size > largest) throw new ThrumError('server/request/too-large')
    yield part
  }
}

export async function createTableShelf(largest: number = largestTable): Promise<TableShelf> {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-tables-'))
  const all = new Map<string, TableAt>()
  const drop = async (table: string): Promise<boolean> => {
    const found = all.get(table)
    all.delete(table)
    if (found !== undefined) await rm(found.path, { force: true })
    return found !== undefined
  }
  return {
    put: async (given, bytes) => {
      const name = tableName(given)
      const table = randomUUID()
      const at = { table, path: join(folder, table), name }
      try {
        await pipeline(limited(bytes, largest), createWriteStream(at.path, { mode: 0o600, flags: 'wx' }))
      } catch (error) {
        await rm(at.path, { force: true })
        throw error
      }
      all.set(table, at)
      for (const oldest of all.keys()) {
        if (all.size <= mostTables) break
        await drop(oldest)
      }
      return at
    },
    find: (table) => {
      const found = all.get(table)
      if (found === undefined) throw new ThrumError('server/table/gone')
      return found
    },
    drop,
    close: () => rm(folder, { recursive: true, force: true }),
  }
}
