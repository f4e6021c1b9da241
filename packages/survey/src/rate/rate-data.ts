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
  const counts: Watch[] = []
  const watchOf = sameWatches()
  for (const row of rows) {
    const total = tallies[row] as number
    const effort = effortOf(snapshot, row, measure, unit)
    const field = snapshot.countField[row] ?? -1
    if (Number.isNaN(total) || Number.isNaN(effort) || field < 0) continue
    let found = fields.get(field)
    if (found === undefined) {
      found = { name: snapshot.fields[field]?.name ?? '', total: 0, effort: 0, counts: 0 }
      fields.set(field, found)
    }
    found.total += total
    found.effort += effort
    found.counts += 1
    counts.push(watchOf(total, effort))
  }
  return { fields: [...fields.values()], counts }
}

type Watch = RateData['counts'][number]

/** Watches of one total and one effort are one object: a million of them hold some hundred different ones. */
function sameWatches(): (total: number, effort: number) => Watch {
  const byEffort = new Map<number, Map<number, Watch>>()
  return (total, effort) => {
    let byTotal = byEffort.get(effort)
    if (byTotal === undefined) {
      byTotal = new Map()
      byEffort.set(effort, byTotal)
    }
    let watch = byTotal.get(total)
    if (watch === undefined) {
      watch = { total, effort }
      byTotal.set(total, watch)
    }
    return watch
  }
}
