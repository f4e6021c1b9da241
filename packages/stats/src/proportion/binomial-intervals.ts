import { InputError, requireCount, requireOpenUnit } from '@thrum/model/ground'
import { betaQuantile } from '../distribution/beta.ts'
import { chiSquareQuantile } from '../distribution/chi-square.ts'
import { normalMultiplier } from '../distribution/normal.ts'
import type { Interval } from '../interval.ts'

/** On the proportion scale: 0 <= lower <= estimate <= upper <= 1. */
export type ProportionInterval = Interval & { readonly estimate: number }

function check(successes: number, trials: number, level: number): void {
  requireCount('trials', trials, { min: 1 })
  requireCount('successes', successes, { min: 0, max: trials })
  requireOpenUnit('level', level)
}

/**
 * Wilson score interval for a binomial proportion, without continuity correction.
 *
 * For a share of a known whole, such as tagged flowers that set fruit. Trials must be independent: flowers on one branch are
 * not, so for clustered trials use `shareOfSums`.
 *
 * @param successes whole number from 0 to `trials` [count]
 * @param trials whole number, at least 1 [count]
 * @param level two-sided coverage, above 0 and below 1 [1]
 * @throws InputError ground/input/out-of-range, naming the argument and the value found
 * @source Wilson E.B. (1927) J. Am. Stat. Assoc. 22, 209-212.
 * @check 81 of 263 at 0.95 gives 0.2553 to 0.3662 (R 4.2.2 prop.test without correction)
 */
export function wilsonInterval(successes: number, trials: number, level = 0.95): ProportionInterval {
  check(successes, trials, level)
  const z = normalMultiplier(level)
  const estimate = successes / trials
  const pull = (z * z) / trials
  const centre = (estimate + pull / 2) / (1 + pull)
  const spread = (estimate * (1 - estimate) + pull / 4) / trials
  const halfWidth = (z * Math.sqrt(spread)) / (1 + pull)
  // At the ends the two terms cancel on paper but leave dust in floating point.
  return {
    estimate,
    lower: successes === 0 ? 0 : centre - halfWidth,
    upper: successes === trials ? 1 : centre + halfWidth,
  }
}

/**
 * Exact interval for a binomial proportion: never covers less often than it says.
 *
 * @throws InputError ground/input/out-of-range
 * @source Clopper C.J. & Pearson E.S. (1934) Biometrika 26, 404-413.
 * @check 34 of 46 gives odds 1.431204 to 6.009254 (R 4.2.2 binom.test)
 */
export function clopperPearsonInterval(successes: number, trials: number, level = 0.95): ProportionInterval {
  check(successes, trials, level)
  const beyond = (1 - level) / 2
  return {
    estimate: successes / trials,
    lower: successes === 0 ? 0 : betaQuantile(beyond, successes, trials - successes + 1).x,
    upper: successes === trials ? 1 : betaQuantile(beyond, successes + 1, trials - successes, 'upper').x,
  }
}

/**
 * Odds of success to failure with the exact limits of Clopper and Pearson carried over. No failure: infinite odds.
 *
 * @throws InputError ground/input/out-of-range
 * @source Clopper & Pearson (1934), mapped by p / (1 - p).
 * @check 34 to 12 gives 2.833333, 1.431204 to 6.009254 (R 4.2.2 binom.test)
 */
export function oddsExact(successes: number, failures: number, level = 0.95): Interval & { readonly estimate: number } {
  requireCount('failures', failures)
  check(successes, successes + failures, level)
  const beyond = (1 - level) / 2
  return {
    estimate: successes / failures,
    lower: successes === 0 ? 0 : betaQuantile(beyond, successes, failures + 1).odds,
    upper: failures === 0 ? Number.POSITIVE_INFINITY : betaQuantile(beyond, successes + 1, failures, 'upper').odds,
  }
}

/**
 * Simultaneous intervals for the shares of several classes in one sample of independent trials.
 *
 * @param counts one per class, at least two classes and one trial [count]
 * @param level coverage of all intervals together, above 0 and below 1 [1]
 * @returns one interval per class, in order
 * @throws InputError ground/input/out-of-range
 * @source Goodman L.A. (1965) Technometrics 7, 247-254.
 * @check 56, 25, 14, 5 gives 0.436138 to 0.676816, 0.158728 to 0.370633, 0.074439 to 0.247841, 0.017369 to 0.135480 (R 4.2.2)
 */
export function goodmanIntervals(counts: readonly number[], level = 0.95): readonly ProportionInterval[] {
  requireOpenUnit('level', level)
  if (counts.length < 2)
    throw new InputError('ground/input/out-of-range', `counts has ${counts.length} classes; expected at least 2`)
  for (const count of counts) requireCount('counts', count)
  const n = counts.reduce((total, count) => total + count, 0)
  requireCount('the sum of counts', n, { min: 1 })
  const cut = chiSquareQuantile((1 - level) / counts.length, 1, 'upper')
  return counts.map((count) => {
    const root = Math.sqrt(cut * (cut + (4 * count * (n - count)) / n))
    return {
      estimate: count / n,
      lower: count === 0 ? 0 : (cut + 2 * count - root) / (2 * (n + cut)),
      upper: count === n ? 1 : (cut + 2 * count + root) / (2 * (n + cut)),
    }
  })
}
