import { type Curvature, curvatureOf } from './effects/curvature.ts'
import { type Effects, fillLoads, type LoadParameter, type Loads, type Slot } from './effects/effects.ts'
import { type Extent, type Family, type Response, rowDerivatives } from './family/family.ts'
import { inflateZeros, zeroDerivatives } from './family/zero-inflation.ts'
import { modeFinder } from './modes.ts'
import type { Objective } from './objective.ts'

/** A count model at hand: rows n, fixed columns p (each of length n), random effects. */
export interface LaplaceProblem {
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
 * The Laplace approximation of the marginal log likelihood, and its gradient.
 *
 * Parameters, in this order: p coefficients; the signed parameters of the random effects; where the family has a dispersion, its signed
 * root; coefficients of the chance of a zero. The likelihood is even in the signed ones, so that a variance of zero is an inner point.
 */
export interface Laplace extends Objective {
  /** Modes of the standard normal random effects at the last evaluation. */
  modes(): Float64Array
  /** Linear predictor of each row at those modes. */
  predictor(): Float64Array
}

export function laplaceOf({ family, response, columns, offset, effects, zeros }: LaplaceProblem): Laplace {
  const n = offset.length
  const p = columns.length
  const { slots, parameters: loadParameters, total: q } = effects
  const R = slots.length
  const T = loadParameters.length
  const beside = p + T + (family.isDispersed ? 1 : 0)
  const isInflated = zeros.length > 0
  const zeta = new Float64Array(isInflated ? n : 0)
  const byZeros = zeroDerivatives(isInflated ? n : 0)
  const fixed = new Float64Array(n)
  const rows = rowDerivatives(n)
  const evaluator = family.evaluator(response)
  const loads: Loads = slots.map(() => 0)
  const adjoint = new Float64Array(q)
  const leverage = new Float64Array(n)
  const back = new Float64Array(n)
  const score = new Float64Array(n)
  const along = slots.map(() => new Float64Array(n))
  const curvature: Curvature = curvatureOf(effects)
  const finder = modeFinder({
    effects,
    curvature,
    rows,
    fixed,
    loads,
    isConcave: family.isConcave && !isInflated,
    evaluateRows: (eta, dispersion, extent: Extent) => {
      evaluator(eta, dispersion, rows, isInflated ? 'whole' : extent)
      if (isInflated) inflateZeros(response, zeta, rows, byZeros)
    },
  })
  const { mode } = finder

  /** into = L x for a vector of effects. */
  function spread(x: Float64Array, into: Float64Array): void {
    into.fill(0)
    for (let s = 0; s < R; s++) {
      const { of, start } = slots[s] as Slot
      const load = loads[s] as Loads[number]
      if (typeof load === 'number')
        for (let i = 0; i < n; i++) into[i] = (into[i] as number) + load * (x[start + (of[i] as number)] as number)
      else
        for (let i = 0; i < n; i++) into[i] = (into[i] as number) + (load[i] as number) * (x[start + (of[i] as number)] as number)
    }
  }

  /** h_i = l_i' H^-1 l_i, and the adjoint a of H a = d log det H / d v. */
  function leversAndAdjoint(): void {
    leverage.fill(0)
    back.fill(0)
    adjoint.fill(0)
    if (q === 0) return
    curvature.fillAlong(loads, along)
    for (let s = 0; s < R; s++) {
      const load = loads[s] as Loads[number]
      const own = along[s] as Float64Array
      if (typeof load === 'number') for (let i = 0; i < n; i++) leverage[i] = (leverage[i] as number) + load * (own[i] as number)
      else for (let i = 0; i < n; i++) leverage[i] = (leverage[i] as number) + (load[i] as number) * (own[i] as number)
    }
    for (let s = 0; s < R; s++) {
      const { of, start } = slots[s] as Slot
      const load = loads[s] as Loads[number]
      for (let i = 0; i < n; i++) {
        const at = start + (of[i] as number)
        const pull = (rows.weightSlope[i] as number) * (leverage[i] as number)
        adjoint[at] = (adjoint[at] as number) + pull * (typeof load === 'number' ? load : (load[i] as number))
      }
    }
    curvature.solve(adjoint)
    spread(adjoint, back)
  }

  /** Part of the gradient by one parameter of the loads, where s_i is the score of each row. */
  function byLoad({ slot, basis }: LoadParameter): number {
    const { of, start } = slots[slot] as Slot
    const own = along[slot] as Float64Array
    let sum = 0
    for (let i = 0; i < n; i++) {
      const at = start + (of[i] as number)
      const part =
        (score[i] as number) * (mode[at] as number) -
        (rows.weight[i] as number) * (own[i] as number) -
        ((adjoint[at] as number) * (rows.slope[i] as number)) / 2
      sum += basis === null ? part : part * (basis[i] as number)
    }
    return sum
  }

  function gradientInto(gradient: Float64Array, root: number): void {
    leversAndAdjoint()
    for (let i = 0; i < n; i++)
      score[i] =
        (rows.slope[i] as number) -
        ((leverage[i] as number) * (rows.weightSlope[i] as number) - (back[i] as number) * (rows.weight[i] as number)) / 2
    for (let j = 0; j < p; j++) {
      const column = columns[j] as Float64Array
      let sum = 0
      for (let i = 0; i < n; i++) sum += (score[i] as number) * (column[i] as number)
      gradient[j] = sum
    }
    for (let t = 0; t < T; t++) gradient[p + t] = byLoad(loadParameters[t] as LoadParameter)
    if (family.isDispersed) {
      let sum = 0
      for (let i = 0; i < n; i++)
        sum +=
          (rows.byDispersion[i] as number) -
          ((leverage[i] as number) * (rows.weightByDispersion[i] as number) +
            (back[i] as number) * (rows.slopeByDispersion[i] as number)) /
            2
      gradient[p + T] = 2 * root * sum
    }
    for (let j = 0; j < zeros.length; j++) {
      const column = zeros[j] as Float64Array
      let sum = 0
      for (let i = 0; i < n; i++) {
        const levers = (leverage[i] as number) * (byZeros.weightByZeros[i] as number)
        const pulls = (back[i] as number) * (byZeros.slopeByZeros[i] as number)
        sum += ((byZeros.byZeros[i] as number) - (levers + pulls) / 2) * (column[i] as number)
      }
      gradient[beside + j] = sum
    }
  }

  /** into = `start`, or 0, plus columns times parameters from place `from` on. */
  function combine(
    into: Float64Array,
    start: Float64Array | null,
    of: readonly Float64Array[],
    at: Float64Array,
    from: number,
  ): void {
    if (start === null) into.fill(0)
    else into.set(start)
    for (let j = 0; j < of.length; j++) {
      const weight = at[from + j] as number
      const column = of[j] as Float64Array
      for (let i = 0; i < n; i++) into[i] = (into[i] as number) + weight * (column[i] as number)
    }
  }

  return {
    parameters: beside + zeros.length,
    modes: () => mode.slice(),
    predictor: () => finder.eta.slice(),
    reset: () => void mode.fill(0),
    evaluate: (at, gradient) => {
      combine(fixed, offset, columns, at, 0)
      fillLoads(effects, at, p, n, loads)
      const root = family.isDispersed ? (at[p + T] as number) : 0
      if (isInflated) combine(zeta, null, zeros, at, beside)
      const value = finder.find(root * root)
      if (!Number.isFinite(value)) {
        mode.fill(0)
        return Number.NEGATIVE_INFINITY
      }
      if (q > 0 && !curvature.assemble(loads, rows.weight)) return Number.NEGATIVE_INFINITY
      if (gradient !== null) gradientInto(gradient, root)
      return q === 0 ? value : value - curvature.logDeterminant() / 2
    },
  }
}
