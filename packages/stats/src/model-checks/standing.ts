import type { Rng } from '@thrum/model/ground'
import type { ModelAtHand } from '../count-model/at-hand.ts'
import type { FamilyName, Response } from '../count-model/family/family.ts'
import { chancesOfZero } from '../count-model-inference/simulate-counts.ts'
import { type RowLaw, rowLaw } from './row-law.ts'

/** How counts stand to a model fitted to them, row by row; random effects at their modes. */
export interface Standing {
  /** As counted. */
  readonly counts: Float64Array
  readonly laws: readonly RowLaw[]
  /** Randomised quantile residuals, each between 0 and 1. */
  readonly quantiles: Float64Array
}

/** A fit, or a refit, as far as it says how rows are distributed. */
export interface Place {
  readonly predictor: Float64Array
  /** Parameters on the scale of the search. */
  readonly end: Float64Array
}

/** A residual nearer to 0 or 1 says no more than that the row lies far out. */
const furthest = 1e-12

/**
 * Randomised quantile residuals of counts by the exact law of each row: uniform where the model is true, but for what was estimated.
 *
 * Ties are broken by one uniform a row from `rng`, in the order of the rows: another order of the rows breaks them otherwise, and
 * changes nothing else.
 *
 * @source Dunn P.K., Smyth G.K. (1996) J. Comput. Graph. Stat. 5, 236-244
 */
export function standingOf(family: FamilyName, response: Response, place: Place, atHand: ModelAtHand, rng: Rng): Standing {
  const { counts, trials } = response
  const { places } = atHand
  const n = counts.length
  const root = places.root === null || places.isZero(place.end, places.root) ? 0 : (place.end[places.root] as number)
  const chances = chancesOfZero(atHand, place.end, n)
  const laws = Array.from({ length: n }, (_, i) =>
    rowLaw(family, {
      count: counts[i] as number,
      trials: trials?.[i] ?? 1,
      predictor: place.predictor[i] as number,
      dispersion: root * root,
      chance: chances?.[i] ?? 0,
    }),
  )
  const quantiles = Float64Array.from(laws, ({ below, at }) => within(below + at * rng.uniform()))
  return { counts, laws, quantiles }
}

const within = (quantile: number): number => Math.min(Math.max(quantile, furthest), 1 - furthest)
