import { InputError, requireCount } from '@thrum/model/ground'
import { exp, log, log1p } from '../elementary.ts'
import { incompleteBeta, logBetaKernel } from './incomplete-beta.ts'
import type { Tails } from './tails.ts'

function requireShare(name: string, value: number): void {
  if (!(value >= 0 && value <= 1))
    throw new InputError('ground/input/out-of-range', `${name} is ${value}; expected a number from 0 to 1`)
}

/**
 * Log of the binomial probability of `successes` in `trials`.
 *
 * @param successes from 0 to trials
 * @param chance from 0 to 1; `complement` is 1 - chance, given apart where a caller knows it better
 * @returns log probability; -Infinity where it is impossible
 * @throws InputError ground/input/out-of-range
 * @source Loader C. (2000) Fast and accurate computation of binomial probabilities.
 * @check 3 of 10 at 0.5 is log(120 / 1024)
 */
export function binomialLogPmf(successes: number, trials: number, chance: number, complement = 1 - chance): number {
  requireCount('trials', trials)
  requireCount('successes', successes, { max: trials })
  requireShare('chance', chance)
  if (chance === 0) return successes === 0 ? 0 : Number.NEGATIVE_INFINITY
  if (complement === 0) return successes === trials ? 0 : Number.NEGATIVE_INFINITY
  if (successes === 0) return trials * (chance < 0.5 ? log1p(-chance) : log(complement))
  if (successes === trials) return trials * log(chance)
  return logBetaKernel(successes, trials - successes, chance, complement)
}

/** Binomial probability of `successes` in `trials`. */
export function binomialPmf(successes: number, trials: number, chance: number): number {
  return exp(binomialLogPmf(successes, trials, chance))
}

/**
 * Binomial tails: `lower` is the chance of at most `successes`, `upper` that of more.
 *
 * @throws InputError ground/input/out-of-range
 * @source Abramowitz & Stegun (1964) 26.5.24.
 * @check at most 3 of 10 at 0.5 is 176/1024 = 0.171875
 */
export function binomialTails(successes: number, trials: number, chance: number): Tails {
  requireCount('trials', trials)
  requireCount('successes', successes, { max: trials })
  requireShare('chance', chance)
  if (successes === trials) return { lower: 1, upper: 0 }
  const { lower, upper } = incompleteBeta(successes + 1, trials - successes, chance)
  return { lower: upper, upper: lower }
}
