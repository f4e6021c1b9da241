import { type Mapping, proposeMapping, readCounts, readSheet, sheetFacts } from '@thrum/exchange'
import {
  type Author,
  type Fact,
  foldFacts,
  makeFact,
  projectDescribed,
  rowsBrought,
  type Snapshot,
  sheetAccepted,
  sheetRead,
} from '@thrum/model'
import type { LongWork } from '@thrum/model/ground'

/** Watched minutes of a planned count where the table says nothing of them: they weigh alike. */
const alike = 10

const broughtKinds: readonly string[] = [sheetRead.kind, rowsBrought.kind, sheetAccepted.kind]

/** A mapping for a table of planned visits: proposed from its headers, nothing counted yet. */
function planMapping(bytes: Uint8Array): Mapping {
  const { mapping } = proposeMapping(readSheet(bytes))
  const columns = mapping.columns.map((column) =>
    column.as === 'tally' ? { header: column.header, as: 'ignore' as const } : column,
  )
  const hasEffort = columns.some(({ as }) => as === 'minutes' || as === 'end') || mapping.constants?.minutes !== undefined
  return {
    ...mapping,
    columns,
    plan: true,
    duplicates: 'keep-all',
    ...(hasEffort ? {} : { constants: { ...mapping.constants, minutes: alike } }),
  }
}

/**
 * A table of planned visits as a snapshot: counts that have no tallies yet (one row a planned watch). What a project already
 * knows of fields, treatments and hives comes along; its own counts do not. Nothing is written.
 *
 * @param known facts of the project the plan is for; none for a plan alone
 * @throws ThrumError exchange/... where the table cannot be read
 */
export async function planSnapshot(
  bytes: Uint8Array,
  file: string,
  known: readonly Fact[],
  author: Author,
  work: LongWork,
): Promise<Snapshot> {
  const mapping = planMapping(bytes)
  const read = await readCounts(readSheet(bytes, mapping.file), mapping, work)
  const kept = known.filter(({ kind }) => !broughtKinds.includes(kind))
  const project = 'a plan, not a project'
  const described = kept.some(({ kind }) => kind === projectDescribed.kind)
    ? []
    : [makeFact(projectDescribed, { project, title: file }, author)]
  return foldFacts([...kept, ...described, ...sheetFacts({ project, file, bytes, mapping, read, author })])
}
