import { isoDate, type Snapshot } from '@thrum/model'
import { type Contrast, logOdds, logRate } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import { codedNumbers } from '../factor/coded-numbers.ts'
import type { Cell } from './cells.ts'
import { fitStanding, type PairContrast } from './field-contrast.ts'
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

/** Totals and effort by place and side: fields, or visits to them. */
interface Sums {
  readonly total: Float64Array
  readonly other: Float64Array
  readonly effort: Float64Array
}

const sumsOf = (places: number): Sums => ({
  total: new Float64Array(places),
  other: new Float64Array(places),
  effort: new Float64Array(places),
})

/** Visits of a design, a field on a day each: for each row its visit, and of each visit its field, its day and its rows. */
interface Visits {
  readonly visitOf: Int32Array
  readonly fieldOf: readonly number[]
  /** Day number; NaN where none was recorded. */
  readonly dayOf: readonly number[]
  rowsOf(visit: number): readonly number[]
}

function visitsOf(snapshot: Snapshot, design: Design): Visits {
  const { codes, values } = codedNumbers(snapshot.tables.count.columns.date.values)
  const visitOf = new Int32Array(design.rows.length)
  const visitAt = new Map<number, number>()
  const fieldOf: number[] = []
  const dayOf: number[] = []
  const sizes: number[] = []
  for (let k = 0; k < design.rows.length; k++) {
    const field = design.fieldOf[k] as number
    const code = codes[design.rows[k] as number] ?? -1
    const place = field * (values.length + 1) + code + 1
    let visit = visitAt.get(place)
    if (visit === undefined) {
      visit = fieldOf.push(field) - 1
      dayOf.push(values[code] ?? Number.NaN)
      sizes.push(0)
      visitAt.set(place, visit)
    }
    visitOf[k] = visit
    sizes[visit] = (sizes[visit] as number) + 1
  }
  let end = 0
  const ends = Int32Array.from(sizes, (size) => {
    end += size
    return end - size
  })
  const rows = new Int32Array(design.rows.length)
  for (let k = 0; k < rows.length; k++) {
    const visit = visitOf[k] as number
    const at = ends[visit] as number
    rows[at] = design.rows[k] as number
    ends[visit] = at + 1
  }
  const rowsOf = (visit: number): readonly number[] => {
    const to = ends[visit] as number
    return Array.from(rows.subarray(to - (sizes[visit] as number), to))
  }
  return { visitOf, fieldOf, dayOf, rowsOf }
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
  const visits = visitsOf(snapshot, design)
  const sides = Math.max(2, design.levels.length)
  const sideOf = design.structure === 'before-after-control' ? design.periodOf : design.levelOf
  const ofField = sumsOf(design.fields.length * sides)
  const ofVisit = sumsOf(visits.fieldOf.length * sides)
  /** Visits in which the kind was looked for, in the order of their first such count. */
  const looked = new Set<number>()
  for (let k = 0; k < design.rows.length; k++) {
    const row = design.rows[k] as number
    const total = tallies[row] as number
    const other = against === null ? 0 : (against[row] as number)
    if (Number.isNaN(total) || Number.isNaN(other)) continue
    const side = sideOf[k] as number
    const visit = visits.visitOf[k] as number
    looked.add(visit)
    for (const [sums, place] of [
      [ofField, (design.fieldOf[k] as number) * sides + side],
      [ofVisit, visit * sides + side],
    ] as const) {
      sums.total[place] = (sums.total[place] as number) + total
      sums.other[place] = (sums.other[place] as number) + other
      sums.effort[place] = (sums.effort[place] as number) + (design.effort[k] as number)
    }
  }
  /** Log rate, or log odds, of a field at one side without a visit; null where no effort is left. */
  const zWithout = (field: number, visit: number, side: number): number | null => {
    const [at, off] = [field * sides + side, visit * sides + side]
    const left = (values: 'total' | 'other' | 'effort'): number => (ofField[values][at] ?? 0) - (ofVisit[values][off] ?? 0)
    if (!(left('effort') > 0)) return null
    return against === null ? logRate(left('total'), left('effort')) : logOdds(left('total'), left('other'))
  }
  /** A total of a field without a visit; none where no effort is left. */
  const cellWithout = (cell: Cell, field: number, visit: number): readonly Cell[] => {
    if (cell.field !== field) return [cell]
    const off = visit * sides + cell.side
    const effort = cell.effort - (ofVisit.effort[off] ?? 0)
    return effort > 0 ? [{ ...cell, total: cell.total - (ofVisit.total[off] ?? 0), effort }] : []
  }
  const [first, second] = design.structure === 'within-fields' || design.structure === 'before-after' ? [0, pair.level] : [0, 1]
  const changeOf = (field: number, visit: number, level: number): number | null => {
    if (design.structure === 'between-fields') return zWithout(field, visit, level)
    const [before, after] = [zWithout(field, visit, first), zWithout(field, visit, second)]
    return before === null || after === null ? null : after - before
  }
  return [...looked].flatMap((visit): readonly WithoutVisit[] => {
    const field = visits.fieldOf[visit] as number
    const day = visits.dayOf[visit] as number
    const unit = pair.units.fields.indexOf(field)
    if (unit < 0) return []
    const left = withoutUnit(pair, unit, changeOf(field, visit, pair.units.level[unit] ?? 0))
    const cells = pair.cells?.flatMap((cell) => cellWithout(cell, field, visit)) ?? null
    const fit = fitStanding(design, cells, left.units, pair.level, left.nuisances)
    return [
      {
        field: design.fields[field]?.name ?? '',
        date: Number.isNaN(day) ? '' : isoDate(day),
        rows: visits.rowsOf(visit),
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
