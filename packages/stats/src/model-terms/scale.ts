import { InputError, requirePositive } from '@thrum/model/ground'
import { inverseLogit } from '../distribution/beta.ts'
import { exp, log } from '../elementary.ts'

/**
 * How a linear predictor is told as a mean.
 *
 * A log link tells the mean of so much effort, in the unit whose logarithm is the model's offset (60 where minutes were watched: the
 * mean of an hour; 1 for a model without offset). With random intercepts that is the mean of a unit whose effects are zero; with their
 * `variances` it is the mean over all units, exp(sum of variances / 2) as large. They are taken as known, and no slope may be random.
 */
export type Scale =
  | { readonly link: 'log'; readonly effort: number; readonly variances?: readonly number[] }
  | { readonly link: 'logit' }
  | { readonly link: 'identity' }

/** What stands in the linear predictor beside the sum of coefficients. @throws InputError on an effort that is not above 0 */
export function offsetOf(scale: Scale): number {
  if (scale.link !== 'log') return 0
  requirePositive('effort', scale.effort)
  return log(scale.effort)
}

/** Half the sum of the variances that a mean is taken over; 0 for a unit whose effects are zero. */
function halfVariance(scale: Scale): number {
  if (scale.link !== 'log') return 0
  let sum = 0
  for (const variance of scale.variances ?? []) {
    if (!(variance >= 0 && Number.isFinite(variance)))
      throw new InputError('ground/input/out-of-range', `variances hold ${variance}; expected finite numbers from 0`)
    sum += variance / 2
  }
  return sum
}

/**
 * From the linear predictor (offset in it) to the mean, rising; infinite ends are allowed.
 *
 * @throws InputError on a variance below 0
 * @source Mean of a lognormal variable: Aitchison J., Brown J.A.C. (1957) The Lognormal Distribution, 2.3. From memory.
 * @check log link, predictor 0, variances 0.5 and 0.3: exp(0.4)
 */
export function responseOf(scale: Scale): (predictor: number) => number {
  if (scale.link === 'identity') return (predictor) => predictor
  if (scale.link === 'logit') return inverseLogit
  const half = halfVariance(scale)
  return (predictor) => exp(predictor + half)
}
