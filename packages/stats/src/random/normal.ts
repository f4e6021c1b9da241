import { InputError, type Rng, requireFinite } from '@thrum/model/ground'
import { log } from '../elementary.ts'

/**
 * One standard normal draw, scaled and moved.
 *
 * @param sd at least 0
 * @throws InputError ground/input/out-of-range
 * @source Marsaglia G. & Bray T.A. (1964) SIAM Rev. 6, 260-264 (polar method; the second of each pair is thrown away, so no state is kept).
 * @check moments and chi-square against exact cell probabilities, seeded
 */
export function drawNormal(rng: Rng, mean = 0, sd = 1): number {
  requireFinite('mean', mean)
  if (!(sd >= 0 && Number.isFinite(sd)))
    throw new InputError('ground/input/out-of-range', `sd is ${sd}; expected a finite number of at least 0`)
  return mean + sd * standardNormal(rng)
}

/** One standard normal draw, unchecked, for samplers that draw many. */
export function standardNormal(rng: Rng): number {
  for (;;) {
    const u = 2 * rng.uniform() - 1
    const v = 2 * rng.uniform() - 1
    const square = u * u + v * v
    if (square > 0 && square < 1) return u * Math.sqrt((-2 * log(square)) / square)
  }
}
