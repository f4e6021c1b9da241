import { InputError, requireOpenUnit, requirePositive } from '@thrum/model/ground'
import { exp, log } from '../elementary.ts'
import { incompleteBeta, logBetaKernel } from './incomplete-beta.ts'
import { solveMonotone } from './solve-monotone.ts'
import type { Tails } from './tails.ts'

/** Mass of |T| on either side of |t|. */
function sides(t: number, df: number): { readonly within: number; readonly beyond: number } {
  const square = t * t
  if (square === Number.POSITIVE_INFINITY) {
    // t^2 overflows long before its tail does: beyond, the tail is its leading power.
    return t === Number.POSITIVE_INFINITY ? { within: 1, beyond: 0 } : { within: 1, beyond: exp(logFarTail(log(t), df)) }
  }
  const tails = incompleteBeta(df / 2, 0.5, df / (df + square), square / (df + square))
  return { within: tails.upper, beyond: tails.lower }
}

/** log P(|T| > t) for a t so large that df / t^2 is below every rounding. */
function logFarTail(logT: number, df: number): number {
  const a = df / 2
  // I_x(a, 1/2) is x^a / (a B(a, 1/2)) with x = df / t^2; the kernel at y = 1 is taken apart to keep the power in logs.
  const logKernelAtHalf = logBetaKernel(a, 0.5, 0.5, 0.5) + (a + 0.5) * log(2)
  return logKernelAtHalf - log(2 * a + 1) + a * (log(df) - 2 * logT)
}

/**
 * Both tails of Student's t.
 *
 * @param t any number; infinite ends are allowed
 * @param df degrees of freedom, above 0
 * @throws InputError ground/input/out-of-range
 * @source Abramowitz & Stegun (1964) 26.7.1 and 26.5.27.
 * @check upper tail at 1 with 1 df is 0.25; at 12.706204736432095 with 1 df 0.025
 */
export function studentTails(t: number, df: number): Tails {
  requirePositive('df', df)
  if (Number.isNaN(t)) throw new InputError('ground/input/out-of-range', 't is NaN; expected a number')
  const { within, beyond } = sides(Math.abs(t), df)
  const near = 0.5 + within / 2
  return t >= 0 ? { lower: near, upper: beyond / 2 } : { lower: beyond / 2, upper: near }
}

/** Two-sided p value of a t statistic. An infinite t gives 0. */
export function studentTwoSidedP(t: number, df: number): number {
  requirePositive('df', df)
  if (Number.isNaN(t)) throw new InputError('ground/input/out-of-range', 't is NaN; expected a number')
  return sides(Math.abs(t), df).beyond
}

/** t > 0 with P(|T| > t) = beyond. Solved in log t, where both tails of a power law are straight. */
function twoSidedQuantile(beyond: number, df: number): number {
  if (beyond === 1) return 0
  const solveWithin = beyond > 0.5
  const target = log(solveWithin ? 1 - beyond : beyond)
  const at = (u: number) => {
    const t = exp(u)
    const { within, beyond: outside } = sides(t, df)
    const mass = solveWithin ? within : outside
    const direction = solveWithin ? 1 : -1
    if (mass === 0) return { value: Number.NEGATIVE_INFINITY, slope: direction }
    // Density of u = log t for |T|: 2 t f(t), with f from the beta kernel.
    const square = t * t
    const x = df / (df + square)
    const y = square / (df + square)
    const density = square === Number.POSITIVE_INFINITY || x === 0 ? df * outside : 2 * betaDensity(df / 2, x, y)
    return { value: log(mass) - target, slope: (direction * density) / mass }
  }
  return exp(solveMonotone({ at, start: solveWithin ? log(1 - beyond) : -log(beyond) / Math.max(df, 2), reach: 0.5 }))
}

/** x y times the density of Beta(a, 1/2): the density of |T| per unit of log t is twice this. */
function betaDensity(a: number, x: number, y: number): number {
  return exp(logBetaKernel(a, 0.5, x, y)) * ((a * 0.5) / (a + 0.5))
}

/**
 * Quantile of Student's t.
 *
 * @param p probability below the quantile, above 0 and below 1
 * @param df above 0
 * @throws InputError ground/input/out-of-range
 * @source Root of the distribution function, solved in log |t|.
 * @check 0.975 with 1, 2, 5 df gives 12.706204736, 4.302652730, 2.570581836
 */
export function studentQuantile(p: number, df: number): number {
  requireOpenUnit('p', p)
  requirePositive('df', df)
  return p < 0.5 ? -twoSidedQuantile(2 * p, df) : twoSidedQuantile(2 * (1 - p), df)
}

/** A cache and nothing else: whoever leaves out one visit after another asks for the same few multipliers thousands of times. */
const keptMultipliers = new Map<number, Map<number, number>>()
/** Degrees of freedom, and levels of each, that are kept. */
const mostKept = 32

/** The multiplier t of a two-sided interval: `level` of the mass lies within -t and t. */
export function studentMultiplier(level: number, df: number): number {
  requireOpenUnit('level', level)
  requirePositive('df', df)
  let byLevel = keptMultipliers.get(df)
  if (byLevel === undefined) {
    if (keptMultipliers.size >= mostKept) keptMultipliers.clear()
    byLevel = new Map()
    keptMultipliers.set(df, byLevel)
  }
  const kept = byLevel.get(level)
  if (kept !== undefined) return kept
  const found = twoSidedQuantile(1 - level, df)
  if (byLevel.size >= mostKept) byLevel.clear()
  byLevel.set(level, found)
  return found
}
