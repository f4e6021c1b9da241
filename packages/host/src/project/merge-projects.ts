import { realpathSync } from 'node:fs'
import { amended, type Fact, foldFacts, isContested, projectDescribed, redacted, type Snapshot, withdrawn } from '@thrum/model'
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

/** What says which project it is. Its counts are not looked at: those of the other copy need not be unpacked. */
async function recordOf({ path, log }: Project): Promise<NonNullable<Snapshot['project']>> {
  const facts: Fact[] = []
  for await (const chunk of log.factsAfter(0, { kinds: [projectDescribed.kind, amended.kind, withdrawn.kind, redacted.kind] }))
    facts.push(...chunk)
  const { project } = foldFacts(facts)
  if (project === null) throw new ThrumError('host/no-project-record', { file: path })
  return project
}

const countsIn = async (project: Project): Promise<number> => (await project.snapshot()).tables.count.rows

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
    const ours = await recordOf(project)
    const theirs = await recordOf(other)
    if (ours.id !== theirs.id) {
      throw new ThrumError('host/merge/other-project', {
        file: project.path,
        other: otherPath,
        title: ours.title,
        otherTitle: theirs.title,
      })
    }
    const before = await countsIn(project)
    const contested = await contestedCells(project)
    const seq = await project.log.lastSeq()
    const merged = await mergeLogs(project.log, other.log, work)
    const kinds = new Map<string, number>()
    for await (const facts of project.log.factsAfter(seq))
      for (const { kind } of facts) kinds.set(kind, (kinds.get(kind) ?? 0) + 1)
    const after = await countsIn(project)
    const now = await contestedCells(project)
    const forgot = await forgetInCopies(project)
    return {
      ...merged,
      ...forgot,
      counts: after - before,
      kinds: [...kinds].map(([kind, facts]) => ({ kind, facts })),
      contested: [...now].filter((cell) => !contested.has(cell)).length,
    }
  } finally {
    await other.close()
  }
}
