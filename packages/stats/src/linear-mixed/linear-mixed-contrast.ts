import { InputError, requirePositive } from '@thrum/model/ground'
import { type ContrastInterval, contrastInterval } from '../least-squares/contrast-interval.ts'
import type { LinearMixedFitted } from './model.ts'

/**
 * Estimate of c'b of a linear mixed model with t limits at any level, for degrees of freedom that the caller knows.
 *
 * Such as fields less levels for what whole fields were given. The fit does not guess them: no rule serves all designs, and with few
 * groups the wrong one finds too much.
 *
 * @param weights c, length p
 * @param df degrees of freedom, above 0
 * @param level two-sided coverage, above 0 and below 1 [1]
 * @returns `not-estimable` where an aliased column has a part in it
 * @throws InputError ground/input/lengths-differ, ground/input/out-of-range
 * @source Wald's t, from memory
 * @check sleepstudy, restricted, correlated slopes: days 10.467286, se 1.545789; with 17 df limits 7.20596 to 13.72862 (R 4.2.2)
 */
export function linearMixedContrast(
  fit: LinearMixedFitted,
  weights: readonly number[],
  df: number,
  level = 0.95,
): ContrastInterval {
  requirePositive('df', df)
  const { coefficients, covariance, aliased } = fit
  const p = coefficients.length
  if (weights.length !== p)
    throw new InputError('ground/input/lengths-differ', `weights has ${weights.length} entries; expected ${p}`)
  // The covariance holds the residual variance already.
  const asLeastSquares = { kind: 'fitted', residualSd: 1, isExact: false, residuals: new Float64Array(0) } as const
  return contrastInterval(
    { ...asLeastSquares, df, coefficients, covariance, aliased, columns: p, rank: p - aliased.length },
    weights,
    level,
  )
}
