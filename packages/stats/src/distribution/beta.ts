import { requireOpenUnit, requirePositive } from '@thrum/model/ground'
import { exp, log, log1p } from '../elementary.ts'
import { incompleteBeta, logBetaKernel } from './incomplete-beta.ts'
import { solveMonotone } from './solve-monotone.ts'
import type { Tail } from './tails.ts'

/** A point between 0 and 1 with its complement and its odds, none of them got by a subtraction that loses digits. */
export type UnitPoint = { readonly x: number; readonly complement: number; readonly odds: number }

/**
 * Quantile of the beta distribution: the point with probability `p` in the named tail.
 *
 * @param p above 0 and below 1
 * @param a above 0
 * @param b above 0
 * @param tail the tail that holds `p`; name the upper one rather than passing 1 - p
 * @throws InputError ground/input/out-of-range
 * @source Root of the distribution function in logit x, on the log of the smaller tail.
 * @check 0.025 with a = 34, b = 13 gives odds 1.431204 (Clopper-Pearson limit of 34 to 12)
 */
export function betaQuantile(p: number, a: number, b: number, tail: Tail = 'lower'): UnitPoint {
  requireOpenUnit('p', p)
  requirePositive('a', a)
  requirePositive('b', b)
  const isSmaller = p <= 0.5
  const side = isSmaller ? tail : tail === 'lower' ? 'upper' : 'lower'
  const target = log(isSmaller ? p : 1 - p)
  const at = (u: number) => {
    const { x, complement } = fromLogit(u)
    const mass = incompleteBeta(a, b, x, complement)[side]
    const direction = side === 'lower' ? 1 : -1
    if (mass === 0) return { value: Number.NEGATIVE_INFINITY, slope: direction }
    const density = x === 0 || complement === 0 ? mass : exp(logBetaKernel(a, b, x, complement)) * ((a * b) / (a + b))
    return { value: log(mass) - target, slope: (direction * density) / mass }
  }
  return fromLogit(solveMonotone({ at, start: log(a / b), reach: Math.sqrt(1 / a + 1 / b) }))
}

function fromLogit(u: number): UnitPoint {
  const odds = exp(u)
  const x = u < 0 ? odds / (1 + odds) : 1 / (1 + exp(-u))
  return { x, complement: u > 0 ? exp(-u) / (1 + exp(-u)) : 1 / (1 + odds), odds }
}

/** log of x / (1 - x). */
export function logit(x: number): number {
  return log(x) - log1p(-x)
}

/** The share whose log odds are u. */
export function inverseLogit(u: number): number {
  return fromLogit(u).x
}
