import { modelAtHand } from '../count-model/at-hand.ts'
import { curvatureAt } from '../count-model/maximise.ts'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import { requireModel } from '../count-model/require-model.ts'
import { inverseOf } from '../count-model/symmetric.ts'

/**
 * How far one Newton step of the quadrature moves the Laplace fit, in its standard errors. Coefficients are those of the search: of scaled
 * columns, with the intercept in their middle.
 */
export interface LaplaceError {
  readonly coefficients: number
  readonly deviation: number
  /** True where the model should be fitted by quadrature: a coefficient moves by more than 0.1, or the deviation by more than 0.2. */
  readonly matters: boolean
}

const nodesOfCheck = 15
const coefficientMatters = 0.1
const deviationMatters = 0.2

/**
 * Whether the Laplace approximation is good enough here. Small groups with few insects are where it is not.
 *
 * @param fit of this model by Laplace
 * @check 60 fields of two visits, NB2, few insects: told 0.302, moved by 0.278 of a standard error of the deviation (our own refit by
 *   quadrature of 25 nodes); salamanders: told 0.0159, cbpp: 0.0291, which do not matter
 * @returns null where quadrature is not to be had: no grouping, several, or a slope
 */
export function laplaceError(model: CountModel, fit: FittedCountModel): LaplaceError | null {
  const groupings = model.groupings ?? []
  if (groupings.length !== 1 || groupings[0]?.slope !== undefined) return null
  const { response, offset } = requireModel(model)
  const { objectiveFor, places } = modelAtHand({ ...model, nodes: nodesOfCheck }, response, offset)
  const m = places.total
  const gradient = new Float64Array(m)
  const objective = objectiveFor(response)
  objective.evaluate(fit.history.end, gradient)
  const curvature = curvatureAt(objective, fit.history.end, gradient)
  // What was estimated as zero stays there.
  const free = Array.from({ length: m }, (_, k) => k).filter((k) => (fit.searchCovariance[k * (m + 1)] as number) > 0)
  const metric = metricOf(curvature, fit.searchCovariance, free, m)
  let coefficients = 0
  let deviation = 0
  for (const [a, k] of free.entries()) {
    const step = free.reduce((sum, l, b) => sum + (metric[a * free.length + b] as number) * (gradient[l] as number), 0)
    const size = Math.abs(step) / Math.sqrt(fit.searchCovariance[k * (m + 1)] as number)
    const { kind } = places.names[k] ?? {}
    if (kind === 'coefficient' || kind === 'zero-coefficient') coefficients = Math.max(coefficients, size)
    else if (kind === 'deviation') deviation = Math.max(deviation, size)
  }
  return { coefficients, deviation, matters: coefficients > coefficientMatters || deviation > deviationMatters }
}

/** Inverse curvature of the quadrature among the free parameters; that of the Laplace fit where it has none. */
function metricOf(curvature: Float64Array | null, covariance: Float64Array, free: readonly number[], m: number): Float64Array {
  const partOf = (whole: Float64Array): Float64Array =>
    Float64Array.from(free.flatMap((k) => free.map((l) => whole[k * m + l] as number)))
  return (curvature === null ? null : inverseOf(partOf(curvature), free.length)) ?? partOf(covariance)
}
