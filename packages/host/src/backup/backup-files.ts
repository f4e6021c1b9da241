import { readdirSync, realpathSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'

/** Daily backups that are kept. */
export const mostBackups = 7

/** A copy that was begun and never finished is swept away after this long [ms]. */
const staleAfter = 3_600_000

/** Where the daily backups of a project lie, and how they are named: `backups/NAME.YYYY-MM-DD.thrum` beside it. */
export interface BackupPlace {
  readonly folder: string
  /** Name of the project without its ending. */
  readonly name: string
}

export interface BackupFile {
  /** YYYY-MM-DD */
  readonly day: string
  readonly path: string
}

/** The project's own place, links followed; the place it would have where it is gone. */
export function backupPlace(project: string): BackupPlace {
  let path = project
  try {
    path = realpathSync(project)
  } catch {
    // It is gone: its backups may still be there.
  }
  return { folder: join(dirname(path), 'backups'), name: basename(path, '.thrum') }
}

export function backupPath({ folder, name }: BackupPlace, day: string): string {
  return join(folder, `${name}.${day}.thrum`)
}

function filesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}

/** The daily backups of a project, the latest first. */
export function findBackups(place: BackupPlace): readonly BackupFile[] {
  return filesIn(place.folder)
    .flatMap((file) => {
      const day = file.startsWith(`${place.name}.`)
        ? /^(\d{4}-\d\d-\d\d)\.thrum$/u.exec(file.slice(place.name.length + 1))?.[1]
        : undefined
      return day === undefined ? [] : [{ day, path: join(place.folder, file) }]
    })
    .sort((a, b) => (a.day < b.day ? 1 : -1))
}

/** Keeps the latest backups, and drops copies that a killed program left half made. */
export function dropOldBackups(place: BackupPlace, now: number): void {
  for (const { path } of findBackups(place).slice(mostBackups)) {
    for (const side of ['', '-wal', '-shm']) rmSync(path + side, { force: true })
  }
  for (const file of filesIn(place.folder)) {
    if (!file.startsWith(`${place.name}.`) || !file.includes('.thrum.partial-')) continue
    const path = join(place.folder, file)
    if (now - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? now) > staleAfter) rmSync(path, { force: true })
  }
}

/** The day of a moment [ms since 1970], where this machine is. */
export function localDay(moment: number): string {
  const date = new Date(moment)
  const two = (number: number): string => String(number).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}

/** Day and time of a moment as a part of a file name: `2031-05-04-091231`. */
export function localStamp(moment: number): string {
  const date = new Date(moment)
  const two = (number: number): string => String(number).padStart(2, '0')
  return `${localDay(moment)}-${two(date.getHours())}${two(date.getMinutes())}${two(date.getSeconds())}`
}
