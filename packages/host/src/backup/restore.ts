import { existsSync, renameSync, rmSync, statSync } from 'node:fs'
import { type Clock, ThrumError } from '@thrum/model/ground'
import type { ProjectLog } from '@thrum/store'
import { backupProject, checkProjectFile, moveProjectFile, openProjectFile } from '@thrum/store/sqlite'
import { type BackupFile, backupPlace, findBackups, localStamp } from './backup-files.ts'

/** A backup as a person chooses among them. */
export interface BackupTold extends BackupFile {
  readonly bytes: number
  /** Facts in it, and the moment of the latest; null where it cannot be read. */
  readonly facts: number | null
  readonly latest: string | null
}

/** What restoring did. */
export interface Restored {
  readonly project: string
  readonly day: string
  readonly facts: number
  /** Where the file that stood there lies now; null where there was none. */
  readonly before: string | null
  /** Facts of that file which the backup does not have; null where it could not be read. */
  readonly missing: number | null
}

async function readIds(path: string): Promise<{ readonly ids: ReadonlySet<string>; readonly latest: string | null }> {
  const log = await openProjectFile(path, { mode: 'read' })
  try {
    return await idsOf(log)
  } finally {
    await log.close()
  }
}

async function idsOf(log: ProjectLog): Promise<{ readonly ids: ReadonlySet<string>; readonly latest: string | null }> {
  const ids = new Set<string>()
  let latest: string | null = null
  for await (const facts of log.factsAfter(0)) {
    for (const { id, at } of facts) {
      ids.add(id)
      if (latest === null || at > latest) latest = at
    }
  }
  return { ids, latest }
}

/** The daily backups of a project, the latest first, with what is in them. */
export async function listBackups(project: string): Promise<readonly BackupTold[]> {
  const told: BackupTold[] = []
  for (const file of findBackups(backupPlace(project))) {
    const bytes = statSync(file.path).size
    const read = await readIds(file.path).catch(() => null)
    told.push({ ...file, bytes, facts: read?.ids.size ?? null, latest: read?.latest ?? null })
  }
  return told
}

/**
 * Puts the backup of a day in the place of a project. The backup is checked from end to end first; the file that stands
 * there is kept beside it as `NAME.thrum.before-restore-<day>-<time>`, and nothing of it is lost: what it has and the backup
 * has not comes back by a merge.
 *
 * @throws ThrumError host/restore/no-backup (naming the days there are), store/damaged, store/in-use, store/disk-full; the
 *   project is then as it was
 */
export async function restoreBackup(project: string, day: string, clock: Pick<Clock, 'now'>): Promise<Restored> {
  const backups = findBackups(backupPlace(project))
  const backup = backups.find((file) => file.day === day)
  if (backup === undefined) {
    throw new ThrumError('host/restore/no-backup', {
      file: project,
      day,
      days: backups.map((own) => own.day).join(', '),
      count: backups.length,
    })
  }
  await checkProjectFile(backup.path)
  const held = await readIds(backup.path)
  const restoring = `${project}.restoring-${process.pid}`
  rmSync(restoring, { force: true })
  await backupProject(backup.path, restoring)
  try {
    const before = existsSync(project) ? `${project}.before-restore-${localStamp(clock.now())}` : null
    const current = before === null ? null : await readIds(project).catch(() => null)
    if (before !== null) await moveProjectFile(project, before)
    renameSync(restoring, project)
    const missing = current === null ? null : [...current.ids].filter((id) => !held.ids.has(id)).length
    return { project, day, facts: held.ids.size, before, missing: before === null ? 0 : missing }
  } finally {
    rmSync(restoring, { force: true })
  }
}
