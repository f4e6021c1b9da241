import { requireOpenUnit, requirePositive } from '@thrum/model/ground'
import { exp, log } from '../elementary.ts'
import { incompleteGamma, logGammaKernel } from './incomplete-gamma.ts'
import { logGammaOnePlus } from './log-gamma.ts'
import { normalQuantile } from './normal.ts'
import { solveMonotone } from './solve-monotone.ts'
import type { Tail } from './tails.ts'

/**
 * Quantile of the gamma distribution with scale 1: the x with probability `p` in the named tail.
 *
 * @param p above 0 and below 1
 * @param shape above 0
 * @param tail the tail that holds `p`; name the upper one rather than passing 1 - p
 * @throws InputError ground/input/out-of-range
 * @source Root of the distribution function in log x, on the log of the smaller tail; started by Wilson & Hilferty (1931) PNAS 17, 684-688.
 * @check half of `chiSquareQuantile`, which has the printed values
 */
export function gammaQuantile(p: number, shape: number, tail: Tail = 'lower'): number {
  requireOpenUnit('p', p)
  requirePositive('shape', shape)
  // The tail that is solved for is the smaller one, so that its log tells the place.
  const isSmaller = p <= 0.5
  const side = isSmaller ? tail : tail === 'lower' ? 'upper' : 'lower'
  const target = log(isSmaller ? p : 1 - p)
  const at = (u: number) => {
    const x = exp(u)
    const mass = incompleteGamma(shape, x)[side]
    const slope = mass === 0 ? 1 : (shape * exp(logGammaKernel(shape, x))) / mass
    const value = mass === 0 ? Number.NEGATIVE_INFINITY : log(mass) - target
    return { value, slope: side === 'lower' ? slope : -slope }
  }
  const z = normalQuantile(p) * (tail === 'lower' ? 1 : -1)
  const cube = 1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape))
  const smallStart = ((tail === 'lower' ? log(p) : log(1 - p)) + logGammaOnePlus(shape)) / shape
  const start = cube > 0.2 ? log(shape) + 3 * log(cube) : smallStart
  return exp(solveMonotone({ at, start, reach: 0.5 }))
}
