import { DatabaseSync } from 'node:sqlite'
import { pathToFileURL } from 'node:url'
import { storeError } from '../errors.ts'
import type { Look } from './look-at-file.ts'
import { isOutOfReach } from './sqlite-errors.ts'

/** Files up to this size [byte] are checked page by page each time they are opened; 0.1 s at the most. */
const checkedWhenOpened = 67_108_864

/**
 * The database of a project, set so that a commit is on disk before it is answered, and so that damage and foreign
 * definitions in the file do no harm.
 */
export function openDatabase(look: Look, mode: 'write' | 'read', file: string): DatabaseSync {
  const takesWriting = look.mayWriteFile && look.mayWriteFolder
  const db = takesWriting ? new DatabaseSync(look.path, { timeout: 0 }) : openProtected(look, file)
  try {
    db.exec('pragma trusted_schema = off; pragma cell_size_check = on; pragma synchronous = full; pragma secure_delete = on')
    db.exec('pragma journal_size_limit = 67108864')
    if (mode === 'read') db.exec('pragma query_only = on')
    if (look.size <= checkedWhenOpened) requireSound(db, file)
    return db
  } catch (cause) {
    db.close()
    throw cause
  }
}

/**
 * Where nothing may be written beside the file, SQLite can share it with nobody. It is then read as if nobody else
 * had it open, which is true of a write-protected place in all but odd cases, and does no harm to the file in those.
 */
function openProtected(look: Look, file: string): DatabaseSync {
  if (!look.isUnfinished) {
    const address = pathToFileURL(look.path)
    address.search = '?immutable=1'
    return new DatabaseSync(address, { readOnly: true })
  }
  const db = new DatabaseSync(look.path, { readOnly: true, timeout: 0 })
  try {
    db.prepare('select count(*) from sqlite_schema').get()
    return db
  } catch (cause) {
    db.close()
    throw isOutOfReach(cause) ? storeError('store/newest-out-of-reach', { file }, cause) : cause
  }
}

/** @throws ThrumError store/damaged with the first thing that is wrong */
export function requireSound(db: DatabaseSync, file: string, depth: 'quick_check' | 'integrity_check' = 'quick_check'): void {
  const found = String(Object.values(db.prepare(`pragma ${depth}(1)`).get() ?? {})[0])
  if (found !== 'ok') throw storeError('store/damaged', { file, what: found })
}

export function layoutOf(db: DatabaseSync): number {
  return Number(Object.values(db.prepare('pragma user_version').get() ?? {})[0])
}
