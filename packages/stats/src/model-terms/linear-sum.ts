import { InputError, requireFinite, requireOpenUnit } from '@thrum/model/ground'
import type { Coefficients } from '../count-model/model.ts'
import { type Law, multiplierOf } from '../distribution/law.ts'
import type { Interval } from '../interval.ts'
import { columnsLost } from '../least-squares/aliased.ts'
import type { TermDesign } from './design.ts'
import { offsetOf, responseOf, type Scale } from './scale.ts'

/** Coefficients of a design with their covariance (p by p, row major), from whatever fit. */
export type Estimates = Pick<Coefficients, 'coefficients' | 'covariance' | 'aliased'>

/** How estimates are told: on which scale, held against which law, with which two-sided coverage (0.95 unless said). */
export interface Telling {
  readonly scale: Scale
  readonly law: Law
  readonly level?: number
}

/** An estimate of the linear predictor (offset in it), and the same as a mean. */
export interface ToldEstimate {
  readonly predictor: number
  readonly se: number
  readonly limits: Interval
  readonly mean: number
  readonly meanLimits: Interval
}

/** Names of design columns that the fit set aside, and that cannot be told from others. */
export interface NotEstimable {
  readonly kind: 'not-estimable'
  readonly aliased: readonly string[]
}

/** An estimate without a standard error: the terms of its variance are none, or cancel to rounding. */
export interface NoScatter {
  readonly kind: 'no-scatter'
  readonly predictor: number
  readonly mean: number
}

export type LinearSum =
  | { readonly kind: 'sum'; readonly estimate: number; readonly se: number }
  | { readonly kind: 'no-scatter'; readonly estimate: number }
  | NotEstimable

/** Of a variance this small beside the terms it is summed from fewer than five digits are left. */
const dust = 1e-11
/** Below 0 by more than this part of its terms a variance is no rounding. */
const belowZero = 1e-9

/** @throws InputError on estimates that are not those of this design, a number that is not finite */
export function requireEstimates({ names }: TermDesign, { coefficients, covariance }: Estimates): void {
  const p = names.length
  if (coefficients.length !== p || covariance.length !== p * p) {
    const found = `${coefficients.length} coefficients and ${covariance.length} covariances`
    throw new InputError('ground/input/lengths-differ', `${found}; expected ${p} and ${p} by ${p}, as the design has columns`)
  }
  for (const value of coefficients) requireFinite('coefficients', value)
  for (const value of covariance) requireFinite('covariance', value)
}

/**
 * w'b and its standard error, or the aliased columns it hangs on.
 *
 * @param weights w, one for each design column
 * @throws InputError on another length, a covariance that is none, numbers too large to add
 * @source A sum is estimable where it gives an aliased column the weight that its equal has: Searle S.R. (1971) Linear Models, 5.4. From memory.
 */
export function linearSum(
  { names }: TermDesign,
  { coefficients, covariance, aliased }: Estimates,
  weights: Float64Array,
): LinearSum {
  const p = names.length
  if (weights.length !== p)
    throw new InputError(
      'ground/input/lengths-differ',
      `a row has ${weights.length} entries; expected ${p}, one per design column`,
    )
  for (const weight of weights) requireFinite('row', weight)
  const lost = columnsLost(aliased, weights)
  if (lost.length > 0) return { kind: 'not-estimable', aliased: lost.map((column) => names[column] ?? '') }

  let estimate = 0
  let variance = 0
  let size = 0
  for (let j = 0; j < p; j++) {
    estimate += (weights[j] as number) * (coefficients[j] as number)
    for (let k = 0; k < p; k++) {
      const term = (weights[j] as number) * (weights[k] as number) * (covariance[j * p + k] as number)
      variance += term
      size += Math.abs(term)
    }
  }
  requireFinite('estimate', estimate)
  requireFinite('variance', size)
  if (variance < -belowZero * size)
    throw new InputError(
      'ground/input/out-of-range',
      `covariance gives a sum of coefficients the variance ${variance}; expected none below 0`,
    )
  return variance > dust * size ? { kind: 'sum', estimate, se: Math.sqrt(variance) } : { kind: 'no-scatter', estimate }
}

/** What is said of a sum of coefficients on both scales, given the kind it has where all is well. */
export type Told<K extends string> = (ToldEstimate & { readonly kind: K }) | NoScatter | NotEstimable

/** Tells sums of coefficients. @throws InputError on a level, df, effort or variance out of range */
export function tellerOf<K extends string>(kind: K, { scale, law, level = 0.95 }: Telling): (sum: LinearSum) => Told<K> {
  requireOpenUnit('level', level)
  const offset = offsetOf(scale)
  const response = responseOf(scale)
  const multiplier = multiplierOf(law, level)
  return (sum) => {
    if (sum.kind === 'not-estimable') return sum
    const predictor = sum.estimate + offset
    const mean = response(predictor)
    if (sum.kind === 'no-scatter') return { kind: 'no-scatter', predictor, mean }
    const reach = multiplier * sum.se
    const limits = { lower: predictor - reach, upper: predictor + reach }
    const meanLimits = { lower: response(limits.lower), upper: response(limits.upper) }
    return { kind, predictor, se: sum.se, limits, mean, meanLimits }
  }
}
