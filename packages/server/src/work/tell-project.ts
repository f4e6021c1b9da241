import { basename } from 'node:path'
import { type Project, version } from '@thrum/host'
import { isDemonstration } from '@thrum/host/desk'
import { isoDate, mark, type NumberColumn, type Snapshot, type Table } from '@thrum/model'
import { classOf, factorNames, resolveFactor } from '@thrum/survey'
import type { ProjectTold } from '../api/project.ts'
import type { Desk } from './desk.ts'
import { measuredNames } from './measured-names.ts'

/** Levels told of one factor; something with more is not compared level by level. */
const mostLevels = 500

/** Numbers that stay out of every estimate until a person says more. */
const waits: ReadonlySet<number> = new Set([mark.waiting, mark.atLeast, mark.atMost])

const numbersOf = (table: Table): readonly NumberColumn[] =>
  [...Object.values(table.columns), ...table.factors.values()].filter((column) => column.type === 'number')

/** Cells and whole rows that wait for a person. */
function waitingIn({ tables }: Snapshot): number {
  let waiting = 0
  for (const table of [tables.count, tables.tally] as readonly Table[]) {
    for (const { marks } of numbersOf(table)) {
      if (marks === null) continue
      for (let row = 0; row < marks.length; row++) if (waits.has(marks[row] as number)) waiting += 1
    }
  }
  const { state, row } = tables.setAside.columns
  for (let at = 0; at < tables.setAside.rows; at++) {
    if (state.dictionary[state.codes[at] ?? -1] === 'waiting' && Number.isNaN(row.values[at])) waiting += 1
  }
  return waiting
}

/** How many of each kind were counted in all. */
export function kindTotals({ kinds, tallyKind, tables }: Snapshot): Float64Array {
  const totals = new Float64Array(kinds.length)
  const { values } = tables.tally.columns.number
  for (let tally = 0; tally < tallyKind.length; tally++) {
    const kind = tallyKind[tally] as number
    const value = values[tally] as number
    if (kind >= 0 && !Number.isNaN(value)) totals[kind] = (totals[kind] as number) + value
  }
  return totals
}

/** Kinds in the order of the project's own frequencies, ties by name. */
export function kindsByFrequency(snapshot: Snapshot): readonly { readonly kind: number; readonly count: number }[] {
  const totals = kindTotals(snapshot)
  const nameOf = (kind: number): string => snapshot.kinds[kind]?.name ?? ''
  return Array.from(totals, (count, kind) => ({ kind, count })).sort(
    (a, b) => b.count - a.count || (nameOf(a.kind) < nameOf(b.kind) ? -1 : 1),
  )
}

function fieldsOf({ fields, countField }: Snapshot): ProjectTold['fields'] {
  const counts = new Int32Array(fields.length)
  for (const field of countField) if (field >= 0) counts[field] = (counts[field] as number) + 1
  return fields.map(({ name, crop, cultivar, point, polygon, hectares, address }, at) => ({
    name,
    crop,
    cultivar,
    point: point === null ? null : { latitude: point.latitude, longitude: point.longitude },
    polygon: polygon === null ? null : polygon.map(([x, y]) => [x, y]),
    hectares,
    described: address !== null,
    counts: counts[at] ?? 0,
  }))
}

function factorsOf(snapshot: Snapshot): ProjectTold['factors'] {
  const measured = measuredNames(snapshot)
  const named = factorNames(snapshot)
  return [...new Set([...named, ...measured])].map((name) => {
    const levels = named.includes(name) ? resolveFactor(snapshot, name).levels : []
    return { name, levels: levels.length > mostLevels ? [] : [...levels], measured: measured.includes(name) }
  })
}

const cropsOf = (snapshot: Snapshot): string[] => [
  ...new Set([
    ...resolveFactor(snapshot, 'crop').levels,
    ...snapshot.fields.flatMap(({ crop }) => (crop === null ? [] : [crop])),
  ]),
]

type OfData = Omit<ProjectTold, 'file' | 'askedDigest' | 'mode' | 'because'>

function ofData(snapshot: Snapshot): OfData {
  const { plan, project, tables, conflicts } = snapshot
  return {
    title: project?.title ?? '',
    digest: snapshot.digest,
    counts: tables.count.rows,
    tallies: tables.tally.rows,
    fields: fieldsOf(snapshot),
    kinds: kindsByFrequency(snapshot).map(({ kind, count }) => ({
      name: snapshot.kinds[kind]?.name ?? '',
      class: classOf(snapshot, kind),
      count,
    })),
    seasons: [...resolveFactor(snapshot, 'season').levels],
    crops: cropsOf(snapshot),
    factors: factorsOf(snapshot),
    waiting: waitingIn(snapshot),
    contested: conflicts.length,
    unfinishedSheets: [...snapshot.unfinishedSheets],
    plan:
      plan === null
        ? null
        : {
            lastVisit: plan.lastVisit === null ? null : isoDate(plan.lastVisit),
            primaryKind: plan.primaryKind,
            block: plan.block,
          },
    demonstration: isDemonstration(snapshot),
    version,
  }
}

/** The open project at a glance. */
export async function tellProject(desk: Desk, project: Project): Promise<unknown> {
  const snapshot = await project.snapshot()
  const { access } = project
  return {
    ...desk.once('project', snapshot, () => ofData(snapshot)),
    file: basename(project.path),
    askedDigest: snapshot.askedDigest,
    mode: access.mode,
    because: access.mode === 'read' ? access.because : null,
  }
}
