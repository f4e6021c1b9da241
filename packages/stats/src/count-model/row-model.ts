import { type Effects, fillLoads, type Loads } from './effects/effects.ts'
import { type Extent, type Family, type Response, type RowDerivatives, rowDerivatives } from './family/family.ts'
import { inflateZeros, type ZeroDerivatives, zeroDerivatives } from './family/zero-inflation.ts'

/** A count model at hand: rows n, fixed columns p (each of length n), random effects. */
export interface RowProblem {
  readonly family: Family
  readonly response: Response
  readonly columns: readonly Float64Array[]
  /** log effort, or 0; length n. */
  readonly offset: Float64Array
  readonly effects: Effects
  /** Columns of the chance of a zero of another origin (logit), each of length n; none where there is no such chance. */
  readonly zeros: readonly Float64Array[]
}

/**
 * What the parameters make of each row, for any linear predictor.
 *
 * Parameters, in this order: p coefficients; the signed parameters of the random effects; where the family has a dispersion, its signed
 * root; coefficients of the chance of a zero.
 */
export interface RowModel {
  readonly parameters: number
  /** Where the parameters of the random effects begin. */
  readonly firstLoad: number
  /** True where log p is concave in the linear predictor for all parameters. */
  readonly isConcave: boolean
  /** Linear predictor without random effects, and loads, at the parameters taken in last. */
  readonly fixed: Float64Array
  readonly loads: Loads
  readonly rows: RowDerivatives
  readonly byZeros: ZeroDerivatives
  takeIn(at: Float64Array): void
  /** Fills `rows`, and `byZeros`, at a linear predictor. */
  evaluate(eta: Float64Array, extent: Extent): void
  /** Adds row scores times what they stand before: coefficients, dispersion, zeros. Loads are the caller's. */
  addScores(gradient: Float64Array, scores: RowScores): void
}

/** d value / d of each row's linear predictor, dispersion and zero predictor, length n each; the last two unread where there is none. */
export interface RowScores {
  readonly byPredictor: Float64Array
  readonly byDispersion: Float64Array
  readonly byZeros: Float64Array
}

export function rowModelOf({ family, response, columns, offset, effects, zeros }: RowProblem): RowModel {
  const n = offset.length
  const p = columns.length
  const T = effects.parameters.length
  const beside = p + T + (family.isDispersed ? 1 : 0)
  const isInflated = zeros.length > 0
  const zeta = new Float64Array(isInflated ? n : 0)
  const byZeros = zeroDerivatives(isInflated ? n : 0)
  const fixed = new Float64Array(n)
  const rows = rowDerivatives(n)
  const loads: Loads = effects.slots.map(() => 0)
  const evaluator = family.evaluator(response)
  let root = 0

  /** into += columns times parameters from place `from` on. */
  function combine(into: Float64Array, of: readonly Float64Array[], at: Float64Array, from: number): void {
    for (let j = 0; j < of.length; j++) {
      const weight = at[from + j] as number
      const column = of[j] as Float64Array
      for (let i = 0; i < n; i++) into[i] = (into[i] as number) + weight * (column[i] as number)
    }
  }

  /** gradient += columns' score, from place `from` on. */
  function project(gradient: Float64Array, of: readonly Float64Array[], score: Float64Array, from: number): void {
    for (let j = 0; j < of.length; j++) {
      const column = of[j] as Float64Array
      let sum = 0
      for (let i = 0; i < n; i++) sum += (score[i] as number) * (column[i] as number)
      gradient[from + j] = (gradient[from + j] as number) + sum
    }
  }

  return {
    parameters: beside + zeros.length,
    firstLoad: p,
    isConcave: family.isConcave && !isInflated,
    fixed,
    loads,
    rows,
    byZeros,
    takeIn: (at) => {
      fixed.set(offset)
      combine(fixed, columns, at, 0)
      fillLoads(effects, at, p, n, loads)
      root = family.isDispersed ? (at[p + T] as number) : 0
      zeta.fill(0)
      if (isInflated) combine(zeta, zeros, at, beside)
    },
    evaluate: (eta, extent) => {
      evaluator(eta, root * root, rows, isInflated ? 'whole' : extent)
      if (isInflated) inflateZeros(response, zeta, rows, byZeros)
    },
    addScores: (gradient, scores) => {
      project(gradient, columns, scores.byPredictor, 0)
      if (family.isDispersed) {
        let sum = 0
        for (let i = 0; i < n; i++) sum += scores.byDispersion[i] as number
        gradient[p + T] = (gradient[p + T] as number) + 2 * root * sum
      }
      if (isInflated) project(gradient, zeros, scores.byZeros, beside)
    },
  }
}
