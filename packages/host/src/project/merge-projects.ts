import { realpathSync } from 'node:fs'
import { isContested } from '@thrum/model'
import { type LongWork, ThrumError } from '@thrum/model/ground'
import { type Merged, mergeLogs } from '@thrum/store'
import { type CopiesForgot, forgetInCopies } from '../backup/forget-in-copies.ts'
import { readCorrected } from '../corrections/corrected-project.ts'
import { openProject, type Project, requireWritable } from './project.ts'

/** What a merge brought. */
export interface ProjectsMerged extends Merged, CopiesForgot {
  /** Counts that stand now and did not before; fewer may stand where the other copy withdrew some. */
  readonly counts: number
  /** Facts that came, by kind. */
  readonly kinds: readonly { readonly kind: string; readonly facts: number }[]
  /** Cells about which the two copies disagree, and did not before. */
  readonly contested: number
}

async function contestedCells(project: Project): Promise<ReadonlySet<string>> {
  const { histories } = await readCorrected(project)
  return new Set(histories.filter(isContested).map(({ of, column }) => `${of}\n${column}`))
}

/**
 * Takes into a project what another copy of it holds: the union of both. The other copy is only read. Doing it twice equals
 * doing it once. What either is to forget, the backups and kept files beside the project forget too.
 *
 * @throws ThrumError host/merge/other-project, host/no-project-record, store/same-file, store/..., host/read-only
 */
export async function mergeProject(project: Project, otherPath: string, work: LongWork): Promise<ProjectsMerged> {
  requireWritable(project)
  const other = await openProject(otherPath, 'read')
  try {
    if (realpathSync(otherPath) === realpathSync(project.path)) throw new ThrumError('store/same-file', { file: otherPath })
    const before = await project.snapshot()
    const theirs = (await other.snapshot()).project
    for (const [own, file] of [
      [before.project, project.path],
      [theirs, otherPath],
    ] as const) {
      if (own === null) throw new ThrumError('host/no-project-record', { file })
    }
    if (before.project?.id !== theirs?.id) {
      throw new ThrumError('host/merge/other-project', {
        file: project.path,
        other: otherPath,
        title: before.project?.title ?? '',
        otherTitle: theirs?.title ?? '',
      })
    }
    const contested = await contestedCells(project)
    const seq = await project.log.lastSeq()
    const merged = await mergeLogs(project.log, other.log, work)
    const kinds = new Map<string, number>()
    for await (const facts of project.log.factsAfter(seq))
      for (const { kind } of facts) kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
    const after = await project.snapshot()
    const now = await contestedCells(project)
    const forgot = await forgetInCopies(project)
    return {
      ...merged,
      ...forgot,
      counts: after.tables.count.rows - before.tables.count.rows,
      kinds: [...kinds].map(([kind, facts]) => ({ kind, facts })),
      contested: [...now].filter((cell) => !contested.has(cell)).length,
    }
  } finally {
    await other.close()
  }
}
