import { existsSync } from 'node:fs'
import { DatabaseSync } from 'node:sqlite'
import { storeError } from '../errors.ts'
import { takeTurn } from './connection.ts'
import { copyDatabase } from './copy-database.ts'
import type { Layouts } from './layout.ts'
import { layoutOf } from './open-database.ts'

interface LiftedFile {
  readonly path: string
  readonly file: string
  readonly patience: number
}

/**
 * Lifts a file of an older layout to the newest, forwards only and in one transaction, after a checked backup beside it
 * (`name.thrum.layout-0.backup`). The writer's lock is held from before the backup, so the backup is exactly what was
 * lifted. If anything fails the file is as it was; a finished backup stays.
 */
export async function liftLayout(db: DatabaseSync, at: LiftedFile, known: Layouts): Promise<void> {
  await takeTurn(() => db.exec('begin immediate'), at.file, at.patience)
  try {
    // Another program may have lifted it while we waited for the lock.
    const found = layoutOf(db)
    if (found < known.newest) {
      requireSteps(found, at.file, known)
      await copyBeside(at, found)
      for (let layout = found; layout < known.newest; layout++) known.steps.find((step) => step.from === layout)?.run(db)
      db.exec(`pragma user_version = ${known.newest}`)
    }
    db.exec('commit')
  } catch (cause) {
    if (db.isTransaction) db.exec('rollback')
    throw cause
  }
}

function requireSteps(found: number, file: string, known: Layouts): void {
  for (let layout = found; layout < known.newest; layout++) {
    if (!known.steps.some((step) => step.from === layout)) {
      throw storeError('store/layout-unreadable', { file, found, known: known.newest })
    }
  }
}

async function copyBeside(at: LiftedFile, layout: number): Promise<void> {
  const reader = new DatabaseSync(at.path, { readOnly: true })
  try {
    await copyDatabase(reader, at.file, freeName(`${at.path}.layout-${layout}`))
  } finally {
    reader.close()
  }
}

/** `name.backup`, or `name-2.backup` and so on: an earlier backup is never replaced. */
function freeName(name: string): string {
  if (!existsSync(`${name}.backup`)) return `${name}.backup`
  for (let number = 2; ; number++) {
    if (!existsSync(`${name}-${number}.backup`)) return `${name}-${number}.backup`
  }
}
