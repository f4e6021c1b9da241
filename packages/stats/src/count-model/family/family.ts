import { exp } from '../../elementary.ts'

/** What a family says of each row at linear predictor eta, in arrays of length n that are written over. */
export interface RowDerivatives {
  /** log p(y | eta). */
  readonly logDensity: Float64Array
  /** d log p / d eta. */
  readonly slope: Float64Array
  /** Observed weight: minus the second derivative of log p in eta. */
  readonly weight: Float64Array
  /** d weight / d eta. */
  readonly weightSlope: Float64Array
  /** d log p, d slope and d weight by the dispersion; 0 for a family without one. */
  readonly byDispersion: Float64Array
  readonly slopeByDispersion: Float64Array
  readonly weightByDispersion: Float64Array
}

export function rowDerivatives(n: number): RowDerivatives {
  const column = (): Float64Array => new Float64Array(n)
  return {
    logDensity: column(),
    slope: column(),
    weight: column(),
    weightSlope: column(),
    byDispersion: column(),
    slopeByDispersion: column(),
    weightByDispersion: column(),
  }
}

/** What is counted in each row; `trials` for shares only. */
export interface Response {
  readonly counts: Float64Array
  readonly trials: Float64Array | null
}

/** Families by the names that ecology gives them. */
export type FamilyName = 'poisson' | 'nb1' | 'nb2' | 'binomial' | 'beta-binomial'

export interface Family {
  readonly name: FamilyName
  readonly link: 'log' | 'logit'
  /**
   * True where a dispersion is estimated: alpha = 1 / theta of NB2 (variance mu + alpha mu^2), phi of NB1 (variance mu (1 + phi)),
   * 1 / (a + b) of the beta-binomial, whose shares scatter as Beta(a, b).
   */
  readonly isDispersed: boolean
  /** True where log p is strictly concave in eta for every count. */
  readonly isConcave: boolean
  /** What is worked out once for a response, and then for each predictor. */
  evaluator(response: Response): RowEvaluator
}

/**
 * How much is asked of each row: `step` fills slope and weight, all that a Newton step to the modes needs where log p is concave
 * (other families fill everything); `whole` fills every array.
 */
export type Extent = 'step' | 'whole'

/** Fills arrays for all rows. @param dispersion >= 0 */
export type RowEvaluator = (eta: Float64Array, dispersion: number, into: RowDerivatives, extent: Extent) => void

/** Beyond this the mean of a row overflows sums of squares; exp is held there [log of a count]. */
export const largestEta = 300

/** exp(eta), held where sums of squares would overflow. */
export const meanOf = (eta: number): number => exp(Math.min(eta, largestEta))
