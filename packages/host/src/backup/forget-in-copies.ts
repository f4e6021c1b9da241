import { existsSync, readdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { type Fact, redacted } from '@thrum/model'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import type { ProjectLog } from '@thrum/store'
import { openProjectFile } from '@thrum/store/sqlite'
import { projectIdOf } from '../project/project-id.ts'
import { type BackupPlace, backupPlace, findBackups } from './backup-files.ts'
import { dropUnfinished } from './unfinished-copies.ts'

/** What became of the copies that lie beside a project. */
export interface CopiesForgot {
  /** Backups and kept files that have now forgotten something they held so far. */
  readonly copies: readonly string[]
  /** Those that could not, and why. */
  readonly copiesLeft: readonly { readonly file: string; readonly because: Saying }[]
}

/** Everything that a log is told to forget. */
export async function redactionsIn(log: Pick<ProjectLog, 'factsAfter'>): Promise<readonly Fact[]> {
  const found: Fact[] = []
  for await (const facts of log.factsAfter(0, { kinds: [redacted.kind] })) found.push(...facts)
  return found
}

/** Copies of a project that lie beside it: daily backups, and files that restoring or lifting kept. */
function copiesBeside(place: BackupPlace): readonly string[] {
  const folder = dirname(place.file)
  const own = `${basename(place.file)}.`
  const kept = existsSync(folder)
    ? readdirSync(folder).filter(
        (file) => file.startsWith(own) && /\.(?:before-restore-[\d-]+|layout-\d+(?:-\d+)?\.backup)$/u.test(file),
      )
    : []
  return [...findBackups(place).map((backup) => backup.path), ...kept.map((file) => join(folder, file))]
}

/** True where the copy learned something new from it. A file of another project that has the name is left alone. */
async function forgetIn(path: string, project: string | null, redactions: readonly Fact[]): Promise<boolean> {
  const copy = await openProjectFile(path, { mode: 'write' })
  try {
    if ((await projectIdOf(copy)) !== project) return false
    const { added, replaced } = await copy.append(redactions)
    return added.length + replaced.length > 0
  } finally {
    await copy.close()
  }
}

/**
 * Lets the copies that lie beside a project forget all that the project is to forget, whoever ordered it. Copies that a killed
 * program left half made are dropped. What a copy cannot forget is told, and fails nothing.
 */
export async function forgetInCopies({ path, log }: { readonly path: string; readonly log: ProjectLog }): Promise<CopiesForgot> {
  const redactions = await redactionsIn(log)
  if (redactions.length === 0) return { copies: [], copiesLeft: [] }
  const project = await projectIdOf(log)
  const place = backupPlace(path)
  const copiesLeft = dropUnfinished(place).map((file) => ({ file: basename(file), because: saying('host/backup/in-the-making') }))
  const copies: string[] = []
  for (const copy of copiesBeside(place)) {
    try {
      if (await forgetIn(copy, project, redactions)) copies.push(basename(copy))
    } catch (cause) {
      const because = cause instanceof ThrumError ? cause.saying : saying('host/backup/system', { what: String(cause) })
      copiesLeft.push({ file: basename(copy), because })
    }
  }
  return { copies, copiesLeft }
}
