import type { CountingUnit } from '@thrum/model'
import { isCounted, markAt, type NumberColumn, type Snapshot } from '@thrum/model'
import type { Measure } from './design.ts'

const known = (column: NumberColumn, row: number): number =>
  isCounted(markAt(column, row)) ? (column.values[row] ?? Number.NaN) : Number.NaN

/** Watched minutes of a count, pauses taken off where minutes follow from start and end; NaN where they are not known. */
export function watchedMinutes(snapshot: Snapshot, row: number): number {
  const minutes = known(snapshot.tables.count.columns.minutes, row)
  return minutes > 0 ? minutes : Number.NaN
}

/**
 * Effort of a count in a measure: minutes; minutes * open flowers; minutes * m2. A snapshot has no minutes: its effort is 1,
 * the flowers or the area. NaN where it is not known, and where no flower was open (a rate per flower then has no meaning).
 */
export function effortOf(snapshot: Snapshot, row: number, measure: Measure, unit: CountingUnit | null): number {
  const { flowers, area } = snapshot.tables.count.columns
  const time = unit === 'snapshot' ? 1 : watchedMinutes(snapshot, row)
  const size = measure === 'time' ? 1 : known(measure === 'flower' ? flowers : area, row)
  const effort = time * size
  return effort > 0 ? effort : Number.NaN
}
