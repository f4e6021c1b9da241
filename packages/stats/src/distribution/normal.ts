import { InputError, requireOpenUnit } from '@thrum/model/ground'
import { exp, log } from '../elementary.ts'
import { incompleteGamma } from './incomplete-gamma.ts'
import { halfLogTwoPi } from './log-gamma.ts'
import { solveMonotone } from './solve-monotone.ts'
import type { Tails } from './tails.ts'

/**
 * Both tails of the standard normal distribution.
 *
 * @param z any number; infinite ends are allowed
 * @throws InputError ground/input/out-of-range when z is not a number
 * @source Abramowitz & Stegun (1964) 26.2.30: the normal tail is half an incomplete gamma function of shape 1/2 at z^2 / 2.
 * @check lower tail at 1.959963984540054 is 0.975
 */
export function normalTails(z: number): Tails {
  if (Number.isNaN(z)) throw new InputError('ground/input/out-of-range', 'z is NaN; expected a number')
  const both = incompleteGamma(0.5, (z * z) / 2)
  const near = 0.5 + both.lower / 2
  return z >= 0 ? { lower: near, upper: both.upper / 2 } : { lower: both.upper / 2, upper: near }
}

/** Distribution function of the standard normal. */
export function normalCdf(z: number): number {
  return normalTails(z).lower
}

/** z > 0 that leaves `tail` (above 0, at most 1/2) above it. */
function upperNormalQuantile(tail: number): number {
  if (tail === 0.5) return 0
  if (tail > 0.25) {
    // Near the middle the mass on either side of 0 is solved for: it is almost straight in z.
    const mass = 0.5 - tail
    const at = (z: number) => ({
      value: incompleteGamma(0.5, (z * z) / 2).lower / 2 - mass,
      slope: exp((-z * z) / 2 - halfLogTwoPi),
    })
    return solveMonotone({ at: (z) => (z <= 0 ? { value: -mass, slope: 1 } : at(z)), start: mass * 2.5, reach: 0.5 })
  }
  const target = log(tail)
  const at = (z: number) => {
    const upper = normalTails(z).upper
    return upper === 0
      ? { value: Number.NEGATIVE_INFINITY, slope: -1 }
      : { value: log(upper) - target, slope: -exp((-z * z) / 2 - halfLogTwoPi) / upper }
  }
  return solveMonotone({ at, start: Math.sqrt(-2 * target) * 0.8, reach: 0.5 })
}

/**
 * Quantile of the standard normal distribution.
 *
 * @param p probability below the quantile, above 0 and below 1
 * @throws InputError ground/input/out-of-range
 * @source Root of the distribution function, solved on the log of the smaller tail.
 * @check 0.975 gives 1.959963984540054
 */
export function normalQuantile(p: number): number {
  requireOpenUnit('p', p)
  return p < 0.5 ? -upperNormalQuantile(p) : upperNormalQuantile(1 - p)
}

/** The multiplier z of a two-sided interval: `level` of the mass lies within -z and z. */
export function normalMultiplier(level: number): number {
  requireOpenUnit('level', level)
  return upperNormalQuantile((1 - level) / 2)
}
