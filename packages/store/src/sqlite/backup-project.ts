import { existsSync, realpathSync, statSync } from 'node:fs'
import { storeError } from '../errors.ts'
import { takeTurn } from './connection.ts'
import { copyDatabase } from './copy-database.ts'
import { lookAtFile } from './look-at-file.ts'
import { openDatabase } from './open-database.ts'

export interface Backup {
  /** Size of the copy [byte]. */
  readonly bytes: number
}

/**
 * A checked copy of a project, also while others write to it: the state of one moment, in one file. An open project must
 * not be copied as a file: its newest facts may stand in the file ending in -wal.
 *
 * @param options.replace an older backup at `to` is replaced, once the new one has passed; otherwise it is left and refused
 * @throws ThrumError store/exists, same-file, backup-unsound, disk-full, folder-missing, folder-protected, and what
 *   opening throws
 */
export async function backupProject(file: string, to: string, options: { readonly replace?: boolean } = {}): Promise<Backup> {
  const look = lookAtFile(file)
  if (existsSync(to)) {
    if (realpathSync(to) === look.path) throw storeError('store/same-file', { file })
    if (options.replace !== true) throw storeError('store/exists', { file: to })
  }
  const db = await takeTurn(() => openDatabase(look, 'read', file), file)
  try {
    await copyDatabase(db, file, to)
  } finally {
    db.close()
  }
  return { bytes: statSync(to).size }
}
