import type { Likelihood } from './likelihood-ratio.ts'

export interface InformationCriteria {
  /** -2 log likelihood + 2 parameters. */
  readonly aic: number
  /** AIC corrected for few rows; Infinity where there are no more rows than parameters and one. */
  readonly aicc: number
}

/**
 * What a fit costs in information. Only fits to the same counts compare, and rows of one field are no independent rows: with few fields
 * the correction is too small.
 *
 * @source Akaike H. (1974) IEEE Trans. Autom. Control 19, 716-723; Hurvich C.M., Tsai C.-L. (1989) Biometrika 76, 297-307 (from memory)
 * @check log likelihood -826.202205 with 10 parameters: AIC 1672.40441 (R 4.2.2, glmmTMB); of 644 rows AICc 1672.75197
 */
export function informationCriteria({ logLikelihood, parameters, predictor }: Likelihood): InformationCriteria {
  const aic = 2 * parameters - 2 * logLikelihood
  const spare = predictor.length - parameters - 1
  return { aic, aicc: spare > 0 ? aic + (2 * parameters * (parameters + 1)) / spare : Number.POSITIVE_INFINITY }
}
