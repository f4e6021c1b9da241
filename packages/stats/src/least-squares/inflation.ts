import { InputError, requireFinite } from '@thrum/model/ground'
import { pow } from '../elementary.ts'
import { factorise } from './householder.ts'
import { rankTolerance } from './least-squares.ts'
import { matrixOfColumns } from './matrix.ts'
import { norm, scaleColumns } from './scaled-columns.ts'

/** Residuals below this part of a column are rounding: enough for day numbers near 20,000 that differ by a minute. */
const dust = 1e-12

/** Columns of one length, one entry per row (unit, cell or count). */
export type Columns = readonly ArrayLike<number>[]

/**
 * What is left of a column after least squares on others, without adding an intercept.
 *
 * @param column length n
 * @param others any number of columns of length n; put a column of ones first for an intercept
 * @throws InputError ground/input/lengths-differ, ground/input/out-of-range
 * @source Frisch R. & Waugh F.V. (1933) Econometrica 1, 387-401.
 * @check 1, 2, 4 after a column of ones is -4/3, -1/3, 5/3
 */
export function residualsAfter(column: ArrayLike<number>, others: Columns, tolerance = rankTolerance): Float64Array {
  const out = Float64Array.from(column)
  for (const value of out) requireFinite('column', value)
  const factors = factorise(scaleColumns(matrixOfColumns(out.length, others)).columns, tolerance)
  // Where an intercept leads, only differences matter, and those of near numbers are exact.
  const [lead] = others
  const origin = out[0] ?? 0
  if (lead !== undefined && isConstant(lead)) for (let i = 0; i < out.length; i++) out[i] = (out[i] ?? 0) - origin
  // Twice: the first pass leaves rounding in proportion to the column, the second in proportion to what is left of it.
  for (let pass = 0; pass < 2; pass++) {
    factors.applyTransposed(out)
    out.fill(0, 0, factors.rank)
    factors.apply(out)
  }
  return out
}

function isConstant(column: ArrayLike<number>): boolean {
  const first = column[0] ?? 0
  for (let i = 1; i < column.length; i++) if (column[i] !== first) return false
  return first !== 0
}

/**
 * Range (greatest less least) of a column's residuals after others; 0 when only rounding is left.
 *
 * @throws InputError as `residualsAfter`
 * @check 2, 4, 10, 13 after blocks of two is 3
 */
export function residualRange(column: ArrayLike<number>, others: Columns): number {
  const left = residualsAfter(column, others)
  if (left.length === 0 || norm(left) <= dust * norm(column)) return 0
  return left.reduce((a, b) => Math.max(a, b)) - left.reduce((a, b) => Math.min(a, b))
}

/** A design X0, one of its columns, and columns that might be tangled with it. */
export interface InflationProblem {
  /** Columns of X0: intercept, blocks or fields, the contrast. */
  readonly base: Columns
  /** Which column of `base` is the contrast. */
  readonly contrast: number
  /** Columns added in X1. */
  readonly nuisance: Columns
  /** Part of the contrast that must be left for it to count as told apart, 1e-7 unless said. */
  readonly tolerance?: number
}

/**
 * Partial R2 of a contrast column on nuisance columns, the other columns of the base kept in both.
 *
 * @returns from 0 to 1; 1 when the contrast is lost, in X1 or already in X0
 * @throws InputError ground/input/out-of-range, ground/input/lengths-differ
 * @source Frisch & Waugh (1933), as above.
 * @check arm 0, 0, 0, 0, 1, 1, 1, 1, date 2, 4, 5, 7, 6, 8, 9, 11: 0.551724 (R 4.2.2)
 */
export function partialR2(problem: InflationProblem): number {
  const growth = inflation(problem)
  return growth === Number.POSITIVE_INFINITY ? 1 : 1 - 1 / growth
}

/**
 * How much the variance of a contrast grows when nuisance columns enter: [(X1'X1)^-1]cc / [(X0'X0)^-1]cc = 1 / (1 - partial R2).
 *
 * @returns at least 1; Infinity when the contrast cannot be told apart from the nuisance (or, already, from the other base columns)
 * @throws InputError ground/input/out-of-range, ground/input/lengths-differ
 * @source Marquardt D.W. (1970) Technometrics 12, 591-612, for one column; ratio of two designs ours (methods 2.11).
 * @check arm 0, 0, 0, 0, 1, 1, 1, 1, date 2, 4, 5, 7, 6, 8, 9, 11: 2.230769; date 1, 2, 3, 4, 8, 9, 10, 11: 10.8 (R 4.2.2)
 */
export function inflation({ base, contrast, nuisance, tolerance = rankTolerance }: InflationProblem): number {
  const column = base[contrast]
  if (column === undefined)
    throw new InputError(
      'ground/input/out-of-range',
      `contrast is ${contrast}; expected a column of base, 0 to ${base.length - 1}`,
    )
  const kept = base.filter((_, j) => j !== contrast)
  const left0 = residualsAfter(column, kept, tolerance)
  const length0 = norm(left0)
  if (length0 <= tolerance * sizeOf(column)) return Number.POSITIVE_INFINITY
  // From the residuals on, not from the column: two near numbers are then never subtracted.
  const length1 = norm(residualsAfter(left0, [...kept, ...nuisance], tolerance))
  if (length1 <= tolerance * length0) return Number.POSITIVE_INFINITY
  return Math.max(1, (length0 / length1) ** 2)
}

/** Length of a column about its mean, or as it is when it is constant: what a part of it is a part of. */
function sizeOf(column: ArrayLike<number>): number {
  const whole = norm(column)
  const centred = norm(residualsAfter(column, [new Float64Array(column.length).fill(1)]))
  return centred > dust * whole ? centred : whole
}

/** A term of a design: the columns that stand for one variable (a factor of k levels has k - 1). */
export interface TermInflation {
  readonly term: number
  readonly df: number
  /** Generalised variance inflation; the plain VIF when df is 1. Infinity when the others determine a column. */
  readonly gvif: number
  /** Comparable across df: GVIF^(1/(2 df)) squared, to be held against the cuts for a plain VIF. */
  readonly perFreedom: number
}

/**
 * Variance inflation of every term of a design beside all others; an intercept is understood.
 *
 * @param terms each a list of columns of length n
 * @throws InputError ground/input/lengths-differ, ground/input/out-of-range
 * @source Fox J. & Monette G. (1992) J. Am. Stat. Assoc. 87, 178-183.
 * @check 1..8; 1.1, 1.9, 3.2, 3.9, 5.1, 6.2, 6.8, 8.1; 2, 1, 2, 1, 2, 1, 2, 1 give 266.8068, 266.1924, 1.0564 (R 4.2.2)
 */
export function varianceInflation(terms: readonly Columns[]): readonly TermInflation[] {
  const rows = terms[0]?.[0]?.length ?? 0
  const ones = new Float64Array(rows).fill(1)
  return terms.map((columns, term) => {
    const others = terms.flatMap((other, k) => (k === term ? [] : other))
    let df = 0
    let gvif = 1
    columns.forEach((column, j) => {
      const own = columns.slice(0, j)
      const left = norm(residualsAfter(column, [ones, ...own]))
      // A column that its own term already holds adds neither freedom nor inflation.
      if (left <= rankTolerance * sizeOf(column)) return
      df += 1
      gvif *= inflation({ base: [ones, ...own, column], contrast: own.length + 1, nuisance: others })
    })
    return { term, df, gvif, perFreedom: df === 0 ? 1 : pow(gvif, 1 / df) }
  })
}
