import { InputError, requireCount, requireOpenUnit, requireSameLength } from '@thrum/model/ground'
import { chiSquareQuantile } from '../distribution/chi-square.ts'
import type { Interval } from '../interval.ts'

/**
 * Exact interval for the mean of a Poisson count.
 *
 * For one group in one set of counts that scatter as Poisson counts do. Divide both limits by the effort for a rate.
 * Counts of several fields scatter more: use `ratioOfSums`.
 *
 * @param count whole number, at least 0 [count]
 * @param level two-sided coverage, above 0 and below 1 [1]
 * @returns limits of the mean [count]; the lower one is 0 for a count of 0
 * @throws InputError ground/input/out-of-range
 * @source Garwood F. (1936) Biometrika 28, 437-442.
 * @check 0 at 0.95 gives 0 to 3.688879; 5 gives 1.623486 to 11.668332; 10 gives 4.795389 to 18.390356 (R 4.2.2 poisson.test)
 */
export function poissonInterval(count: number, level = 0.95): Interval {
  requireCount('count', count)
  requireOpenUnit('level', level)
  const beyond = (1 - level) / 2
  return {
    lower: count === 0 ? 0 : chiSquareQuantile(beyond, 2 * count) / 2,
    upper: chiSquareQuantile(beyond, 2 * count + 2, 'upper') / 2,
  }
}

/**
 * One-sided upper limit for the mean of a Poisson count, such as "none seen: at most this many".
 *
 * @throws InputError ground/input/out-of-range
 * @source Garwood (1936), one tail.
 * @check 0 at 0.95 gives 2.995732, the rule of three (R 4.2.2 qchisq)
 */
export function poissonUpperLimit(count: number, level = 0.95): number {
  requireCount('count', count)
  requireOpenUnit('level', level)
  return chiSquareQuantile(1 - level, 2 * count + 2, 'upper') / 2
}

/** Scatter of counts about what was expected of them, or why there is none to tell. */
export type Dispersion =
  | { readonly kind: 'dispersion'; readonly dispersion: number; readonly pearson: number; readonly df: number }
  | { readonly kind: 'no-freedom'; readonly df: number }
  | { readonly kind: 'none-expected' }

/**
 * Pearson chi-square over its degrees of freedom: 1 for Poisson scatter, more for counts that clump.
 *
 * @param counts whole numbers, length n [count]
 * @param expected what each was expected to be, length n, all above 0; leave out to expect one rate per unit of effort
 * @param estimated how many numbers were estimated from the counts to get `expected`
 * @throws InputError on lengths that differ, counts that are not whole, expectations not above 0
 * @source McCullagh P. & Nelder J.A. (1989) Generalized Linear Models, 2nd ed., 4.5.
 * @check 5, 9, 10 against 8, 8, 8 with one number estimated gives 1.75 / 2 = 0.875
 */
export function poissonDispersion(counts: readonly number[], expected: readonly number[], estimated = 1): Dispersion {
  requireSameLength({ counts, expected })
  requireCount('estimated', estimated)
  const df = counts.length - estimated
  if (df < 1) return { kind: 'no-freedom', df }
  let pearson = 0
  for (let i = 0; i < counts.length; i++) {
    const count = counts[i] ?? 0
    const mean = expected[i] ?? 0
    requireCount('counts', count)
    if (!(mean >= 0 && Number.isFinite(mean)))
      throw new InputError('ground/input/out-of-range', `expected holds ${mean}; expected finite numbers of at least 0`)
    if (mean === 0) return { kind: 'none-expected' }
    pearson += (count - mean) ** 2 / mean
  }
  return { kind: 'dispersion', dispersion: pearson / df, pearson, df }
}

/**
 * What each count is expected to be under one common rate: effort times total count over total effort.
 *
 * @param efforts above 0, same length as the counts
 */
export function expectedAtOneRate(counts: readonly number[], efforts: readonly number[]): readonly number[] {
  requireSameLength({ counts, efforts })
  let total = 0
  let effort = 0
  for (let i = 0; i < counts.length; i++) {
    requireCount('counts', counts[i] ?? 0)
    if (!((efforts[i] ?? 0) > 0))
      throw new InputError('ground/input/out-of-range', `efforts holds ${efforts[i]}; expected numbers above 0`)
    total += counts[i] ?? 0
    effort += efforts[i] ?? 0
  }
  return efforts.map((e) => (e * total) / effort)
}
