import { ThrumError } from '@thrum/model/ground'
import { countingUnitOf } from '../mapping/counting-unit.ts'
import type { Mapping } from '../mapping/shape.ts'
import type { CellSource } from './cell-source.ts'
import type { MappedColumns } from './mapped-columns.ts'

/** From this share of numbers that are not whole, a sheet holds no counts but means of counts. Common practice, no source. */
const mostNotWhole = 0.1

/**
 * Refuses a sheet whose "counts" are means or rates: the number of insects and the effort behind them are gone.
 *
 * @throws ThrumError exchange/sheet/not-counts
 */
export function refuseNotCounts(sources: readonly CellSource[], rows: number): void {
  let numbers = 0
  let notWhole = 0
  let example: { written: string; column: string } | null = null
  for (const source of sources) {
    for (let row = 0; row < rows; row++) {
      const reading = source.at(row)
      const broken = reading.kind === 'waiting' && reading.because === 'exchange/cell/not-whole'
      if (broken) {
        notWhole++
        example ??= { written: reading.written.trim(), column: source.header }
      }
      if (broken || 'value' in reading) numbers++
    }
  }
  if (example === null || notWhole < 5 || notWhole <= numbers * mostNotWhole) return
  throw new ThrumError('exchange/sheet/not-counts', { ...example, cells: notWhole, of: numbers })
}

/** @throws ThrumError exchange/sheet/effort-unmapped, unless a person said that nobody wrote it down */
export function refuseWithoutEffort(effort: unknown, mapping: Mapping): void {
  if (effort === null && mapping.effort !== 'not recorded') throw new ThrumError('exchange/sheet/effort-unmapped')
}

/**
 * Counting units must never be pooled.
 *
 * @throws ThrumError exchange/sheet/units-mixed, exchange/mapping/counting-unit-unknown
 */
export function refuseMixedUnits(columns: MappedColumns): void {
  const column = columns.one('unit')
  if (column === undefined) return
  const found = new Set<string>()
  for (const written of column.cells.dictionary) {
    const said = column.mapped.means?.[written.trim()]
    const unit = countingUnitOf(typeof said === 'string' ? said : written)
    if (unit === null)
      throw new ThrumError('exchange/mapping/counting-unit-unknown', { header: column.header, written: written.trim() })
    found.add(unit)
  }
  if (found.size > 1) throw new ThrumError('exchange/sheet/units-mixed', { header: column.header, units: [...found].join(', ') })
}
