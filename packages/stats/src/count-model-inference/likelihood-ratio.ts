import { InputError } from '@thrum/model/ground'
import { chiSquareTails } from '../distribution/chi-square.ts'

/** What of a fit, of counts or of measured numbers by full likelihood, is compared. */
export interface Likelihood {
  readonly logLikelihood: number
  readonly parameters: number
  /** As long as there are rows. */
  readonly predictor: { readonly length: number }
}

export interface LikelihoodRatio {
  /** 2 (log likelihood of the larger - that of the smaller), at least 0. */
  readonly statistic: number
  readonly df: number
  readonly p: number
  /** `mixture` where the smaller model has one variance fewer, whose zero lies on the edge of what a variance can be. */
  readonly null: 'chi-square' | 'mixture'
}

/** What the larger model has more: coefficients or other inner parameters, or one variance of random intercepts. */
export type Difference = 'inner' | 'one-variance'

/**
 * Likelihood ratio of two fits, one inside the other, to the same counts.
 *
 * Beware: with few fields it finds too much (methods 2.6); a contrast of whole fields is not decided by it.
 *
 * @throws InputError where the fits are of different numbers of rows, the larger fit has no more parameters, or is less likely than the smaller by more than rounding: then a search
 *   stopped short, or the models are not nested
 * @source Self S.G., Liang K.-Y. (1987) J. Am. Stat. Assoc. 82, 605-610 (half a chi-square of 0 and half of 1 df; from memory)
 * @check salamanders, NB2, with and without mining: 31.589591 on 1 df; with and without sites: 22.901564, p 8.53e-7 (R 4.2.2, glmmTMB)
 */
export function likelihoodRatio(larger: Likelihood, smaller: Likelihood, difference: Difference): LikelihoodRatio {
  if (larger.predictor.length !== smaller.predictor.length)
    throw new InputError(
      'ground/input/lengths-differ',
      `fits to ${larger.predictor.length} and to ${smaller.predictor.length} rows do not compare`,
    )
  const df = larger.parameters - smaller.parameters
  if (!(df >= 1))
    throw new InputError('ground/input/out-of-range', 'the larger model has no more parameters than the smaller; exchange them')
  if (difference === 'one-variance' && df !== 1)
    throw new InputError('ground/input/out-of-range', `the models differ by ${df} parameters; expected one variance`)
  const raw = 2 * (larger.logLikelihood - smaller.logLikelihood)
  if (raw < -1e-4)
    throw new InputError('ground/input/out-of-range', 'the larger model is less likely than the smaller: they are not nested')
  const statistic = Math.max(raw, 0)
  const upper = statistic === 0 ? 1 : chiSquareTails(statistic, df).upper
  if (difference === 'inner') return { statistic, df, p: upper, null: 'chi-square' }
  return { statistic, df, p: statistic === 0 ? 1 : upper / 2, null: 'mixture' }
}
