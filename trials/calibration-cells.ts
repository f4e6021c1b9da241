// The cells of the trial of calibration: how fields, visits, scatter, effort and zeros are mixed. A seeded sample in which every
// level of every factor stands beside every level of every other, and the corners that were suspected to be worst.

import type { Rng } from '@thrum/model/ground'
import { shuffled } from '@thrum/stats'

/** Fields of two levels; fields of two levels before and after; both levels within each field. */
export type Layout = 'between-fields' | 'before-after-control' | 'within-fields'

/**
 * Who is watched five times as long. `first` and `second`: the one level or the other (before and after: the treated fields
 * before, or after); `mixed`: every second field, whatever its level.
 */
export type EffortPlan = 'even' | 'first' | 'second' | 'mixed'

/** One mix; counts of a visit are negative binomial (Poisson at infinite theta) around `mean` times what stands below. */
export interface CalibrationCell {
  readonly layout: Layout
  /** Fields an arm; of pairs within fields, the number of fields. */
  readonly fields: number
  /** Visits to a field at each level or in each period. */
  readonly visits: number
  /** Expected count of a visit at the first level with the shorter effort, zero inflation not counted. */
  readonly mean: number
  readonly theta: number
  /** SD on the log of fields, of field and period (or level within the field), of visits; all with expected factor 1. */
  readonly fieldSd: number
  readonly periodSd: number
  readonly visitSd: number
  /** True ratio of marginal means: second level to first, or what after/before is of the treated per that of the controls. */
  readonly ratio: number
  readonly effort: EffortPlan
  /** Chance of a visit that counts nothing whatever flies. */
  readonly zeroChance: number
}

const levels: { readonly [F in keyof CalibrationCell]: readonly CalibrationCell[F][] } = {
  layout: ['between-fields', 'before-after-control', 'within-fields'],
  fields: [3, 4, 6, 10, 20],
  visits: [2, 3, 4, 6, 10],
  mean: [0.2, 0.5, 1, 2.5, 5, 10, 20],
  theta: [0.5, 1, 2, 5, Number.POSITIVE_INFINITY],
  fieldSd: [0, 0.3, 0.6, 1],
  periodSd: [0, 0.3, 0.6],
  visitSd: [0, 0.3],
  ratio: [1 / 3, 1, 1.25, 3],
  effort: ['even', 'first', 'second', 'mixed'],
  zeroChance: [0, 0.3],
}

/** Names of the factors, in the order in which a key tells them. */
export const factorNames = Object.keys(levels) as readonly (keyof CalibrationCell)[]

/** Minutes of the longer effort per one of the shorter. */
export const longEffort = 5

/** Effort of a visit to a field, its arm and side given: 1 or `longEffort`. */
export function effortOf({ layout, effort }: CalibrationCell, field: number, arm: number, side: number): number {
  if (effort === 'even') return 1
  if (effort === 'mixed') return field % 2 === 1 ? longEffort : 1
  const isLong =
    layout === 'before-after-control' ? arm === 1 && side === Number(effort === 'second') : side === Number(effort === 'second')
  return isLong ? longEffort : 1
}

/** Whether arm and side hold what is asked about. */
export function isChanged({ layout }: CalibrationCell, arm: number, side: number): boolean {
  return layout === 'before-after-control' ? arm === 1 && side === 1 : side === 1
}

/** Arm and side of every total of a field, first level first. */
export function placesOf({ layout }: CalibrationCell): readonly (readonly [arm: number, side: number])[] {
  if (layout === 'between-fields')
    return [
      [0, 0],
      [1, 1],
    ]
  if (layout === 'within-fields')
    return [
      [0, 0],
      [0, 1],
    ]
  return [
    [0, 0],
    [0, 1],
    [1, 0],
    [1, 1],
  ]
}

/** Expected total of a field at the level (or in the period) where it is smallest; zero inflation counted. */
export function smallestTotal(cell: CalibrationCell): number {
  const factors = placesOf(cell).flatMap(([arm, side]) =>
    [0, 1].map((field) => effortOf(cell, field, arm, side) * (isChanged(cell, arm, side) ? cell.ratio : 1)),
  )
  return cell.visits * cell.mean * (1 - cell.zeroChance) * Math.min(...factors)
}

/** The cell's name, and the label of its stream of random numbers. */
export function keyOf(cell: CalibrationCell): string {
  return factorNames.map((name) => (typeof cell[name] === 'number' ? Number(cell[name].toPrecision(6)) : cell[name])).join(' ')
}

/** Every factor balanced over the cells, each in an order of its own. */
function sampledCells(rng: Rng, count: number): readonly CalibrationCell[] {
  const column = <F extends keyof CalibrationCell>(name: F): readonly CalibrationCell[F][] => {
    const own: readonly CalibrationCell[F][] = levels[name]
    return shuffled(
      rng.fork(name),
      Array.from({ length: count }, (_, k) => own[k % own.length] as CalibrationCell[F]),
    )
  }
  const columns = Object.fromEntries(factorNames.map((name) => [name, column(name)])) as {
    readonly [F in keyof CalibrationCell]: readonly CalibrationCell[F][]
  }
  return Array.from(
    { length: count },
    (_, k) => Object.fromEntries(factorNames.map((name) => [name, columns[name][k]])) as unknown as CalibrationCell,
  )
}

interface Corner {
  readonly fields: readonly number[]
  readonly visits: number
  readonly fieldSd: readonly number[]
  readonly effort: readonly EffortPlan[]
  readonly zeroChance: readonly number[]
  /** Expected smallest totals, or the largest mean of a visit. */
  readonly totals: readonly (number | 'most')[]
}

const justEnough = 5.05
const corners: readonly Corner[] = [
  // Many fields, few visits: where a bias is largest beside its standard error.
  { fields: [20], visits: 2, fieldSd: [0, 1], effort: levels.effort, zeroChance: [0, 0.3], totals: [justEnough, 'most'] },
  // Few fields: where most is refused.
  { fields: [3], visits: 2, fieldSd: [0, 1], effort: ['even', 'second'], zeroChance: [0, 0.3], totals: [justEnough] },
  // Small totals, where the refusals have to bite.
  { fields: [20], visits: 4, fieldSd: [0], effort: ['even', 'first', 'second'], zeroChance: [0], totals: [1, 2.5, 4] },
]

function cellsOfCorner(corner: Corner): readonly CalibrationCell[] {
  const found: CalibrationCell[] = []
  for (const layout of levels.layout)
    for (const theta of [0.5, Number.POSITIVE_INFINITY])
      for (const ratio of [1 / 3, 1, 3])
        for (const fields of corner.fields)
          for (const fieldSd of corner.fieldSd)
            for (const effort of corner.effort)
              for (const zeroChance of corner.zeroChance)
                for (const total of corner.totals) {
                  const { visits } = corner
                  const unit = {
                    layout,
                    fields,
                    visits,
                    mean: 1,
                    theta,
                    fieldSd,
                    periodSd: 0,
                    visitSd: 0,
                    ratio,
                    effort,
                    zeroChance,
                  }
                  found.push({ ...unit, mean: total === 'most' ? 20 : total / smallestTotal(unit) })
                }
  return found
}

/**
 * All cells of the trial, sampled ones first.
 *
 * @param count of sampled cells; every pair of levels of two factors stands in about count / 35 of them or more
 */
export function calibrationCells(rng: Rng, count: number): readonly CalibrationCell[] {
  const all = [...sampledCells(rng, count), ...corners.flatMap(cellsOfCorner)]
  return [...new Map(all.map((cell) => [keyOf(cell), cell])).values()]
}
