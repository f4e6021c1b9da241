import { exp, log } from '../elementary.ts'
import { gaussHermite } from '../quadrature/gauss-hermite.ts'
import type { Effects } from './effects/effects.ts'
import type { Laplace, MarginalLikelihood } from './laplace.ts'

/**
 * The marginal log likelihood by adaptive Gauss-Hermite quadrature, for one grouping with intercepts: nodes lie about the mode of each level, as
 * far apart as its curvature says.
 *
 * The gradient is the mean of the rows' scores over what the nodes say of each level's intercept: that of the integral itself, and of the sum as
 * far as the sum is the integral.
 *
 * @source Liu Q., Pierce D.A. (1994) Biometrika 81, 624-629; Pinheiro J.C., Bates D.M. (1995) J. Comput. Graph. Stat. 4, 12-35 (from memory)
 * @check one node is the Laplace approximation
 */
export function quadratureOf(effects: Effects, laplace: Laplace, count: number): MarginalLikelihood {
  const { rowModel } = laplace
  const { rows, byZeros, fixed, loads, parameters } = rowModel
  const { nodes, logWeights } = gaussHermite(count)
  const n = fixed.length
  const [slot] = effects.slots
  const of = slot?.of ?? new Int32Array(n)
  const levels = slot?.levels ?? 0
  const eta = new Float64Array(n)
  const spread = new Float64Array(levels)
  const heights = new Float64Array(levels * count)
  const scores = { byPredictor: new Float64Array(n), byDispersion: new Float64Array(n), byZeros: new Float64Array(n) }

  const effectAt = (mode: Float64Array, j: number, m: number): number =>
    (mode[j] as number) + Math.SQRT2 * (spread[j] as number) * (nodes[m] as number)

  function evaluateNode(mode: Float64Array, m: number): void {
    const load = loads[0] as number
    for (let i = 0; i < n; i++) eta[i] = (fixed[i] as number) + load * effectAt(mode, of[i] as number, m)
    rowModel.evaluate(eta, 'whole')
  }

  /** log of each level's integral; `heights` then hold what each node has of it, as parts of 1. */
  function integrate(mode: Float64Array): number {
    for (let m = 0; m < count; m++) {
      evaluateNode(mode, m)
      for (let j = 0; j < levels; j++) {
        const v = effectAt(mode, j, m)
        heights[j * count + m] = (logWeights[m] as number) + (nodes[m] as number) ** 2 - (v * v) / 2
      }
      for (let i = 0; i < n; i++) {
        const at = (of[i] as number) * count + m
        heights[at] = (heights[at] as number) + (rows.logDensity[i] as number)
      }
    }
    let total = 0
    for (let j = 0; j < levels; j++) {
      let highest = Number.NEGATIVE_INFINITY
      for (let m = 0; m < count; m++) highest = Math.max(highest, heights[j * count + m] as number)
      let sum = 0
      for (let m = 0; m < count; m++) {
        const part = exp((heights[j * count + m] as number) - highest)
        heights[j * count + m] = part
        sum += part
      }
      for (let m = 0; m < count; m++) heights[j * count + m] = (heights[j * count + m] as number) / sum
      total += highest + log(sum) + log(spread[j] as number) - log(Math.PI) / 2
    }
    return total
  }

  function fillGradient(mode: Float64Array, gradient: Float64Array, deviationAt: number): void {
    scores.byPredictor.fill(0)
    scores.byDispersion.fill(0)
    scores.byZeros.fill(0)
    let byDeviation = 0
    for (let m = 0; m < count; m++) {
      evaluateNode(mode, m)
      for (let i = 0; i < n; i++) {
        const j = of[i] as number
        const part = heights[j * count + m] as number
        const own = part * (rows.slope[i] as number)
        scores.byPredictor[i] = (scores.byPredictor[i] as number) + own
        scores.byDispersion[i] = (scores.byDispersion[i] as number) + part * (rows.byDispersion[i] as number)
        byDeviation += own * effectAt(mode, j, m)
      }
      for (let i = 0; i < byZeros.byZeros.length; i++) {
        const part = heights[(of[i] as number) * count + m] as number
        scores.byZeros[i] = (scores.byZeros[i] as number) + part * (byZeros.byZeros[i] as number)
      }
    }
    gradient.fill(0)
    rowModel.addScores(gradient, scores)
    gradient[deviationAt] = byDeviation
  }

  return {
    parameters,
    modes: () => laplace.modes(),
    predictor: () => laplace.predictor(),
    reset: () => laplace.reset(),
    evaluate: (at, gradient) => {
      if (!Number.isFinite(laplace.evaluate(at, null))) return Number.NEGATIVE_INFINITY
      const mode = laplace.modes()
      const scale = (loads[0] as number) ** 2
      spread.fill(0)
      for (let i = 0; i < n; i++) spread[of[i] as number] = (spread[of[i] as number] as number) + (rows.weight[i] as number)
      for (let j = 0; j < levels; j++) spread[j] = 1 / Math.sqrt(1 + scale * (spread[j] as number))
      const value = integrate(mode)
      if (gradient !== null) fillGradient(mode, gradient, rowModel.firstLoad)
      return Number.isFinite(value) ? value : Number.NEGATIVE_INFINITY
    },
  }
}
