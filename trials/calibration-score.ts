// The bars of calibration, fixed before any cell was run, and where each stands against what was found.

import { type CalibrationCell, smallestTotal } from './calibration-cells.ts'
import type { CellFound } from './calibration-run.ts'

export interface ScoredCell {
  readonly cell: CalibrationCell
  readonly found: CellFound
}

/** A bar that one number has to clear, and the cells it hangs on, worst first. */
export interface Bar {
  readonly name: string
  readonly side: 'at-least' | 'at-most'
  readonly bar: number
  /** The number: of the worst cell, or over all cells. */
  readonly value: number
  /** Of a bar that every cell has to clear: all cells judged. */
  readonly cells: readonly JudgedCell[]
  /** Where the number is one over all cells. */
  readonly over: number
  readonly clears: boolean
}

export interface JudgedCell extends ScoredCell {
  readonly value: number
  /** Monte Carlo standard error of the value. */
  readonly error: number
}

/** Totals from which a cell belongs to (a); below it belongs to (b). */
export const enoughTotal = 5
/** Part of the data sets that must be answered for a cell to be judged by what the answers say. */
export const leastAnswered = 0.1

const isEnough = ({ cell }: ScoredCell): boolean => smallestTotal(cell) >= enoughTotal
const isJudged = ({ found }: ScoredCell): boolean => found.answered >= leastAnswered * found.sets
const isNoEffect = ({ cell }: ScoredCell): boolean => cell.ratio === 1
const isLarge = ({ cell }: ScoredCell): boolean => Math.max(cell.ratio, 1 / cell.ratio) > 2.9

const ofAnswered =
  (of: (found: CellFound) => number) =>
  ({ found }: ScoredCell): Judged =>
    share(of(found), found.answered)

interface Judged {
  readonly value: number
  readonly error: number
}

function share(part: number, whole: number): Judged {
  const value = whole === 0 ? 0 : part / whole
  return { value, error: whole === 0 ? 0 : Math.sqrt((value * (1 - value)) / whole) }
}

export function medianOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = sorted.length >> 1
  const upper = sorted[middle] ?? Number.NaN
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

const clears = (side: Bar['side'], value: number, bar: number): boolean => (side === 'at-least' ? value >= bar : value <= bar)

function inEvery(
  name: string,
  side: Bar['side'],
  bar: number,
  cells: readonly ScoredCell[],
  judge: (cell: ScoredCell) => Judged,
): Bar {
  const sign = side === 'at-least' ? 1 : -1
  const judged = cells.map((cell): JudgedCell => ({ ...cell, ...judge(cell) })).sort((a, b) => sign * (a.value - b.value))
  const value = judged[0]?.value ?? Number.NaN
  return { name, side, bar, value, cells: judged, over: cells.length, clears: clears(side, value, bar) }
}

function overAll(name: string, side: Bar['side'], bar: number, cells: readonly ScoredCell[], value: number): Bar {
  return { name, side, bar, value, cells: [], over: cells.length, clears: clears(side, value, bar) }
}

/** Median width of the interval beside that of the plain t. */
const widthRatio = ({ found }: ScoredCell): Judged => ({
  value: found.plainWidth === 0 ? 1 : found.width / found.plainWidth,
  error: 0,
})

/** Points of power that the refusals cost; both are of the same data sets. */
const powerLost = ({ found }: ScoredCell): Judged => share(found.plainShown - found.shown, found.sets)

/**
 * Every bar, in order. Shares are of the answered data sets; `shown` and `leaning` with an S just above 1, so that no difference
 * hides as `alike`.
 */
export function barsOf(all: readonly ScoredCell[]): readonly Bar[] {
  const enough = all.filter(isEnough)
  const few = all.filter((cell) => !isEnough(cell) && isJudged(cell))
  const judged = all.filter(isJudged)
  const none = judged.filter(isNoEffect)
  const some = judged.filter((cell) => !isNoEffect(cell))
  const covered = ofAnswered((found) => found.covered)
  const shown = ofAnswered((found) => found.shown)
  const medianCovered = medianOf(enough.map((cell) => covered(cell).value))
  const sets = enough.reduce((sum, { found }) => sum + found.sets, 0)
  const answered = enough.reduce((sum, { found }) => sum + found.answered, 0)
  const wide = enough.filter(isJudged)
  const large = enough.filter(isLarge)
  return [
    inEvery('(a) coverage in every cell of total 5 or more', 'at-least', 0.93, enough, covered),
    overAll('(a) median coverage over those cells', 'at-least', 0.945, enough, medianCovered),
    overAll('(a) median coverage over those cells', 'at-most', 0.96, enough, medianCovered),
    inEvery('(b) coverage in every cell of a lower total', 'at-least', 0.93, few, covered),
    inEvery('(c) false `shown` in every cell', 'at-most', 0.065, none, shown),
    overAll('(c) false `shown`, mean of the cells', 'at-most', 0.052, none, meanOf(none.map((cell) => shown(cell).value))),
    inEvery(
      '(c) false `shown` or `leaning` in every cell',
      'at-most',
      0.115,
      none,
      ofAnswered((found) => found.shownOrLeaning),
    ),
    inEvery(
      '(c) `alike` at a true ratio of exactly S, in every cell',
      'at-most',
      0.035,
      some,
      ofAnswered((found) => found.alike),
    ),
    overAll('(d) answered, all sets of (a)', 'at-least', 0.97, enough, answered / sets),
    inEvery('(d) answered in every cell of (a)', 'at-least', 0.65, enough, ({ found }) => share(found.answered, found.sets)),
    overAll(
      '(d) median width, of that of the plain t: median of the cells',
      'at-most',
      1.1,
      wide,
      medianOf(wide.map((cell) => widthRatio(cell).value)),
    ),
    inEvery('(d) median width, of that of the plain t: in every cell', 'at-most', 1.1, wide, widthRatio),
    overAll(
      '(d) power lost at ratios of 3 and 1/3: mean of the cells',
      'at-most',
      0.03,
      large,
      meanOf(large.map((cell) => powerLost(cell).value)),
    ),
    inEvery('(d) power lost at ratios of 3 and 1/3: in every cell', 'at-most', 0.03, large, powerLost),
  ]
}

/** Cells that do not clear a bar, and lie within two Monte Carlo standard errors of it. */
export const nearOf = ({ side, bar, cells }: Bar): readonly JudgedCell[] =>
  cells.filter(({ value, error }) => !clears(side, value, bar) && error > 0 && Math.abs(value - bar) <= 2 * error)

/** Cells of a bar that do not clear it; those of them that lie within two Monte Carlo standard errors of it. */
export function shortOf(bar: Bar): { readonly short: readonly JudgedCell[]; readonly near: number } {
  return { short: bar.cells.filter(({ value }) => !clears(bar.side, value, bar.bar)), near: nearOf(bar).length }
}
