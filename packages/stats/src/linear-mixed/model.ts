import { InputError, requireFinite } from '@thrum/model/ground'
import type { Grouping } from '../count-model/effects/grouping.ts'
import type { Coefficients } from '../count-model/model.ts'
import { requireGrouping } from '../count-model/require-model.ts'
import type { Matrix } from '../least-squares/matrix.ts'

/** A model of a measured number: what it may hang on, what is drawn at random. */
export interface LinearMixedModel {
  /** Maximum likelihood, to compare models of other columns; `restricted` (REML), for variances and standard errors. */
  readonly likelihood: 'full' | 'restricted'
  /** Length n, finite. */
  readonly response: ArrayLike<number>
  /** n rows, p columns; an intercept is a column of ones, best the first. */
  readonly design: Matrix
  /** Added to the linear predictor; length n, 0 unless said. */
  readonly offset?: ArrayLike<number>
  /** Nested or crossed; at most one has a slope. */
  readonly groupings?: readonly Grouping[]
}

/** What is to be known of a fit beside its numbers. */
export type LinearMixedWarning =
  /** A variance is estimated as zero: a result, not an error. */
  | { readonly kind: 'zero-variance' | 'zero-slope-variance'; readonly of: string }
  /** Intercept and slope of a level are estimated to lie on one line: a variance is zero in a direction between them. */
  | { readonly kind: 'perfect-correlation'; readonly of: string }
  | { readonly kind: 'few-groups'; readonly of: string; readonly groups: number }

/** How far the slopes of the levels scatter. */
export interface SlopeScatter {
  readonly of: string
  /** Standard deviation of the slopes, per unit of the covariate as it came. */
  readonly deviation: number
  /** Of slope and intercept where the covariate is 0; null where it was not asked for, or where one of them does not vary. */
  readonly correlation: number | null
}

export type LinearMixedFitted = Coefficients & {
  readonly kind: 'fitted'
  /** Standard deviation of the random intercepts of each grouping, where its slope has one, where the covariate is 0. */
  readonly deviations: readonly number[]
  readonly slope: SlopeScatter | null
  /** What is left within all groups: divided by n in the full likelihood, by n less the columns kept in the restricted one. */
  readonly residualSd: number
  /** Full or restricted as asked, with all constants; restricted ones compare only models of the same columns. */
  readonly logLikelihood: number
  /** Estimated parameters: coefficients, variances, a correlation, the residual variance. */
  readonly parameters: number
  /** -2 logLikelihood + 2 parameters. */
  readonly aic: number
  readonly warnings: readonly LinearMixedWarning[]
  readonly evaluations: number
}

export type LinearMixedFit =
  | LinearMixedFitted
  /** The columns, or the columns and groups, explain the response wholly: there is no scatter to judge anything by. */
  | { readonly kind: 'no-residual' }
  /** The variance of this grouping cannot be told from the residual, from the columns or from the groupings before it. */
  | { readonly kind: 'not-identifiable'; readonly of: string }
  | { readonly kind: 'not-converged' }

function requireRows(name: string, values: ArrayLike<number>, n: number): Float64Array {
  if (values.length !== n)
    throw new InputError('ground/input/lengths-differ', `${name} has ${values.length} entries; expected ${n}, one per row`)
  const own = Float64Array.from(values)
  for (const value of own) requireFinite(name, value)
  return own
}

/**
 * What a model holds, checked.
 *
 * @returns the response less the offset
 * @throws InputError on no row, lengths that differ, numbers that are not finite, a level that is not there, two slopes
 */
export function requireLinearMixed({ response, design, offset, groupings = [] }: LinearMixedModel): Float64Array {
  const { rows: n } = design
  if (n === 0) throw new InputError('ground/input/out-of-range', 'design has no row; expected at least 1')
  const own = requireRows('response', response, n)
  if (offset !== undefined) {
    const shifts = requireRows('offset', offset, n)
    for (let i = 0; i < n; i++) own[i] = (own[i] as number) - (shifts[i] as number)
  }
  for (const grouping of groupings) requireGrouping(grouping, n)
  if (groupings.filter(({ slope }) => slope !== undefined).length > 1)
    throw new InputError('ground/input/out-of-range', 'more than one grouping has a random slope; expected at most one')
  return own
}
