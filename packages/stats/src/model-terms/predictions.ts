import type { TermDesign } from './design.ts'
import { type Estimates, linearSum, requireEstimates, type Telling, type Told, tellerOf } from './linear-sum.ts'
import type { Scale } from './scale.ts'

/** What the model says of one row, or the aliased columns by which it cannot tell. */
export type Prediction = Told<'prediction'>

export interface Predictions {
  readonly predictions: readonly Prediction[]
  /** The scale they are told on: with a log link it names the effort they refer to. */
  readonly scale: Scale
}

/**
 * Linear predictor, its standard error and limits at any rows, and the same as means.
 *
 * The limits are those of a mean, not of one more count.
 *
 * @param rows of the design, such as those of `design.rowAt`
 * @throws InputError on a row of another length, estimates of another design, an effort or level out of range
 * @source Nelder J.A., Wedderburn R.W.M. (1972) J. R. Stat. Soc. A 135, 370-384. From memory.
 * @check at a combination that fills a cell of its own: the mean of that cell
 */
export function predictionsOf(
  design: TermDesign,
  estimates: Estimates,
  rows: readonly Float64Array[],
  telling: Telling,
): Predictions {
  requireEstimates(design, estimates)
  const told = tellerOf('prediction', telling)
  const predictions = rows.map((row) => told(linearSum(design, estimates, row)))
  return { predictions, scale: telling.scale }
}
