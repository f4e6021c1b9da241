import { InputError, requirePositive } from '@thrum/model/ground'
import { gammaQuantile } from './gamma.ts'
import { incompleteGamma } from './incomplete-gamma.ts'
import type { Tail, Tails } from './tails.ts'

/**
 * Both tails of the chi-square distribution.
 *
 * @param x at least 0
 * @param df degrees of freedom, above 0
 * @throws InputError ground/input/out-of-range
 * @source Abramowitz & Stegun (1964) 26.4.19.
 * @check upper tail at 3.841458820694124 with 1 df is 0.05
 */
export function chiSquareTails(x: number, df: number): Tails {
  requirePositive('df', df)
  if (!(x >= 0)) throw new InputError('ground/input/out-of-range', `x is ${x}; expected a number of at least 0`)
  return incompleteGamma(df / 2, x / 2)
}

/**
 * Quantile of the chi-square distribution: the x with probability `p` in the named tail.
 *
 * @throws InputError ground/input/out-of-range
 * @source See `gammaQuantile`.
 * @check 0.025 with 10 df gives 3.246973; 0.975 with 12 df gives 23.336664
 */
export function chiSquareQuantile(p: number, df: number, tail: Tail = 'lower'): number {
  requirePositive('df', df)
  return 2 * gammaQuantile(p, df / 2, tail)
}
