import { isoDate, type Snapshot } from '@thrum/model'
import { type Contrast, logOdds, logRate } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import { fitFieldUnits, type PairContrast } from './field-contrast.ts'
import type { Units } from './unit-values.ts'

/** The same contrast without the counts of one visit: a field on a day. */
export interface WithoutVisit {
  readonly field: string
  /** ISO date; empty where none was recorded. */
  readonly date: string
  /** Rows of the snapshot's counts. */
  readonly rows: readonly number[]
  /** Null where what is left can no longer be compared. */
  readonly contrast: Contrast | null
}

interface Sums {
  total: number
  other: number
  effort: number
}

const nothing = (): Sums => ({ total: 0, other: 0, effort: 0 })

function add(into: Sums, from: Sums, sign: 1 | -1): Sums {
  return {
    total: into.total + sign * from.total,
    other: into.other + sign * from.other,
    effort: into.effort + sign * from.effort,
  }
}

/** Sums by key, side by side: one pass over the rows of the design. */
function sumUp(
  design: Design,
  tallies: Float64Array,
  against: Float64Array | null,
  keyOf: (k: number) => string,
): Map<string, Map<number, Sums>> {
  const byKey = new Map<string, Map<number, Sums>>()
  for (let k = 0; k < design.rows.length; k++) {
    const row = design.rows[k] as number
    const total = tallies[row] as number
    const other = against === null ? 0 : (against[row] as number)
    if (Number.isNaN(total) || Number.isNaN(other)) continue
    const side = design.structure === 'before-after-control' ? (design.periodOf[k] as number) : (design.levelOf[k] as number)
    const sides = byKey.get(keyOf(k)) ?? new Map<number, Sums>()
    sides.set(side, add(sides.get(side) ?? nothing(), { total, other, effort: design.effort[k] as number }, 1))
    byKey.set(keyOf(k), sides)
  }
  return byKey
}

/**
 * The contrast of a pair with each visit left out in turn. What it is adjusted for stays as it was: which counts stand is
 * changed, not how they are analysed.
 */
export function leaveOutVisits(
  snapshot: Snapshot,
  design: Design,
  tallies: Float64Array,
  against: Float64Array | null,
  pair: PairContrast,
): readonly WithoutVisit[] {
  const { date } = snapshot.tables.count.columns
  const dayOf = (k: number): number => date.values[design.rows[k] as number] ?? Number.NaN
  const visitKey = (k: number): string => `${design.fieldOf[k]}\n${dayOf(k)}`
  const byField = sumUp(design, tallies, against, (k) => String(design.fieldOf[k]))
  const byVisit = sumUp(design, tallies, against, visitKey)
  const rowsOf = Map.groupBy(
    Array.from(design.rows, (_, k) => k),
    visitKey,
  )
  const z = ({ total, other, effort }: Sums): number | null =>
    against === null ? (effort > 0 ? logRate(total, effort) : null) : effort > 0 ? logOdds(total, other) : null
  const [first, second] = design.structure === 'within-fields' || design.structure === 'before-after' ? [0, pair.level] : [0, 1]

  const changeOf = (sides: Map<number, Sums>, level: number): number | null => {
    if (design.structure === 'between-fields') return z(sides.get(level) ?? nothing())
    const [before, after] = [z(sides.get(first) ?? nothing()), z(sides.get(second) ?? nothing())]
    return before === null || after === null ? null : after - before
  }
  return [...byVisit].flatMap(([key, visit]): readonly WithoutVisit[] => {
    const [field, day] = key.split('\n').map(Number) as [number, number]
    const unit = pair.units.fields.indexOf(field)
    const sides = byField.get(String(field))
    if (unit < 0 || sides === undefined) return []
    const rest = new Map([...sides].map(([side, sums]) => [side, add(sums, visit.get(side) ?? nothing(), -1)]))
    const left = withoutUnit(pair, unit, changeOf(rest, pair.units.level[unit] ?? 0))
    const fit = fitFieldUnits(left.units, pair.level, left.nuisances)
    return [
      {
        field: design.fields[field]?.name ?? '',
        date: Number.isNaN(day) ? '' : isoDate(day),
        rows: (rowsOf.get(key) ?? []).map((k) => design.rows[k] as number),
        contrast: fit.kind === 'fitted' ? fit.contrast : null,
      },
    ]
  })
}

/** Units with one value changed, or (null) with that unit left out, its nuisances with it. */
function withoutUnit(pair: PairContrast, unit: number, value: number | null): Pick<PairContrast, 'units' | 'nuisances'> {
  const { units, nuisances } = pair
  if (value !== null) return { units: { ...units, z: units.z.map((own, k) => (k === unit ? value : own)) }, nuisances }
  const keep = <T>(list: readonly T[]): readonly T[] => list.filter((_, k) => k !== unit)
  const left: Units = {
    ...units,
    z: keep(units.z),
    level: keep(units.level),
    block: keep(units.block),
    fields: keep(units.fields),
  }
  return {
    units: left,
    nuisances: nuisances.map(({ name, columns }) => ({
      name,
      columns: columns.map((column) => column.filter((_, k) => k !== unit)),
    })),
  }
}
