import { type Family, type Response, rowDerivatives } from './family.ts'
import { type Curvature, curvatureOf, type Intercepts } from './grouping.ts'
import { inflateZeros, zeroDerivatives } from './zero-inflation.ts'

/** A count model at hand: rows n, fixed columns p (each of length n), random intercepts. */
export interface LaplaceProblem {
  readonly family: Family
  readonly response: Response
  readonly columns: readonly Float64Array[]
  /** log effort, or 0; length n. */
  readonly offset: Float64Array
  readonly intercepts: Intercepts
  /** Columns of the chance of a zero of another origin (logit), each of length n; none where there is no such chance. */
  readonly zeros: readonly Float64Array[]
}

/**
 * The Laplace approximation of the marginal log likelihood, and its gradient.
 *
 * Parameters, in this order: p coefficients; a signed standard deviation for each grouping; where the family has a dispersion,
 * its signed root; coefficients of the chance of a zero. The likelihood is even in the signed ones, so that a variance of zero is an inner point.
 */
export interface Laplace {
  readonly parameters: number
  /** @returns log likelihood; -Infinity where it cannot be worked out. The gradient is written into `gradient` */
  evaluate(at: Float64Array, gradient: Float64Array | null): number
  /** Modes of the standardised random intercepts at the last evaluation. */
  modes(): Float64Array
  /** Starts the search for the modes from 0 again, so that no evaluation hangs on the one before. */
  reset(): void
}

/** A Newton step of the modes is held to this much of the linear predictor. */
const longestStep = 3
/** The modes are found when a step was below this: what is left is of the order of its square. */
const smallestStep = 1e-6
/** Where weights are held up the way to them is slower, and goes on until a step is below this. */
const smallestHeldStep = 1e-9
const mostSteps = 100
/** Part of the expected weight that a row without curvature of its own keeps while the modes are searched. */
const leastWeight = 1e-6

export function laplaceOf({ family, response, columns, offset, intercepts, zeros }: LaplaceProblem): Laplace {
  const n = offset.length
  const p = columns.length
  const { groupings, start, total: q } = intercepts
  const K = groupings.length
  const beside = p + K + (family.isDispersed ? 1 : 0)
  const parameters = beside + zeros.length
  const isInflated = zeros.length > 0
  const isConcave = family.isConcave && !isInflated
  const zeta = new Float64Array(isInflated ? n : 0)
  const byZeros = zeroDerivatives(isInflated ? n : 0)
  const fixed = new Float64Array(n)
  const eta = new Float64Array(n)
  const rows = rowDerivatives(n)
  const evaluator = family.evaluator(response)
  const sd = new Float64Array(K)
  const mode = new Float64Array(q)
  const step = new Float64Array(q)
  const trial = new Float64Array(q)
  const adjoint = new Float64Array(q)
  const held = new Float64Array(n)
  const leverage = new Float64Array(n)
  const traces = new Float64Array(K)
  const block = new Float64Array(K * K)
  const curvature: Curvature = curvatureOf(intercepts)

  const level = (k: number, i: number): number => (start[k] as number) + ((groupings[k]?.of[i] as number) ?? 0)

  /** eta = fixed + L Z v. */
  function predict(v: Float64Array): void {
    eta.set(fixed)
    for (let k = 0; k < K; k++) {
      const scale = sd[k] as number
      if (scale === 0) continue
      for (let i = 0; i < n; i++) eta[i] = (eta[i] as number) + scale * (v[level(k, i)] as number)
    }
  }

  function evaluateRows(dispersion: number): void {
    evaluator(eta, dispersion, rows)
    if (isInflated) inflateZeros(response, zeta, rows, byZeros)
  }

  /** f(v) = sum of log p - v'v / 2 at the rows as they stand. */
  function height(v: Float64Array): number {
    let sum = 0
    for (let i = 0; i < n; i++) sum += rows.logDensity[i] as number
    let square = 0
    for (let j = 0; j < q; j++) square += (v[j] as number) ** 2
    return sum - square / 2
  }

  /** L Z'd - v into `step`. */
  function scoreOfModes(v: Float64Array): void {
    for (let j = 0; j < q; j++) step[j] = -(v[j] as number)
    for (let k = 0; k < K; k++) {
      const scale = sd[k] as number
      for (let i = 0; i < n; i++) {
        const at = level(k, i)
        step[at] = (step[at] as number) + scale * (rows.slope[i] as number)
      }
    }
  }

  /** Weights for a step: a row whose own curvature is lost keeps a little, so that the step leads upwards. */
  function weightsForStep(): Float64Array {
    if (isConcave) return rows.weight
    for (let i = 0; i < n; i++) {
      const own = rows.weight[i] as number
      held[i] = Math.max(own, leastWeight)
    }
    return held
  }

  /** Newton's way to the modes. @returns f at the modes, or -Infinity */
  function findModes(dispersion: number): number {
    predict(mode)
    evaluateRows(dispersion)
    let value = height(mode)
    if (q === 0) return value
    for (let round = 0; round < mostSteps; round++) {
      if (!Number.isFinite(value)) return Number.NEGATIVE_INFINITY
      if (!curvature.assemble(sd, weightsForStep())) return Number.NEGATIVE_INFINITY
      scoreOfModes(mode)
      curvature.solve(step)
      let longest = 0
      for (let k = 0; k < K; k++)
        for (let j = 0; j < (groupings[k]?.levels ?? 0); j++)
          longest = Math.max(
            longest,
            Math.abs((step[(start[k] as number) + j] as number) * Math.max(Math.abs(sd[k] as number), 1e-3)),
          )
      let part = longest > longestStep ? longestStep / longest : 1
      let next = Number.NEGATIVE_INFINITY
      for (let halving = 0; halving < 30; halving++, part /= 2) {
        for (let j = 0; j < q; j++) trial[j] = (mode[j] as number) + part * (step[j] as number)
        predict(trial)
        evaluateRows(dispersion)
        next = height(trial)
        if (next >= value - 1e-12 * Math.abs(value)) break
      }
      mode.set(trial)
      value = next
      let largest = 0
      for (let j = 0; j < q; j++) largest = Math.max(largest, Math.abs(part * (step[j] as number)))
      if (largest < (isConcave ? smallestStep : smallestHeldStep)) return value
    }
    return Number.NEGATIVE_INFINITY
  }

  /** Behind the others, for the levers and the adjoint as they stand. */
  function gradientOfZeros(gradient: Float64Array): void {
    for (let i = 0; i < n; i++) {
      let back = 0
      for (let k = 0; k < K; k++) back += (sd[k] as number) * (adjoint[level(k, i)] as number)
      const own =
        (byZeros.byZeros[i] as number) -
        ((leverage[i] as number) * (byZeros.weightByZeros[i] as number) + back * (byZeros.slopeByZeros[i] as number)) / 2
      for (let j = 0; j < zeros.length; j++)
        gradient[beside + j] = (gradient[beside + j] as number) + own * ((zeros[j] as Float64Array)[i] as number)
    }
  }

  function gradientInto(gradient: Float64Array, root: number): void {
    traces.fill(0)
    adjoint.fill(0)
    for (let i = 0; i < n; i++) {
      leverage[i] = 0
      if (q === 0) continue
      curvature.inverseAt(i, block)
      const w = rows.weight[i] as number
      let own = 0
      for (let k = 0; k < K; k++) {
        let along = 0
        for (let l = 0; l < K; l++) along += (sd[l] as number) * (block[k * K + l] as number)
        traces[k] = (traces[k] as number) + 2 * w * along
        own += (sd[k] as number) * along
      }
      leverage[i] = own
      const pull = (rows.weightSlope[i] as number) * own
      for (let k = 0; k < K; k++) {
        const at = level(k, i)
        adjoint[at] = (adjoint[at] as number) + pull * (sd[k] as number)
      }
    }
    if (q > 0) curvature.solve(adjoint)
    gradient.fill(0)
    for (let k = 0; k < K; k++) gradient[p + k] = -(traces[k] as number) / 2
    let byDispersion = 0
    for (let i = 0; i < n; i++) {
      let back = 0
      for (let k = 0; k < K; k++) back += (sd[k] as number) * (adjoint[level(k, i)] as number)
      const h = leverage[i] as number
      const s = (rows.slope[i] as number) - (h * (rows.weightSlope[i] as number) - back * (rows.weight[i] as number)) / 2
      for (let j = 0; j < p; j++) gradient[j] = (gradient[j] as number) + s * ((columns[j] as Float64Array)[i] as number)
      for (let k = 0; k < K; k++) {
        const at = level(k, i)
        gradient[p + k] =
          (gradient[p + k] as number) + s * (mode[at] as number) - ((adjoint[at] as number) * (rows.slope[i] as number)) / 2
      }
      if (family.isDispersed) {
        byDispersion +=
          (rows.byDispersion[i] as number) -
          (h * (rows.weightByDispersion[i] as number) + back * (rows.slopeByDispersion[i] as number)) / 2
      }
    }
    if (family.isDispersed) gradient[p + K] = 2 * root * byDispersion
    if (isInflated) gradientOfZeros(gradient)
  }

  return {
    parameters,
    modes: () => mode.slice(),
    reset: () => void mode.fill(0),
    evaluate: (at, gradient) => {
      fixed.set(offset)
      for (let j = 0; j < p; j++) {
        const beta = at[j] as number
        const column = columns[j] as Float64Array
        for (let i = 0; i < n; i++) fixed[i] = (fixed[i] as number) + beta * (column[i] as number)
      }
      for (let k = 0; k < K; k++) sd[k] = at[p + k] as number
      const root = family.isDispersed ? (at[p + K] as number) : 0
      if (isInflated) {
        zeta.fill(0)
        for (let j = 0; j < zeros.length; j++)
          for (let i = 0; i < n; i++)
            zeta[i] = (zeta[i] as number) + (at[beside + j] as number) * ((zeros[j] as Float64Array)[i] as number)
      }
      const value = findModes(root * root)
      if (!Number.isFinite(value)) {
        mode.fill(0)
        return Number.NEGATIVE_INFINITY
      }
      if (q > 0 && !curvature.assemble(sd, rows.weight)) return Number.NEGATIVE_INFINITY
      if (gradient !== null) gradientInto(gradient, root)
      return q === 0 ? value : value - curvature.logDeterminant() / 2
    },
  }
}
