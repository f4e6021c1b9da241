import { existsSync, renameSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { saying } from '@thrum/model/ground'
import { readOnlyError, storeError } from '../errors.ts'
import { takeTurn } from './connection.ts'
import { syncToDisk } from './copy-database.ts'
import { layouts } from './layout.ts'
import { lookAtFile } from './look-at-file.ts'
import { isBusy } from './sqlite-errors.ts'

/**
 * Moves a project file to another name in its folder, whole: what stands in the file ending in -wal is taken into it first.
 * Refuses while another program has it open, for two files would then share one -wal. A damaged file is moved with what
 * lies beside it, as it is. A file of a newer layout is not touched.
 *
 * @throws ThrumError store/in-use, store/exists, store/read-only (a newer layout); the file is then as and where it was
 */
export async function moveProjectFile(from: string, to: string): Promise<void> {
  if (existsSync(to)) throw storeError('store/exists', { file: to })
  requireKnownLayout(from)
  const isWhole = await takeIntoOneFile(from)
  // What lies beside a damaged file goes first: it must never lie beside another file of that name.
  if (!isWhole) for (const side of ['-wal', '-shm', '-journal']) if (existsSync(from + side)) renameSync(from + side, to + side)
  renameSync(from, to)
  syncToDisk(dirname(to))
  if (isWhole) openAgainForMany(to)
}

function requireKnownLayout(file: string): void {
  const found = layoutSaid(file)
  const known = layouts.newest
  if (found > known) throw readOnlyError(file, saying('store/read/newer-layout', { found, known }))
}

/** The layout that a file says it has; 0 where it is too damaged to say one. */
function layoutSaid(file: string): number {
  try {
    return lookAtFile(file).layout
  } catch {
    return 0
  }
}

/** True where the file was left alone in one piece; false where it cannot be read as a database. */
async function takeIntoOneFile(file: string): Promise<boolean> {
  let mode: string
  try {
    mode = await takeTurn(() => {
      const db = new DatabaseSync(file, { timeout: 0 })
      try {
        // Leaving the write-ahead log takes the file for ourselves alone: it fails while another program has it open.
        return String(Object.values(db.prepare('pragma journal_mode = delete').get() ?? {})[0])
      } finally {
        db.close()
      }
    }, file)
  } catch (cause) {
    if (isBusy(cause) || (cause instanceof Error && 'code' in cause && cause.code === 'store/busy')) {
      throw storeError('store/in-use', { file }, cause)
    }
    return false
  }
  if (mode !== 'delete') throw storeError('store/in-use', { file })
  return true
}

function openAgainForMany(file: string): void {
  const db = new DatabaseSync(file)
  try {
    db.exec('pragma journal_mode = wal')
  } finally {
    db.close()
  }
}
