import { modelAtHand } from '../count-model/at-hand.ts'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import { requireModel } from '../count-model/require-model.ts'

/** How far one Newton step with the quadrature's gradient moves the Laplace fit, in standard errors. */
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
 * @returns null where quadrature is not to be had: no grouping, several, or a slope
 */
export function laplaceError(model: CountModel, fit: FittedCountModel): LaplaceError | null {
  const groupings = model.groupings ?? []
  if (groupings.length !== 1 || groupings[0]?.slope !== undefined) return null
  const { response, offset } = requireModel(model)
  const { objectiveFor, places } = modelAtHand({ ...model, nodes: nodesOfCheck }, response, offset)
  const m = places.total
  const gradient = new Float64Array(m)
  objectiveFor(response).evaluate(fit.history.end, gradient)
  let coefficients = 0
  let deviation = 0
  for (let k = 0; k < m; k++) {
    const variance = fit.searchCovariance[k * (m + 1)] as number
    if (!(variance > 0)) continue
    let step = 0
    for (let l = 0; l < m; l++) step += (fit.searchCovariance[k * m + l] as number) * (gradient[l] as number)
    const size = Math.abs(step) / Math.sqrt(variance)
    const { kind } = places.names[k] ?? {}
    if (kind === 'coefficient' || kind === 'zero-coefficient') coefficients = Math.max(coefficients, size)
    else if (kind === 'deviation') deviation = Math.max(deviation, size)
  }
  return { coefficients, deviation, matters: coefficients > coefficientMatters || deviation > deviationMatters }
}
