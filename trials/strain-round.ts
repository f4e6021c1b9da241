import { createRng } from '@thrum/model/ground'
import { type CountModel, drawNormal, type FittedCountModel, fitCountModel } from '@thrum/stats'
import { modelAtHand } from '../packages/stats/src/count-model/at-hand.ts'
import { maximise } from '../packages/stats/src/count-model/maximise.ts'
import { requireModel } from '../packages/stats/src/count-model/require-model.ts'
import { type StrainFamily, strainedModel } from './strain-families.ts'
import { carefulLogLikelihood } from './strain-sum.ts'

/** How one set of counts ended: `fitted`, or the verdict by name; what is wrong with a fit, if anything is. */
export interface StrainEnd {
  readonly verdict: string
  readonly wrong: readonly StrainFault[]
  /** |log likelihood - that of the careful sum at the same parameters|; 0 without a fit. */
  readonly off: number
  readonly evaluations: number
}
export type StrainFault = 'sum-differs' | 'better-elsewhere' | 'not-finite'

/** More than this apart from the careful sum is wrong; the parameters are told to some 1e-9, zero variances as they were found. */
const sumTolerance = 1e-6
/** A search from elsewhere that reaches this much more has found another top. */
const topTolerance = 1e-4

export function strainOnce(family: StrainFamily, seed: string): StrainEnd {
  const model = strainedModel(family, seed)
  const fit = fitCountModel(model)
  if (fit.kind !== 'fitted') {
    const evaluations = 'history' in fit ? fit.history.evaluations : 0
    return { verdict: fit.kind, wrong: [], off: 0, evaluations }
  }
  const numbers = [...fit.coefficients, ...fit.standardErrors, ...fit.deviations, fit.logLikelihood]
  const off = Math.abs(fit.logLikelihood - carefulLogLikelihood(model, fit))
  return {
    verdict: 'fitted',
    wrong: [
      ...(numbers.every(Number.isFinite) ? [] : (['not-finite'] as const)),
      ...(off <= sumTolerance * Math.max(1, Math.abs(fit.logLikelihood) / 1000) ? [] : (['sum-differs'] as const)),
      ...(bestElsewhere(model, fit, seed) <= fit.logLikelihood + topTolerance ? [] : (['better-elsewhere'] as const)),
    ],
    off,
    evaluations: fit.history.evaluations,
  }
}

/** Deviations and root of the dispersion at the starts of the other searches. */
const otherStarts = [0.1, 1, 2]

/** The highest value that searches from three other places reach. */
function bestElsewhere(model: CountModel, fit: FittedCountModel, seed: string): number {
  const { response, offset } = requireModel(model)
  const { objectiveFor, places } = modelAtHand(model, response, offset)
  const rng = createRng(`${seed}/elsewhere`)
  let best = Number.NEGATIVE_INFINITY
  for (const size of otherStarts) {
    const objective = objectiveFor(response)
    const start = fit.history.start.map((value, k) =>
      k >= places.deviations && k < places.zeros ? size : value + 0.5 * drawNormal(rng),
    )
    best = Math.max(best, maximise(objective, start).value)
  }
  return best
}
