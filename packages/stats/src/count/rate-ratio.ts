import { requireCount, requireOpenUnit, requirePositive } from '@thrum/model/ground'
import { betaQuantile } from '../distribution/beta.ts'
import type { Interval } from '../interval.ts'
import { binomialTwoSidedP } from '../proportion/binomial-test.ts'

/** A ratio of two rates. With one count of 0 the ratio is 0 or infinite and one limit is still finite. */
export type RateRatio =
  | { readonly kind: 'ratio'; readonly ratio: number; readonly limits: Interval; readonly p: number }
  | { readonly kind: 'nothing-counted' }

/** Two counts, each with its effort in one unit. */
export interface TwoCounts {
  readonly count1: number
  readonly effort1: number
  readonly count2: number
  readonly effort2: number
  /** Two-sided coverage, 0.95 unless said. */
  readonly level?: number
}

/** Checks the four numbers and gives the level asked. */
export function requireTwoCounts({ count1, effort1, count2, effort2, level = 0.95 }: TwoCounts): number {
  requireCount('count1', count1)
  requireCount('count2', count2)
  requirePositive('effort1', effort1)
  requirePositive('effort2', effort2)
  requireOpenUnit('level', level)
  return level
}

/** Rate 1 over rate 2; infinite when nothing was counted in the second. */
export function plainRateRatio({ count1, effort1, count2, effort2 }: TwoCounts): number {
  return count2 === 0 ? Number.POSITIVE_INFINITY : (count1 / count2) * (effort2 / effort1)
}

/**
 * Ratio of two Poisson rates, rate 1 over rate 2, by the exact conditional test.
 *
 * Given the sum, the first count is binomial. Limits are those of Clopper and Pearson carried over; the two-sided p adds the
 * probabilities no larger than the observed one. Counts that clump make both too sure: see `poissonDispersion`.
 *
 * @returns ratio, limits (0 and Infinity where a count is 0) and p of equal rates
 * @throws InputError ground/input/out-of-range
 * @source Przyborowski J. & Wilenski H. (1940) Biometrika 31, 313-323.
 * @check 41 in 28,010 against 15 in 19,017 gives 1.855759, 1.005684 to 3.609300, p 0.040852; 34 in 120 against 15 in 120 gives
 *   2.266667, 1.201904 to 4.478868, p 0.009399 (R 4.2.2 poisson.test)
 */
export function rateRatioExact(counts: TwoCounts): RateRatio {
  const level = requireTwoCounts(counts)
  const { count1, effort1, count2, effort2 } = counts
  const total = count1 + count2
  if (total === 0) return { kind: 'nothing-counted' }
  const beyond = (1 - level) / 2
  const swap = effort2 / effort1
  return {
    kind: 'ratio',
    ratio: plainRateRatio(counts),
    limits: {
      lower: count1 === 0 ? 0 : betaQuantile(beyond, count1, count2 + 1, 'lower').odds * swap,
      upper: count2 === 0 ? Number.POSITIVE_INFINITY : betaQuantile(beyond, count1 + 1, count2, 'upper').odds * swap,
    },
    p: binomialTwoSidedP(count1, total, effort1 / (effort1 + effort2)),
  }
}
