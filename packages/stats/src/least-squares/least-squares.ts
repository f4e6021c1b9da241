import { InputError, requireFinite, requirePositive } from '@thrum/model/ground'
import { type AliasedColumn, aliasedColumns } from './aliased.ts'
import { type Factors, factorise, solveUpper } from './householder.ts'
import type { Matrix } from './matrix.ts'
import { norm, type ScaledColumns, scaleColumns } from './scaled-columns.ts'

/** Part of a column that must be left beside its predecessors for it to count. Methods 2.11 (the habit of R's lm). */
export const rankTolerance = 1e-7

/** What is asked: n rows, p columns, a response of length n. */
export interface LeastSquaresProblem {
  readonly design: Matrix
  readonly response: ArrayLike<number>
  readonly tolerance?: number
}

interface Estimated {
  /** Length p; an aliased column is left out of the fit, and its place holds 0. */
  readonly coefficients: Float64Array
  /** Unscaled covariance (X'X)^-1, p by p, row major; rows and columns of aliased columns hold 0. */
  readonly covariance: Float64Array
  readonly columns: number
  readonly rank: number
  readonly aliased: readonly AliasedColumn[]
}

/** A fit; `saturated` when no degree of freedom is left to tell scatter by. */
export type LeastSquaresFit =
  | (Estimated & {
      readonly kind: 'fitted'
      readonly df: number
      readonly residuals: Float64Array
      readonly residualSd: number
      /** True when the residuals are rounding only: the columns explain the response wholly. */
      readonly isExact: boolean
    })
  | (Estimated & { readonly kind: 'saturated'; readonly df: 0 })

/** Residuals below this part of the response are rounding. */
const dust = 1e-12

/**
 * Ordinary least squares by Householder QR, aliased columns set aside and explained.
 *
 * Columns may be badly scaled (day numbers beside shares): they are centred on a leading constant column and scaled first.
 *
 * @param problem `design` n by p, row major; `response` length n; `tolerance` 1e-7 unless said
 * @throws InputError on lengths that differ, a number that is not finite, no row
 * @source Golub G.H. (1965) Numer. Math. 7, 206-216.
 * @check z of methods 2.8 check 1 on intercept, block and level gives 0.789046, residual SD 0.156098, df 5 (R 4.2.2 lm)
 */
export function leastSquares({ design, response, tolerance = rankTolerance }: LeastSquaresProblem): LeastSquaresFit {
  requirePositive('tolerance', tolerance)
  const { rows: n, columns: p } = design
  if (response.length !== n) {
    throw new InputError('ground/input/lengths-differ', `response has ${response.length} entries; expected ${n}, one per row`)
  }
  if (n === 0) throw new InputError('ground/input/out-of-range', 'design has no row; expected at least 1')
  const y = Float64Array.from(response)
  for (const value of y) requireFinite('response', value)

  const scaled = scaleColumns(design)
  const factors = factorise(scaled.columns, tolerance)
  const turned = y.slice()
  factors.applyTransposed(turned)
  const inner = solveUpper(factors, turned)
  const back = backTransform(factors, scaled)
  const estimated: Estimated = {
    coefficients: spread(p, factors, inner, scaled),
    covariance: covarianceOf(p, factors, back),
    columns: p,
    rank: factors.rank,
    aliased: aliasedColumns(factors, scaled),
  }
  const df = n - factors.rank
  if (df === 0) return { kind: 'saturated', df: 0, ...estimated }
  turned.fill(0, 0, factors.rank)
  factors.apply(turned)
  const length = norm(turned)
  return {
    kind: 'fitted',
    df,
    residuals: turned,
    residualSd: length / Math.sqrt(df),
    isExact: length <= dust * norm(y),
    ...estimated,
  }
}

/** Coefficients on the columns as they came. */
function spread(p: number, factors: Factors, inner: Float64Array, { shift, scale }: ScaledColumns): Float64Array {
  const out = new Float64Array(p)
  inner.forEach((value, k) => {
    const j = factors.order[k] ?? 0
    const coefficient = value / (scale[j] ?? 1)
    out[j] = (out[j] ?? 0) + coefficient
    if (shift[j]) out[0] = (out[0] ?? 0) - coefficient * (shift[j] ?? 0)
  })
  return out
}

/** Rows of T R^-1, by column of the design, where T undoes scaling and centring. Row j dotted with row k is (X'X)^-1 at (j, k). */
function backTransform(factors: Factors, { shift, scale }: ScaledColumns): readonly Float64Array[] {
  const { rank } = factors
  const rowsOfInverse: Float64Array[] = Array.from({ length: rank }, () => new Float64Array(rank))
  for (let c = 0; c < rank; c++) {
    const unit = new Float64Array(rank)
    unit[c] = 1
    solveUpper(factors, unit).forEach((value, r) => {
      const row = rowsOfInverse[r]
      if (row) row[c] = value / (scale[factors.order[r] ?? 0] ?? 1)
    })
  }
  const intercept = rowsOfInverse[0]
  rowsOfInverse.forEach((row, r) => {
    const moved = shift[factors.order[r] ?? 0] ?? 0
    if (r > 0 && moved !== 0 && intercept)
      for (let c = 0; c < rank; c++) intercept[c] = (intercept[c] ?? 0) - moved * (row[c] ?? 0)
  })
  return rowsOfInverse
}

function covarianceOf(p: number, factors: Factors, back: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(p * p)
  back.forEach((left, r) => {
    back.forEach((right, s) => {
      let dot = 0
      for (let c = 0; c < factors.rank; c++) dot += (left[c] ?? 0) * (right[c] ?? 0)
      out[(factors.order[r] ?? 0) * p + (factors.order[s] ?? 0)] = dot
    })
  })
  return out
}
