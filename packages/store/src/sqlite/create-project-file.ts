import { closeSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import type { ProjectLog } from '../port.ts'
import { openNew, removeWithSides, syncToDisk } from './copy-database.ts'
import { applicationId, layouts, schema } from './layout.ts'
import { type OpenOptions, openProjectFile } from './open-project-file.ts'
import { asStoreError } from './sqlite-errors.ts'

/**
 * Makes an empty project and opens it for writing. It is made beside its place and renamed, so that a project never
 * stands there without its tables.
 *
 * @throws ThrumError store/exists, folder-missing, folder-protected, disk-full; nothing is left behind
 */
export async function createProjectFile(file: string, options: Pick<OpenOptions, 'patience'> = {}): Promise<ProjectLog> {
  // Takes the name, so that of two programs that want it one is refused.
  closeSync(openNew(file))
  const beside = `${file}.new-${process.pid}`
  try {
    removeWithSides(beside)
    writeEmptyProject(beside)
    renameSync(beside, file)
  } catch (cause) {
    removeWithSides(beside)
    rmSync(file, { force: true })
    throw asStoreError(cause, file)
  }
  syncToDisk(dirname(file))
  return await openProjectFile(file, { ...options, mode: 'write' })
}

function writeEmptyProject(path: string): void {
  const db = new DatabaseSync(path)
  try {
    db.exec('pragma journal_mode = wal; pragma synchronous = full')
    db.exec(`begin; pragma application_id = ${applicationId}; pragma user_version = ${layouts.newest}; ${schema} commit`)
  } finally {
    db.close()
  }
}
