import { rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { type BackupPlace, filesIn } from './backup-files.ts'

/** What a copy is called until it is finished, by the number of the program that makes it; and what lies beside it. */
const unfinished = /\.(?:restoring|partial)-(\d+)(?:-wal|-shm|-journal)?$/u

function isRunning(program: number): boolean {
  try {
    process.kill(program, 0)
    return true
  } catch (cause) {
    // It is there, and somebody else's.
    return cause instanceof Error && 'code' in cause && cause.code === 'EPERM'
  }
}

/**
 * Drops copies of a project that were begun and never finished, because the program that made them is gone.
 *
 * @returns those that a program may still be at
 */
export function dropUnfinished({ file, folder, name }: BackupPlace): readonly string[] {
  const isBackup = (entry: string): boolean =>
    entry.startsWith(`${name}.`) && /^\d{4}-\d\d-\d\d\.thrum\./u.test(entry.slice(name.length + 1))
  const isBeside = (entry: string): boolean => entry.startsWith(`${basename(file)}.`)
  const own = [
    ...filesIn(folder)
      .filter(isBackup)
      .map((entry) => join(folder, entry)),
    ...filesIn(dirname(file))
      .filter(isBeside)
      .map((entry) => join(dirname(file), entry)),
  ]
  return own.filter((path) => {
    const program = unfinished.exec(path)?.[1]
    if (program === undefined) return false
    if (isRunning(Number(program))) return true
    rmSync(path, { force: true })
    return false
  })
}
