import { InputError, type Rng, requirePositive } from '@thrum/model/ground'
import { drawGamma } from './gamma.ts'
import { drawPoisson } from './poisson.ts'

/**
 * One NB2 draw: Poisson whose mean is itself gamma, so the variance is mean + mean^2 / theta.
 *
 * @param mean finite, at least 0
 * @param theta above 0
 * @throws InputError ground/input/out-of-range
 * @source Greenwood M. & Yule G.U. (1920) J. R. Stat. Soc. 83, 255-279.
 * @check chi-square against exact probabilities, seeded
 */
export function drawNegativeBinomial(rng: Rng, mean: number, theta: number): number {
  if (!(mean >= 0 && Number.isFinite(mean)))
    throw new InputError('ground/input/out-of-range', `mean is ${mean}; expected a finite number of at least 0`)
  requirePositive('theta', theta)
  if (mean === 0) return 0
  return drawPoisson(rng, drawGamma(rng, theta, mean / theta))
}
