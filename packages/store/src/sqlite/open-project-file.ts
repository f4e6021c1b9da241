import type { DatabaseSync } from 'node:sqlite'
import { saying, ThrumError } from '@thrum/model/ground'
import { storeError } from '../errors.ts'
import type { Access, ProjectLog } from '../port.ts'
import { createConnection, takeTurn, usualPatience } from './connection.ts'
import { type Layouts, layouts } from './layout.ts'
import { liftLayout } from './lift-layout.ts'
import { type Look, lookAtFile } from './look-at-file.ts'
import { layoutOf, openDatabase } from './open-database.ts'
import { createSqliteLog } from './sqlite-log.ts'

export interface OpenOptions {
  readonly mode: 'write' | 'read'
  /** How long another program that writes is waited for [ms]; 5000 unless told. */
  readonly patience?: number
}

/**
 * Opens `name.thrum`. What can't be opened for writing but can be read is opened for reading, and `access` says why.
 * A file of an older layout is lifted when it is opened for writing, after a backup beside it.
 *
 * @throws ThrumError store/no-such-file, not-a-project, unreadable, damaged, newest-out-of-reach, older-layout,
 *   layout-unreadable, busy; the file is then as it was
 */
export function openProjectFile(file: string, options: OpenOptions): Promise<ProjectLog> {
  return openWithLayouts(file, options, layouts)
}

/** `openProjectFile` for any set of layouts, so that the lifting is tried before there is something to lift. */
export async function openWithLayouts(file: string, options: OpenOptions, known: Layouts): Promise<ProjectLog> {
  const patience = options.patience ?? usualPatience
  const look = lookAtFile(file)
  const db = await takeTurn(() => openDatabase(look, options.mode, file), file, patience)
  try {
    const found = await takeTurn(() => layoutOf(db), file, patience)
    const access = accessTo(look, options.mode, found, known)
    if (found < known.newest) {
      if (access.mode === 'read') throw storeError('store/older-layout', { file, found, known: known.newest })
      await liftLayout(db, { path: look.path, file, patience }, known)
    }
    return await takeTurn(() => logOver(db, file, access, patience, { found, known: known.newest }), file, patience)
  } catch (cause) {
    db.close()
    throw cause
  }
}

function accessTo(look: Look, mode: 'write' | 'read', found: number, known: Layouts): Access {
  if (found > known.newest) return reading('store/read/newer-layout', { found, known: known.newest })
  if (mode === 'read') return reading('store/read/asked')
  if (!look.mayWriteFile) return reading('store/read/file-protected')
  return look.mayWriteFolder ? { mode: 'write' } : reading('store/read/folder-protected')
}

function reading(id: string, values: { readonly [name: string]: number } = {}): Access {
  return { mode: 'read', because: saying(id, values) }
}

function logOver(
  db: DatabaseSync,
  file: string,
  access: Access,
  patience: number,
  layout: { readonly found: number; readonly known: number },
): ProjectLog {
  if (access.mode === 'read') db.exec('pragma query_only = on')
  try {
    return createSqliteLog(createConnection(db, file, access, patience))
  } catch (cause) {
    // A newer layout may have renamed what this version asks for.
    const isStranger = layout.found > layout.known && !(cause instanceof ThrumError)
    throw isStranger ? storeError('store/layout-unreadable', { file, ...layout }, cause) : cause
  }
}
