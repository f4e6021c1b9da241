import type { CountingUnit, Snapshot } from '@thrum/model'
import type { Measure } from '../design/design.ts'
import { effortOf } from '../design/effort.ts'
import type { RateData } from './field-rates.ts'

/**
 * Totals and effort of a kind over counts, by field and watch by watch. Counts in which it was not looked for, or whose
 * effort or field is not known, stay out.
 *
 * @param tallies for each count of the snapshot how many; NaN where it was not looked for
 */
export function rateData(
  snapshot: Snapshot,
  rows: readonly number[],
  tallies: Float64Array,
  measure: Measure,
  unit: CountingUnit | null,
): RateData {
  const fields = new Map<number, { name: string; total: number; effort: number; counts: number }>()
  const counts: { total: number; effort: number }[] = []
  for (const row of rows) {
    const total = tallies[row] as number
    const effort = effortOf(snapshot, row, measure, unit)
    const field = snapshot.countField[row] ?? -1
    if (Number.isNaN(total) || Number.isNaN(effort) || field < 0) continue
    const found = fields.get(field) ?? { name: snapshot.fields[field]?.name ?? '', total: 0, effort: 0, counts: 0 }
    found.total += total
    found.effort += effort
    found.counts += 1
    fields.set(field, found)
    counts.push({ total, effort })
  }
  return { fields: [...fields.values()], counts }
}
