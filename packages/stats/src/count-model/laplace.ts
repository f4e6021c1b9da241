import { type Curvature, curvatureOf } from './effects/curvature.ts'
import type { LoadParameter, Loads, Slot } from './effects/effects.ts'
import { modeFinder } from './modes.ts'
import type { Objective } from './objective.ts'
import { type RowModel, type RowProblem, rowModelOf } from './row-model.ts'

/** An approximation of the marginal log likelihood, with the modes of the random effects. */
export interface MarginalLikelihood extends Objective {
  /** Modes of the standard normal random effects at the last evaluation. */
  modes(): Float64Array
  /** Linear predictor of each row at those modes. */
  predictor(): Float64Array
}

/** The Laplace approximation, and what a finer one needs of it. */
export interface Laplace extends MarginalLikelihood {
  readonly rowModel: RowModel
}

/**
 * The Laplace approximation of the marginal log likelihood, and its gradient; parameters as in `RowModel`. The likelihood is even in the
 * signed parameters of random effects and dispersion, so that a variance of zero is an inner point.
 *
 * @source Skaug H.J., Fournier D.A. (2006) Comput. Stat. Data Anal. 51, 699-709. The gradient: implicit differentiation through the
 *   modes in adjoint form, one solve for all parameters
 */
export function laplaceOf(problem: RowProblem): Laplace {
  const { effects, columns, offset, zeros, family } = problem
  const { slots, parameters: loadParameters, total: q } = effects
  const n = offset.length
  const p = columns.length
  const R = slots.length
  const T = loadParameters.length
  const rowModel = rowModelOf(problem)
  const { rows, byZeros, loads } = rowModel
  const adjoint = new Float64Array(q)
  const leverage = new Float64Array(n)
  const back = new Float64Array(n)
  const scores = {
    byPredictor: new Float64Array(n),
    byDispersion: new Float64Array(family.isDispersed ? n : 0),
    byZeros: new Float64Array(zeros.length > 0 ? n : 0),
  }
  const along = slots.map(() => new Float64Array(n))
  const curvature: Curvature = curvatureOf(effects)
  const finder = modeFinder({ effects, curvature, rowModel })
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

  /** d value / d of each row's predictors: what the row says itself, and what it does to the determinant. */
  function fillScores(): void {
    const { byPredictor, byDispersion, byZeros: byZeroPredictor } = scores
    for (let i = 0; i < n; i++)
      byPredictor[i] =
        (rows.slope[i] as number) -
        ((leverage[i] as number) * (rows.weightSlope[i] as number) - (back[i] as number) * (rows.weight[i] as number)) / 2
    for (let i = 0; i < byDispersion.length; i++) {
      const levers = (leverage[i] as number) * (rows.weightByDispersion[i] as number)
      byDispersion[i] =
        (rows.byDispersion[i] as number) - (levers + (back[i] as number) * (rows.slopeByDispersion[i] as number)) / 2
    }
    for (let i = 0; i < byZeroPredictor.length; i++) {
      const levers = (leverage[i] as number) * (byZeros.weightByZeros[i] as number)
      byZeroPredictor[i] =
        (byZeros.byZeros[i] as number) - (levers + (back[i] as number) * (byZeros.slopeByZeros[i] as number)) / 2
    }
  }

  /** Part of the gradient by one parameter of the loads. */
  function byLoad({ slot, basis }: LoadParameter): number {
    const { of, start } = slots[slot] as Slot
    const own = along[slot] as Float64Array
    let sum = 0
    for (let i = 0; i < n; i++) {
      const at = start + (of[i] as number)
      const part =
        (scores.byPredictor[i] as number) * (mode[at] as number) -
        (rows.weight[i] as number) * (own[i] as number) -
        ((adjoint[at] as number) * (rows.slope[i] as number)) / 2
      sum += basis === null ? part : part * (basis[i] as number)
    }
    return sum
  }

  return {
    parameters: rowModel.parameters,
    rowModel,
    modes: () => mode.slice(),
    predictor: () => finder.eta.slice(),
    reset: () => void mode.fill(0),
    evaluate: (at, gradient) => {
      rowModel.takeIn(at)
      const value = finder.find()
      if (!Number.isFinite(value)) {
        mode.fill(0)
        return Number.NEGATIVE_INFINITY
      }
      if (q > 0 && !curvature.assemble(loads, rows.weight)) return Number.NEGATIVE_INFINITY
      if (gradient !== null) {
        leversAndAdjoint()
        fillScores()
        gradient.fill(0)
        rowModel.addScores(gradient, scores)
        for (let t = 0; t < T; t++) gradient[p + t] = byLoad(loadParameters[t] as LoadParameter)
      }
      return q === 0 ? value : value - curvature.logDeterminant() / 2
    },
  }
}
