import { type Rng, requirePositive } from '@thrum/model/ground'
import { log, pow } from '../elementary.ts'
import { standardNormal } from './normal.ts'

/**
 * One gamma draw with mean shape * scale.
 *
 * @param shape above 0
 * @param scale above 0
 * @throws InputError ground/input/out-of-range
 * @source Marsaglia G. & Tsang W.W. (2000) ACM Trans. Math. Softw. 26, 363-372; below shape 1 their U^(1/shape) step.
 * @check chi-square against exact cell probabilities at shapes 0.3, 0.99, 1, 5, 200, seeded
 */
export function drawGamma(rng: Rng, shape: number, scale = 1): number {
  requirePositive('shape', shape)
  requirePositive('scale', scale)
  if (shape < 1) return scale * standardGamma(rng, shape + 1) * pow(rng.uniform(), 1 / shape)
  return scale * standardGamma(rng, shape)
}

/** Shape at least 1, scale 1. */
function standardGamma(rng: Rng, shape: number): number {
  const d = shape - 1 / 3
  const c = 1 / Math.sqrt(9 * d)
  for (;;) {
    const x = standardNormal(rng)
    const root = 1 + c * x
    if (root <= 0) continue
    const v = root * root * root
    if (log(rng.uniform()) < 0.5 * x * x + d - d * v + d * log(v)) return d * v
  }
}
