import { InputError, requireOpenUnit } from '@thrum/model/ground'
import { studentMultiplier, studentTwoSidedP } from '../distribution/student.ts'
import type { Interval } from '../interval.ts'
import { columnsLost } from './aliased.ts'
import type { LeastSquaresFit } from './least-squares.ts'

/** A sum of coefficients with its limits, or why it has none. */
export type ContrastInterval =
  | {
      readonly kind: 'contrast'
      readonly estimate: number
      readonly se: number
      readonly df: number
      readonly t: number
      readonly p: number
      readonly limits: Interval
    }
  /** The kept columns cannot tell it: an aliased column has a part in it. */
  | { readonly kind: 'not-estimable'; readonly aliased: readonly number[] }
  | { readonly kind: 'no-freedom' }
  /** The columns explain the response wholly: there is an estimate and no scatter to judge it by. */
  | { readonly kind: 'no-scatter'; readonly estimate: number }

/**
 * Estimate of c'b with t limits at any level.
 *
 * @param fit a fit of p columns
 * @param weights c, length p
 * @param level two-sided coverage, above 0 and below 1 [1]
 * @throws InputError ground/input/lengths-differ, ground/input/out-of-range
 * @source Student's t for a linear function of least-squares coefficients: Scheffe H. (1959) The Analysis of Variance, 2.3.
 * @check level of methods 2.8 check 1: 0.789046, se 0.110378, t 7.148566, p 0.000832 (R 4.2.2 lm)
 */
export function contrastInterval(fit: LeastSquaresFit, weights: readonly number[], level = 0.95): ContrastInterval {
  requireOpenUnit('level', level)
  const { columns: p } = fit
  if (weights.length !== p)
    throw new InputError('ground/input/lengths-differ', `weights has ${weights.length} entries; expected ${p}`)

  const aliased = columnsLost(fit.aliased, weights)
  if (aliased.length > 0) return { kind: 'not-estimable', aliased }
  if (fit.kind === 'saturated') return { kind: 'no-freedom' }

  let estimate = 0
  let variance = 0
  for (let j = 0; j < p; j++) {
    estimate += (weights[j] ?? 0) * (fit.coefficients[j] ?? 0)
    for (let k = 0; k < p; k++) variance += (weights[j] ?? 0) * (weights[k] ?? 0) * (fit.covariance[j * p + k] ?? 0)
  }
  const se = fit.residualSd * Math.sqrt(Math.max(0, variance))
  if (fit.isExact || se === 0) return { kind: 'no-scatter', estimate }
  const t = estimate / se
  const reach = studentMultiplier(level, fit.df) * se
  const limits = { lower: estimate - reach, upper: estimate + reach }
  return { kind: 'contrast', estimate, se, df: fit.df, t, p: studentTwoSidedP(t, fit.df), limits }
}
