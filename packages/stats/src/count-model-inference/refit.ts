import { type ModelAtHand, modelAtHand } from '../count-model/at-hand.ts'
import { maximise } from '../count-model/maximise.ts'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import { requireModel } from '../count-model/require-model.ts'
import { coefficientsOf } from '../count-model/scaled-design.ts'
import { separatedDirection } from '../count-model/separation.ts'

/** A fit to drawn counts: coefficients on the columns as they came, or why there is none. */
export type Refit =
  | {
      readonly kind: 'fitted'
      readonly coefficients: Float64Array
      readonly logLikelihood: number
      /** Where the search ended: parameters on the scale of the search. */
      readonly end: Float64Array
      /** Linear predictor of each row there, modes of the random effects with it; worked out when asked. */
      readonly predictor: () => Float64Array
    }
  | { readonly kind: RefitFailure }
export type RefitFailure = 'all-zero' | 'all-trials' | 'separated' | 'not-converged'

/** For drawn counts a search may end earlier. */
const enough = 1e-7
/** A variance that was estimated as zero begins here, for zero itself is a stationary point. */
const asideOfZero = 0.1

/**
 * Fits other counts of the same rows, each from the same place: that of a fit, in its metric. So no refit hangs on the one before.
 *
 * @param fit of this very model
 */
export function refitter(model: CountModel, fit: FittedCountModel): (counts: Float64Array) => Refit {
  const { response, offset } = requireModel(model)
  const atHand = modelAtHand(model, response, offset)
  const { design } = atHand
  const start = startOf(atHand, fit)
  const metric = metricOf(atHand, fit)
  return (counts) => {
    if (counts.every((count) => count === 0)) return { kind: 'all-zero' }
    const own = { counts, trials: response.trials }
    if (own.trials !== null && counts.every((count, i) => count === own.trials?.[i])) return { kind: 'all-trials' }
    if (separatedDirection(model.design, design.aliased, own) !== null) return { kind: 'separated' }
    const objective = atHand.objectiveFor(own)
    const best = maximise(objective, start, { metric, enough })
    if (!best.isConverged) return { kind: 'not-converged' }
    return {
      kind: 'fitted',
      coefficients: coefficientsOf(design, best.at),
      logLikelihood: best.value,
      end: best.at,
      predictor: () => {
        objective.evaluate(best.at, null)
        return objective.predictor()
      },
    }
  }
}

function startOf({ places }: ModelAtHand, { history: { end } }: FittedCountModel): Float64Array {
  return end.map((value, k) => (places.isZero(end, k) ? asideOfZero : value))
}

function metricOf({ places }: ModelAtHand, { searchCovariance, history: { end } }: FittedCountModel): Float64Array {
  const metric = searchCovariance.slice()
  for (let k = 0; k < places.total; k++) if (places.isZero(end, k)) metric[k * (places.total + 1)] = asideOfZero ** 2
  return metric
}
