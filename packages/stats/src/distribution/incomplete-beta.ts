import { InputError, requirePositive } from '@thrum/model/ground'
import { exp, log } from '../elementary.ts'
import { halfDeviance, halfLogTwoPi, stirlingError } from './log-gamma.ts'
import type { Tails } from './tails.ts'

const maxSteps = 10_000_000
/** Once successive values differ by no more than their own rounding, the fraction has settled. */
const settled = 2e-15

/**
 * log of x^a y^b gamma(a + b + 1) / (gamma(a + 1) gamma(b + 1)) with y = 1 - x: for whole a and b the log of the
 * binomial probability of a successes in a + b. Saddle-point form, so large arguments keep their digits.
 *
 * @source Loader C. (2000) Fast and accurate computation of binomial probabilities (note, Bell Labs).
 */
export function logBetaKernel(a: number, b: number, x: number, y: number): number {
  const n = a + b
  const missed = stirlingError(n) - stirlingError(a) - stirlingError(b)
  return missed - halfDeviance(a, n * x) - halfDeviance(b, n * y) - halfLogTwoPi + 0.5 * (log(n) - log(a) - log(b))
}

/**
 * The continued fraction F with I_x(a, b) = x^a y^b / B(a, b) * F, good for x below about a / (a + b).
 *
 * @source Didonato A.R. & Morris A.H. (1992) ACM Trans. Math. Softw. 18, 360-373, equation 9.
 */
function fraction(a: number, b: number, x: number, y: number): number {
  const tiny = 1e-300
  // a y - b x is a - (a + b) x, in the form that keeps its digits when y is small.
  const lambda = a * y - b * x
  const beta = (n: number): number =>
    n + (n * (b - n) * x) / (a + 2 * n - 1) + ((a + n) * (lambda + 1 + n * (1 + y))) / (a + 2 * n + 1)
  let value = (a * (lambda + 1)) / (a + 1)
  if (value === 0) value = tiny
  let c = value
  let d = 0
  for (let n = 1; n < maxSteps; n++) {
    const m = a + 2 * n - 1
    const alpha = (((a + n - 1) * (a + b + n - 1)) / m / m) * n * (b - n) * x * x
    const next = beta(n)
    d = next + alpha * d
    if (d === 0) d = tiny
    c = next + alpha / c
    if (c === 0) c = tiny
    d = 1 / d
    const factor = c * d
    value *= factor
    if (Math.abs(factor - 1) < settled) return 1 / value
  }
  throw new InputError('stats/incomplete-beta/no-end', `the fraction for ${a}, ${b} at ${x} did not settle`)
}

/**
 * Regularised incomplete beta function, both tails: lower I_x(a, b) and upper 1 - I_x(a, b).
 *
 * @param a above 0
 * @param b above 0
 * @param x from 0 to 1
 * @param y 1 - x, given apart by a caller who knows it better than the subtraction does
 * @returns tails that keep their relative accuracy (about 1e-13) however small they are
 * @throws InputError ground/input/out-of-range
 * @source Didonato & Morris (1992), as in `fraction`; prefactor after Loader (2000).
 * @check I_0.5(2, 3) is 11/16 = 0.6875
 */
export function incompleteBeta(a: number, b: number, x: number, y = 1 - x): Tails {
  requirePositive('a', a)
  requirePositive('b', b)
  if (!(x >= 0 && y >= 0 && Math.abs(x + y - 1) < 1e-12)) {
    throw new InputError(
      'ground/input/out-of-range',
      `x is ${x} and its complement ${y}; expected two numbers from 0 to 1 that add to 1`,
    )
  }
  if (x === 0) return { lower: 0, upper: 1 }
  if (y === 0) return { lower: 1, upper: 0 }
  const front = exp(logBetaKernel(a, b, x, y)) * ((a * b) / (a + b))
  if (a * y >= b * x) {
    const lower = Math.min(1, front * fraction(a, b, x, y))
    return { lower, upper: 1 - lower }
  }
  const upper = Math.min(1, front * fraction(b, a, y, x))
  return { lower: 1 - upper, upper }
}
