import type { Objective } from './objective.ts'
import { inverseOf, quadratic, symmetrise } from './symmetric.ts'

/** Where a search ended. */
export interface Maximum {
  readonly at: Float64Array
  readonly value: number
  readonly gradient: Float64Array
  /** Half of what another Newton step promises, in units of the log likelihood. */
  readonly decrement: number
  readonly evaluations: number
  readonly isConverged: boolean
  /** Values reached, the start first. */
  readonly steps: readonly number[]
}

/** The search ends when another step promises less than this, in units of the log likelihood. */
const smallEnough = 1e-10
const mostRounds = 200
/** No coordinate moves further than this in one step. */
const longestStep = 2
const armijo = 1e-4
export interface SearchOptions {
  /** Metric of a search that ended near here, m by m: it saves the differences that a first one costs. */
  readonly metric?: Float64Array
  /** The search ends when another step promises less than this, in units of the log likelihood. */
  readonly enough?: number
}

/** Step of a difference of the gradient: its error and that of the gradient's rounding are both some 1e-5 of the whole, and the modes follow it in one step. */
const difference = 3e-6

/**
 * Minus the Hessian by forward differences of the gradient, made symmetric; null where it cannot be had.
 *
 * @param gradient at `at`
 */
export function curvatureAt(objective: Objective, at: Float64Array, gradient: Float64Array): Float64Array | null {
  const m = objective.parameters
  const matrix = new Float64Array(m * m)
  const place = at.slice()
  const moved = new Float64Array(m)
  for (let j = 0; j < m; j++) {
    const own = at[j] as number
    place[j] = own + difference * Math.max(1, Math.abs(own))
    // What was really added, for the sum is rounded.
    const width = (place[j] as number) - own
    const isKnown = Number.isFinite(objective.evaluate(place, moved))
    place[j] = own
    if (!isKnown) return null
    for (let i = 0; i < m; i++) matrix[i * m + j] = ((gradient[i] as number) - (moved[i] as number)) / width
  }
  symmetrise(matrix, m)
  return matrix
}

/** The first metric: inverse of a differenced Hessian, or its diagonal where that is not positive definite. */
function firstMetric(objective: Objective, at: Float64Array, gradient: Float64Array): Float64Array {
  const m = objective.parameters
  const matrix = curvatureAt(objective, at, gradient)
  const inverse = matrix === null ? null : inverseOf(matrix, m)
  if (inverse !== null) return inverse
  const diagonal = new Float64Array(m * m)
  for (let j = 0; j < m; j++) diagonal[j * m + j] = 1 / Math.max(1, Math.abs(matrix?.[j * m + j] ?? 1))
  return diagonal
}

/**
 * Climbs to a maximum by BFGS on the inverse Hessian, from a metric that knows the place.
 *
 * Stops on the Newton decrement, which does not hang on how covariates are scaled.
 */
export function maximise(
  objective: Objective,
  from: Float64Array,
  { metric: known, enough = smallEnough }: SearchOptions = {},
): Maximum {
  const m = objective.parameters
  const at = from.slice()
  const gradient = new Float64Array(m)
  let value = objective.evaluate(at, gradient)
  let evaluations = 1
  if (!Number.isFinite(value))
    return { at, value, gradient, decrement: Number.POSITIVE_INFINITY, evaluations, isConverged: false, steps: [value] }
  const steps = [value]
  let metric = known?.slice() ?? firstMetric(objective, at, gradient)
  if (known === undefined) evaluations += m
  let isFresh = known === undefined
  const direction = new Float64Array(m)
  const next = new Float64Array(m)
  const nextGradient = new Float64Array(m)
  const change = new Float64Array(m)
  const moved = new Float64Array(m)
  const turned = new Float64Array(m)
  let decrement = Number.POSITIVE_INFINITY
  for (let round = 0; round < mostRounds; round++) {
    decrement = quadratic(gradient, metric, gradient, m)
    if (Math.abs(decrement) < enough) return { at, value, gradient, decrement, evaluations, isConverged: true, steps }
    let longest = 0
    for (let i = 0; i < m; i++) {
      let sum = 0
      for (let j = 0; j < m; j++) sum += (metric[i * m + j] as number) * (gradient[j] as number)
      direction[i] = sum
      longest = Math.max(longest, Math.abs(sum))
    }
    let part = longest > longestStep ? longestStep / longest : 1
    const allowance = 1e-11 * Math.abs(value)
    let reached = Number.NEGATIVE_INFINITY
    let isUp = false
    for (let shrink = 0; shrink < 40; shrink++, part *= 0.4) {
      for (let i = 0; i < m; i++) next[i] = (at[i] as number) + part * (direction[i] as number)
      reached = objective.evaluate(next, nextGradient)
      evaluations++
      if (reached >= value + armijo * part * decrement - allowance) {
        isUp = true
        break
      }
    }
    if (!isUp) {
      // A metric that leads nowhere is made anew once; if that leads nowhere either, this is as far as the search comes.
      if (isFresh) return { at, value, gradient, decrement, evaluations, isConverged: false, steps }
      objective.evaluate(at, gradient)
      metric = firstMetric(objective, at, gradient)
      evaluations += m + 1
      isFresh = true
      continue
    }
    isFresh = false
    let along = 0
    for (let i = 0; i < m; i++) {
      moved[i] = (next[i] as number) - (at[i] as number)
      change[i] = (gradient[i] as number) - (nextGradient[i] as number)
      along += (moved[i] as number) * (change[i] as number)
    }
    if (along > 1e-14) {
      const size = quadratic(change, metric, change, m)
      for (let i = 0; i < m; i++) {
        let sum = 0
        for (let j = 0; j < m; j++) sum += (metric[i * m + j] as number) * (change[j] as number)
        turned[i] = sum
      }
      for (let i = 0; i < m; i++)
        for (let j = 0; j < m; j++)
          metric[i * m + j] =
            (metric[i * m + j] as number) +
            ((1 + size / along) * (moved[i] as number) * (moved[j] as number)) / along -
            ((turned[i] as number) * (moved[j] as number) + (moved[i] as number) * (turned[j] as number)) / along
    }
    at.set(next)
    gradient.set(nextGradient)
    value = reached
    steps.push(value)
  }
  return { at, value, gradient, decrement, evaluations, isConverged: false, steps }
}
