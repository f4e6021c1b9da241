import { requireCount, requirePositive } from '@thrum/model/ground'
import { exp, log, log1p } from '../elementary.ts'
import { incompleteBeta, logBetaKernel } from './incomplete-beta.ts'
import type { Tails } from './tails.ts'

/**
 * Log of the NB2 probability of a count: mean `mean`, variance mean + mean^2 / theta.
 *
 * @param mean above 0
 * @param theta above 0; the smaller, the more scattered
 * @throws InputError ground/input/out-of-range
 * @source Lawless J.F. (1987) Can. J. Stat. 15, 209-225.
 * @check 0 at mean 2, theta 1 is log(1/3)
 */
export function negativeBinomialLogPmf(count: number, mean: number, theta: number): number {
  requireCount('count', count)
  requirePositive('mean', mean)
  requirePositive('theta', theta)
  if (count === 0) return -theta * log1p(mean / theta)
  // theta / (theta + count) times the beta kernel in (theta, count).
  return log(theta / (theta + count)) + logBetaKernel(theta, count, theta / (theta + mean), mean / (theta + mean))
}

/** NB2 probability of a count. */
export function negativeBinomialPmf(count: number, mean: number, theta: number): number {
  return exp(negativeBinomialLogPmf(count, mean, theta))
}

/** NB2 tails: `lower` is the chance of at most `count`, `upper` that of more. */
export function negativeBinomialTails(count: number, mean: number, theta: number): Tails {
  requireCount('count', count)
  requirePositive('mean', mean)
  requirePositive('theta', theta)
  return incompleteBeta(theta, count + 1, theta / (theta + mean), mean / (theta + mean))
}
