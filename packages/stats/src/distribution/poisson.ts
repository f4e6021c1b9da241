import { requireCount, requirePositive } from '@thrum/model/ground'
import { exp, log } from '../elementary.ts'
import { incompleteGamma } from './incomplete-gamma.ts'
import { halfDeviance, halfLogTwoPi, stirlingError } from './log-gamma.ts'
import type { Tails } from './tails.ts'

/**
 * Log of the Poisson probability of a count.
 *
 * @param mean above 0
 * @throws InputError ground/input/out-of-range
 * @source Loader C. (2000) Fast and accurate computation of binomial probabilities.
 * @check 0 at mean 2 is -2
 */
export function poissonLogPmf(count: number, mean: number): number {
  requireCount('count', count)
  requirePositive('mean', mean)
  if (count === 0) return -mean
  return -halfDeviance(count, mean) - stirlingError(count) - halfLogTwoPi - 0.5 * log(count)
}

/** Poisson probability of a count. */
export function poissonPmf(count: number, mean: number): number {
  return exp(poissonLogPmf(count, mean))
}

/**
 * Poisson tails: `lower` is the chance of at most `count`, `upper` that of more.
 *
 * @throws InputError ground/input/out-of-range
 * @source Abramowitz & Stegun (1964) 26.4.21.
 * @check at most 0 at mean 2.995732 is 0.05
 */
export function poissonTails(count: number, mean: number): Tails {
  requireCount('count', count)
  requirePositive('mean', mean)
  const { lower, upper } = incompleteGamma(count + 1, mean)
  return { lower: upper, upper: lower }
}
