import { type Saying, saying } from '@thrum/model/ground'
import type { CountModelFit, LinearMixedFit, ParameterName, Suspect } from '@thrum/stats'

/** No fit, and why: a result, told by name. */
export interface FitRefusal {
  readonly kind: 'refused'
  readonly reason: string
  readonly text: Saying
  /** What to do. */
  readonly cure: Saying
}

export const refusal = (reason: string, values: Saying['values'] = {}): FitRefusal => ({
  kind: 'refused',
  reason,
  text: saying(`questions/fit/refused/${reason}`, values),
  cure: saying(`questions/fit/refused/${reason}/cure`, values),
})

/** Names of what was estimated, as they are said: columns of the design and of its zeros, groupings. */
export interface Named {
  readonly column: (place: number) => Saying
  readonly zeroColumn: (place: number) => Saying
}

/** Suspects that are named. */
const suspectsNamed = 3

export function parameterSaying({ column, zeroColumn }: Named, parameter: ParameterName): Saying {
  if ('column' in parameter)
    return parameter.kind === 'coefficient'
      ? column(parameter.column)
      : saying('questions/fit/suspect/zeros', { of: zeroColumn(parameter.column) })
  if (parameter.kind === 'dispersion') return saying('questions/fit/suspect/dispersion')
  return saying(`questions/fit/suspect/${parameter.kind}`, { of: parameter.of })
}

/** The weights that lead away from a top, as names of columns. */
function columnsAlong(direction: Float64Array, { column }: Named): readonly Saying[] {
  const most = direction.reduce((size, value) => Math.max(size, Math.abs(value)), 0)
  const places = [...direction.keys()].filter((place) => Math.abs(direction[place] as number) > 1e-6 * most)
  const beside = places.filter((place) => place > 0)
  return (beside.length > 0 ? beside : places).map(column)
}

const suspected = (reason: 'not-converged' | 'not-identifiable', suspects: readonly Suspect[], named: Named): FitRefusal =>
  suspects.length === 0
    ? refusal(`${reason}-unnamed`)
    : refusal(reason, { suspects: suspects.slice(0, suspectsNamed).map(({ parameter }) => parameterSaying(named, parameter)) })

/** Why counts were not fitted. */
export function countRefusal(fit: Exclude<CountModelFit, { readonly kind: 'fitted' }>, named: Named): FitRefusal {
  if (fit.kind === 'separated') return refusal('separated', { columns: columnsAlong(fit.direction, named) })
  if (fit.kind === 'not-converged' || fit.kind === 'not-identifiable') return suspected(fit.kind, fit.suspects, named)
  return refusal(fit.kind)
}

/** Why measured numbers were not fitted. */
export function measuredRefusal(fit: Exclude<LinearMixedFit, { readonly kind: 'fitted' }>): FitRefusal {
  if (fit.kind === 'not-identifiable') return refusal('grouping-blurred', { of: fit.of })
  return fit.kind === 'no-residual' ? refusal('no-residual') : refusal('not-converged-unnamed')
}
