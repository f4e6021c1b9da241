import type { DatabaseSync, SQLInputValue, SQLOutputValue } from 'node:sqlite'
import { setTimeout } from 'node:timers/promises'
import { InputError } from '@thrum/model/ground'
import { readOnlyError, storeError } from '../errors.ts'
import type { Access } from '../port.ts'
import { asStoreError, isBusy } from './sqlite-errors.ts'

export type SqlRow = readonly SQLOutputValue[]

/** A prepared query whose rows are arrays: objects are several times slower to make. */
export interface Query {
  all(...values: SQLInputValue[]): readonly SqlRow[]
  first(...values: SQLInputValue[]): SqlRow | undefined
  /** Leave the loop early and the rest is not read. */
  each(...values: SQLInputValue[]): Iterable<SqlRow>
}

export function prepareQuery(db: DatabaseSync, sql: string): Query {
  const statement = db.prepare(sql)
  statement.setReturnArrays(true)
  // The declared types know object rows only.
  return {
    all: (...values) => statement.all(...values) as unknown as readonly SqlRow[],
    first: (...values) => statement.get(...values) as unknown as SqlRow | undefined,
    each: (...values) => statement.iterate(...values) as unknown as Iterable<SqlRow>,
  }
}

/** One open project file. Every use of the database goes through `read` or `write`. */
export interface Connection {
  readonly db: DatabaseSync
  readonly file: string
  readonly access: Access
  /** Runs `look`, again and again while another program is in the way, without blocking the event loop. */
  read<T>(look: () => T): Promise<T>
  /** Runs `change` inside one transaction: all of it or none, on disk when the promise resolves. */
  write<T>(change: () => T): Promise<T>
  close(): void
}

/** How long another program is waited for [ms]. */
export const usualPatience = 5000

export function createConnection(db: DatabaseSync, file: string, access: Access, patience = usualPatience): Connection {
  let isOpen = true
  const whileOpen = async <T>(use: () => T): Promise<T> => {
    if (!isOpen) throw new InputError('store/closed', 'this project was closed before')
    return await takeTurn(use, file, patience)
  }
  return {
    db,
    file,
    access,
    read: whileOpen,
    write: (change) => {
      if (access.mode === 'read') return Promise.reject(readOnlyError(file, access.because))
      return whileOpen(() => inTransaction(db, change))
    },
    close: () => {
      if (isOpen) db.close()
      isOpen = false
    },
  }
}

/**
 * Runs `use` when it is our turn. SQLite's own lock decides whose it is; a program that finds it taken comes back after a
 * short wait, and gives up when its waits add up to `patience` [ms].
 *
 * @throws ThrumError store/busy when nobody let us in; other failures of SQLite as `asStoreError` puts them
 */
export async function takeTurn<T>(use: () => T, file: string, patience = usualPatience): Promise<T> {
  let waited = 0
  for (let attempt = 0; ; attempt++) {
    try {
      return use()
    } catch (cause) {
      if (!isBusy(cause)) throw asStoreError(cause, file)
      if (waited >= patience) throw storeError('store/busy', { file, seconds: Math.ceil(patience / 1000) }, cause)
    }
    // 1, 2, 4, 8 and then 15 ms: quick where the other writes one fact, easy on the processor where it writes a sheet.
    const wait = Math.min(2 ** attempt, 15)
    waited += wait
    await setTimeout(wait)
  }
}

export function inTransaction<T>(db: DatabaseSync, change: () => T): T {
  db.exec('begin immediate')
  try {
    const result = change()
    db.exec('commit')
    return result
  } catch (cause) {
    // A full disk has rolled back already.
    if (db.isTransaction) db.exec('rollback')
    throw cause
  }
}
