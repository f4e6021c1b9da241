import { InputError, type Rng } from '@thrum/model/ground'
import { logFactorial } from '../distribution/log-gamma.ts'
import { exp, log } from '../elementary.ts'

/** Below this mean, inversion; from it on, transformed rejection. */
const rejectionFrom = 10

/**
 * One Poisson draw.
 *
 * @param mean finite, at least 0
 * @throws InputError ground/input/out-of-range
 * @source Inversion by sequential search below 10; Hormann W. (1993) Insur. Math. Econ. 12, 39-45 (PTRS) from 10.
 * @check chi-square against exact probabilities on both sides of 10, seeded
 */
export function drawPoisson(rng: Rng, mean: number): number {
  if (!(mean >= 0 && Number.isFinite(mean)))
    throw new InputError('ground/input/out-of-range', `mean is ${mean}; expected a finite number of at least 0`)
  if (mean === 0) return 0
  return mean < rejectionFrom ? byInversion(rng, mean) : byRejection(rng, mean)
}

function byInversion(rng: Rng, mean: number): number {
  let left = rng.uniform()
  let probability = exp(-mean)
  for (let count = 0; ; count++) {
    left -= probability
    // Where rounding leaves a crumb beyond the last probability that is not 0, the search ends there.
    if (left <= 0 || probability === 0) return count
    probability *= mean / (count + 1)
  }
}

/** Constants are those of the paper's table, chosen there so that the hat covers every mean of at least 10. */
function byRejection(rng: Rng, mean: number): number {
  const logMean = log(mean)
  const b = 0.931 + 2.53 * Math.sqrt(mean)
  const a = -0.059 + 0.02483 * b
  const inverseAlpha = 1.1239 + 1.1328 / (b - 3.4)
  const quick = 0.9277 - 3.6224 / (b - 2)
  for (;;) {
    const u = rng.uniform() - 0.5
    const v = rng.uniform()
    const us = 0.5 - Math.abs(u)
    const count = Math.floor(((2 * a) / us + b) * u + mean + 0.43)
    if (us >= 0.07 && v <= quick) return count
    if (count < 0 || (us < 0.013 && v > us)) continue
    if (log((v * inverseAlpha) / (a / (us * us) + b)) <= count * logMean - mean - logFactorial(count)) return count
  }
}
