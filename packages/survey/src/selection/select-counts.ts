import type { CountingUnit, Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { parseCondition, rowsWhere } from './condition.ts'

/** Which counts a question is about. All of `where` must hold; counts for which all of `except` hold are left out. */
export interface Selection {
  readonly where: readonly string[]
  readonly except: readonly string[]
  readonly unit: string | null
}

export interface SelectedCounts {
  /** Rows of the snapshot's counts, ascending. */
  readonly rows: Int32Array
  /** How many counts `except` left out. */
  readonly excepted: number
  /** Counting unit of all of them; null where nobody said. */
  readonly unit: CountingUnit | null
}

/**
 * The counts asked about. Snapshots, individuals and visits are never pooled.
 *
 * @throws ThrumError survey/units-mixed where more than one counting unit is left; survey/condition/...
 */
export function selectCounts(snapshot: Snapshot, selection: Selection): SelectedCounts {
  const counts = snapshot.tables.count
  const where = selection.where.map((text) => rowsWhere(snapshot, parseCondition(text)))
  const except = selection.except.map((text) => rowsWhere(snapshot, parseCondition(text)))
  const { unit } = counts.columns
  const rows = new Int32Array(counts.rows)
  let selected = 0
  const units = new Set<string>()
  let excepted = 0
  for (let row = 0; row < counts.rows; row++) {
    if (where.length > 0 && !where.every((holds) => holds(row))) continue
    const word = unit.dictionary[unit.codes[row] ?? -1] ?? null
    if (selection.unit !== null && word !== selection.unit) continue
    if (except.length > 0 && except.every((holds) => holds(row))) {
      excepted += 1
      continue
    }
    rows[selected++] = row
    if (word !== null) units.add(word)
  }
  if (units.size > 1) throw new ThrumError('survey/units-mixed', { units: [...units].sort().join(', ') })
  return { rows: rows.slice(0, selected), excepted, unit: ([...units][0] as CountingUnit | undefined) ?? null }
}
