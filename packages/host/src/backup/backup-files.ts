import { lstatSync, readdirSync, readlinkSync, realpathSync, rmSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'

/** Daily backups that are kept. */
export const mostBackups = 7

/** Where the daily backups of a project lie, and how they are named: `backups/NAME.YYYY-MM-DD.thrum` beside it. */
export interface BackupPlace {
  /** The project's own file, links followed. */
  readonly file: string
  readonly folder: string
  /** Name of the project without its ending. */
  readonly name: string
}

export interface BackupFile {
  /** YYYY-MM-DD */
  readonly day: string
  readonly path: string
}

/** The file behind a link, whether it is there or not; any other path as it is. */
export function behindLink(path: string): string {
  if (lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() !== true) return path
  try {
    return realpathSync(path)
  } catch {
    return resolve(dirname(path), readlinkSync(path))
  }
}

/** The project's own place, links followed; the place it would have where it is gone. */
export function backupPlace(project: string): BackupPlace {
  const file = resolve(behindLink(project))
  return { file, folder: join(dirname(file), 'backups'), name: basename(file, '.thrum') }
}

export function backupPath({ folder, name }: BackupPlace, day: string): string {
  return join(folder, `${name}.${day}.thrum`)
}

/** Names in a folder; none where there is no such folder. */
export function filesIn(folder: string): readonly string[] {
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

/** Keeps the latest backups. */
export function dropOldBackups(place: BackupPlace): void {
  for (const { path } of findBackups(place).slice(mostBackups)) {
    for (const side of ['', '-wal', '-shm']) rmSync(path + side, { force: true })
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
