import { InputError, type Rng, requireCount } from '@thrum/model/ground'
import { logFactorial } from '../distribution/log-gamma.ts'
import { exp, log, log1p } from '../elementary.ts'

/** Below this expected number, inversion; from it on, transformed rejection. */
const rejectionFrom = 10

/**
 * One binomial draw.
 *
 * @param trials whole number, at least 0
 * @param chance from 0 to 1
 * @throws InputError ground/input/out-of-range
 * @source Inversion when trials * chance < 10; Hormann W. (1993) J. Stat. Comput. Simul. 46, 101-110 (BTRS) from 10; mirrored above 1/2.
 * @check chi-square against exact probabilities on both sides of 10, seeded
 */
export function drawBinomial(rng: Rng, trials: number, chance: number): number {
  requireCount('trials', trials)
  if (!(chance >= 0 && chance <= 1))
    throw new InputError('ground/input/out-of-range', `chance is ${chance}; expected a number from 0 to 1`)
  if (chance > 0.5) return trials - drawBinomial(rng, trials, 1 - chance)
  if (trials === 0 || chance === 0) return 0
  return trials * chance < rejectionFrom ? byInversion(rng, trials, chance) : byRejection(rng, trials, chance)
}

function byInversion(rng: Rng, trials: number, chance: number): number {
  const odds = chance / (1 - chance)
  let left = rng.uniform()
  let probability = exp(trials * log1p(-chance))
  for (let count = 0; count < trials; count++) {
    left -= probability
    if (left <= 0) return count
    probability *= ((trials - count) / (count + 1)) * odds
    // Where rounding leaves a crumb beyond the last probability that is not 0, the search ends there.
    if (probability === 0) return count
  }
  return trials
}

/** Constants are those of the paper, chosen there so that the hat covers every trials * chance of at least 10. */
function byRejection(rng: Rng, trials: number, chance: number): number {
  const spread = Math.sqrt(trials * chance * (1 - chance))
  const b = 1.15 + 2.53 * spread
  const a = -0.0873 + 0.0248 * b + 0.01 * chance
  const centre = trials * chance + 0.5
  const quick = 0.92 - 4.2 / b
  const alpha = (2.83 + 5.1 / b) * spread
  const logOdds = log(chance / (1 - chance))
  const mode = Math.floor((trials + 1) * chance)
  const atMode = logFactorial(mode) + logFactorial(trials - mode)
  for (;;) {
    const u = rng.uniform() - 0.5
    const v = rng.uniform()
    const us = 0.5 - Math.abs(u)
    const count = Math.floor(((2 * a) / us + b) * u + centre)
    if (count < 0 || count > trials) continue
    if (us >= 0.07 && v <= quick) return count
    const height = log((v * alpha) / (a / (us * us) + b))
    if (height <= atMode - logFactorial(count) - logFactorial(trials - count) + (count - mode) * logOdds) return count
  }
}
