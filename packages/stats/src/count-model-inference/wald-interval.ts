import { InputError } from '@thrum/model/ground'
import type { Coefficients } from '../count-model/model.ts'
import { normalMultiplier } from '../distribution/normal.ts'
import { studentMultiplier } from '../distribution/student.ts'

export interface WaldInterval {
  readonly estimate: number
  readonly standardError: number
  readonly lower: number
  readonly upper: number
  readonly level: number
  /** Infinity for the normal law. */
  readonly df: number
}

/**
 * Interval of a sum of weights times coefficients: estimate -/+ multiplier times standard error, on the linear predictor.
 *
 * With few fields the normal multiplier is too small: give the degrees of freedom of the field-level contrast (methods 2.6).
 *
 * @param weights one for each column of the design as it came
 * @param df degrees of freedom of t; Infinity for the normal law
 * @throws InputError on another number of weights, or weight on an aliased column
 * @check salamanders, NB2, without mining: 2.263289, standard error 0.283810, normal law 1.707031 to 2.819547 (R 4.2.2, glmmTMB)
 */
export function waldInterval(fit: Coefficients, weights: ArrayLike<number>, df: number, level = 0.95): WaldInterval {
  const p = fit.coefficients.length
  if (weights.length !== p)
    throw new InputError('ground/input/lengths-differ', `${weights.length} weights; expected ${p}, one per column`)
  const aliased = fit.aliased.find(({ column }) => weights[column] !== 0)
  if (aliased !== undefined)
    throw new InputError('ground/input/out-of-range', `column ${aliased.column} is aliased and has no coefficient of its own`)
  let estimate = 0
  let variance = 0
  for (let j = 0; j < p; j++) {
    estimate += (weights[j] as number) * (fit.coefficients[j] as number)
    for (let k = 0; k < p; k++)
      variance += (weights[j] as number) * (fit.covariance[j * p + k] as number) * (weights[k] as number)
  }
  const standardError = Math.sqrt(Math.max(variance, 0))
  const multiplier = df === Number.POSITIVE_INFINITY ? normalMultiplier(level) : studentMultiplier(level, df)
  const half = multiplier * standardError
  return { estimate, standardError, lower: estimate - half, upper: estimate + half, level, df }
}
