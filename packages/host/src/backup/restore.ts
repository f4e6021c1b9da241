import { existsSync, renameSync, rmSync, statSync } from 'node:fs'
import type { Fact } from '@thrum/model'
import { type Clock, ThrumError } from '@thrum/model/ground'
import { backupProject, checkProjectFile, moveProjectFile, openProjectFile } from '@thrum/store/sqlite'
import { projectIdOf } from '../project/project-id.ts'
import { type BackupFile, backupPlace, behindLink, findBackups, localStamp } from './backup-files.ts'
import { redactionsIn } from './forget-in-copies.ts'
import { dropUnfinished } from './unfinished-copies.ts'

/** A backup as a person chooses among them. */
export interface BackupTold extends BackupFile {
  readonly bytes: number
  /** Facts in it, and the moment of the latest; null where it cannot be read. */
  readonly facts: number | null
  readonly latest: string | null
  /** True where it is of another project, which had this name before. */
  readonly isOfOther: boolean
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

/** What a project file holds, as far as restoring must know it. */
interface Held {
  /** Null where nothing in it says which project it is. */
  readonly project: string | null
  readonly ids: ReadonlySet<string>
  readonly latest: string | null
  readonly redactions: readonly Fact[]
}

async function readHeld(path: string): Promise<Held> {
  const log = await openProjectFile(path, { mode: 'read' })
  try {
    const ids = new Set<string>()
    let latest: string | null = null
    for await (const facts of log.factsAfter(0)) {
      for (const { id, at } of facts) {
        ids.add(id)
        if (latest === null || at > latest) latest = at
      }
    }
    return { project: await projectIdOf(log), ids, latest, redactions: await redactionsIn(log) }
  } finally {
    await log.close()
  }
}

/** What stands where the project is; null where nothing does, or where it cannot be read. */
async function readStanding(project: string): Promise<Held | null> {
  return existsSync(project) ? await readHeld(project).catch(() => null) : null
}

const isOther = (held: Held, standing: Held | null): boolean =>
  standing !== null && standing.project !== null && held.project !== standing.project

/**
 * The daily backups of a project, the latest first, with what is in them.
 *
 * @throws ThrumError store/no-such-file where there is neither the project nor a backup of it
 */
export async function listBackups(project: string): Promise<readonly BackupTold[]> {
  const place = backupPlace(project)
  const files = findBackups(place)
  if (files.length === 0 && !existsSync(place.file)) throw new ThrumError('store/no-such-file', { file: project })
  const standing = await readStanding(place.file)
  const told: BackupTold[] = []
  for (const file of files) {
    const bytes = statSync(file.path).size
    const held = await readHeld(file.path).catch(() => null)
    const isOfOther = held !== null && isOther(held, standing)
    told.push({ ...file, bytes, facts: held?.ids.size ?? null, latest: held?.latest ?? null, isOfOther })
  }
  return told
}

/** Lets a copy that is to stand as the project forget what the project was told to forget since. */
async function forgetAgain(copy: string, redactions: readonly Fact[]): Promise<void> {
  if (redactions.length === 0) return
  const log = await openProjectFile(copy, { mode: 'write' })
  try {
    await log.append(redactions)
  } finally {
    await log.close()
  }
}

/**
 * Puts the backup of a day in the place of a project. The backup is checked from end to end first; the file that stands
 * there is kept beside it as `NAME.thrum.before-restore-<day>-<time>`, and nothing of it is lost: what it has and the backup
 * has not comes back by a merge. What it was told to forget stays forgotten. A link to a project stays one.
 *
 * @throws ThrumError host/restore/no-backup (naming the days there are), host/restore/other-project, store/damaged,
 *   store/in-use, store/disk-full, store/read-only (what stands there has a newer layout); the project is then as it was
 */
export async function restoreBackup(named: string, day: string, clock: Pick<Clock, 'now'>): Promise<Restored> {
  const project = behindLink(named)
  const place = backupPlace(project)
  const backups = findBackups(place)
  const backup = backups.find((file) => file.day === day)
  if (backup === undefined) {
    throw new ThrumError('host/restore/no-backup', {
      file: named,
      day,
      days: backups.map((own) => own.day).join(', '),
      count: backups.length,
    })
  }
  await checkProjectFile(backup.path)
  const held = await readHeld(backup.path)
  const standing = await readStanding(project)
  if (isOther(held, standing)) throw new ThrumError('host/restore/other-project', { file: named, day })
  const redactions = (standing?.redactions ?? []).filter(({ id }) => !held.ids.has(id))
  dropUnfinished(place)
  const restoring = `${project}.restoring-${process.pid}`
  rmSync(restoring, { force: true })
  await backupProject(backup.path, restoring)
  try {
    await forgetAgain(restoring, redactions)
    const before = existsSync(project) ? `${project}.before-restore-${localStamp(clock.now())}` : null
    if (before !== null) await moveProjectFile(project, before)
    renameSync(restoring, project)
    const ids = new Set([...held.ids, ...redactions.map(({ id }) => id)])
    const missing = standing === null ? null : [...standing.ids].filter((id) => !ids.has(id)).length
    return { project: named, day, facts: ids.size, before, missing: before === null ? 0 : missing }
  } finally {
    rmSync(restoring, { force: true })
  }
}
