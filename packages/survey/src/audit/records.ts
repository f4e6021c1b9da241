import { type Snapshot, textAt } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { type KindSet, talliesOf, waitingTallies } from '../selection/kind-set.ts'
import type { Finding } from './finding.ts'

/** Files whose absent rows may mean "none seen" or "not looked for": rates have no foundation, shares among sightings have. */
export function zerosMissing(snapshot: Snapshot, selected: readonly number[]): readonly Finding[] {
  const { zeros } = snapshot.tables.count.columns
  const rows = selected.filter((row) => textAt(zeros, row) === 'not-known')
  if (rows.length === 0) return []
  return [
    {
      code: 'zeros-missing',
      severity: 'block',
      text: saying('survey/audit/zeros-missing', { counts: rows.length, of: selected.length }),
      rows,
      cure: saying('survey/cure/say-what-absent-means'),
    },
  ]
}

/** Cells that wait for a person, or hold only a limit, stay out of every estimate. */
export function waitingCells(snapshot: Snapshot, selected: readonly number[], kinds: readonly KindSet[]): readonly Finding[] {
  // Most tables hold no marked cell at all; then a million rows need not be put in a set.
  if (snapshot.tables.tally.columns.number.marks === null) return []
  const inside = new Set(selected)
  const rows = kinds.flatMap((set) => waitingTallies(snapshot, set, inside).map((tally) => snapshot.tallyCount[tally] as number))
  if (rows.length === 0) return []
  return [
    {
      code: 'waiting',
      severity: 'note',
      text: saying('survey/audit/waiting', { cells: rows.length }),
      rows,
      cure: saying('survey/cure/settle-cells'),
    },
  ]
}

/** Counts in which a kind was not looked for (or one of several counted together was not). */
export function notLookedFor(snapshot: Snapshot, selected: readonly number[], kinds: readonly KindSet[]): readonly Finding[] {
  return kinds.flatMap((set): readonly Finding[] => {
    const tallies = talliesOf(snapshot, set)
    const rows = selected.filter((row) => Number.isNaN(tallies[row] ?? Number.NaN))
    if (rows.length === 0) return []
    return [
      {
        code: 'not-looked-for',
        severity: 'note',
        text: saying('survey/audit/not-looked-for', { kind: set.label, counts: rows.length, of: selected.length }),
        rows,
        cure: null,
      },
    ]
  })
}

/** More insects in a watch than one pair of eyes keeps up with [individuals in 10 minutes] (methods 1.9, common practice). */
const saturatedFrom = 30

/** Watches so busy that some insects will have been missed. */
export function saturatedCounts(snapshot: Snapshot, rows: readonly number[], kinds: readonly KindSet[]): readonly Finding[] {
  const { minutes, unit } = snapshot.tables.count.columns
  const busy = new Set<number>()
  for (const set of kinds) {
    const tallies = talliesOf(snapshot, set)
    for (const row of rows) {
      if (textAt(unit, row) === 'visits') continue
      if (((tallies[row] as number) * 10) / (minutes.values[row] ?? Number.NaN) > saturatedFrom) busy.add(row)
    }
  }
  if (busy.size === 0) return []
  return [
    {
      code: 'saturated-counts',
      severity: 'warn',
      text: saying('survey/audit/saturated-counts', { counts: busy.size, limit: saturatedFrom }),
      rows: [...busy],
      cure: saying('survey/cure/smaller-plots'),
    },
  ]
}

/** Corrections that contradict each other, and records this version cannot read. */
export function unsettledRecords(snapshot: Snapshot): readonly Finding[] {
  const found: Finding[] = []
  if (snapshot.conflicts.length > 0) {
    found.push({
      code: 'two-corrections',
      severity: 'warn',
      text: saying('survey/audit/two-corrections', { cells: snapshot.conflicts.length }),
      rows: [],
      cure: saying('survey/cure/settle-corrections'),
    })
  }
  if (snapshot.waitingFacts.length > 0) {
    found.push({
      code: 'records-unread',
      severity: 'warn',
      text: saying('survey/audit/records-unread', { records: snapshot.waitingFacts.length }),
      rows: [],
      cure: saying('survey/cure/newer-thrum'),
    })
  }
  return found
}
