import { InputError, requireFinite } from '@thrum/model/ground'
import type { AliasedColumn } from '../least-squares/aliased.ts'
import type { Matrix } from '../least-squares/matrix.ts'
import type { FamilyName, Response } from './family.ts'
import type { Grouping } from './grouping.ts'

/** A model of counts: what was counted, what it may hang on, what is drawn at random. */
export interface CountModel {
  readonly family: FamilyName
  /** Length n, whole numbers from 0. */
  readonly counts: ArrayLike<number>
  /** For shares: out of how many; length n. */
  readonly trials?: ArrayLike<number>
  /** n rows, p columns; an intercept is a column of ones, best the first. */
  readonly design: Matrix
  /** Added to the linear predictor, such as log effort; length n, 0 unless said. */
  readonly offset?: ArrayLike<number>
  readonly groupings?: readonly Grouping[]
  /** n rows: what the chance of a zero of another origin hangs on (logit); no such chance unless said. */
  readonly zeros?: Matrix
}

/** What is to be known of a fit beside its numbers. */
export type FitWarning =
  /** A variance of random intercepts is estimated as zero: a result, not an error. */
  | { readonly kind: 'zero-variance'; readonly of: string }
  | { readonly kind: 'no-overdispersion' }
  | { readonly kind: 'few-groups'; readonly of: string; readonly groups: number }

/** Coefficients of one linear predictor, on the columns as they came; an aliased column is left out, and its place holds 0. */
export interface Coefficients {
  readonly coefficients: Float64Array
  /** p by p, row major; rows and columns of aliased columns hold 0. */
  readonly covariance: Float64Array
  readonly standardErrors: Float64Array
  readonly aliased: readonly AliasedColumn[]
}

export type CountModelFit =
  | (Coefficients & {
      readonly kind: 'fitted'
      /** Of the chance of a zero of another origin; null where there is none. */
      readonly zeros: Coefficients | null
      /** Standard deviation of the random intercepts of each grouping. */
      readonly deviations: readonly number[]
      /**
       * theta of NB2 (variance mu + mu^2 / theta; Infinity where none was found), phi of NB1 (variance mu (1 + phi)), a + b of the
       * beta-binomial (Infinity where none was found); null without one.
       */
      readonly dispersion: number | null
      readonly logLikelihood: number
      /** Estimated parameters, variances and dispersion among them. */
      readonly parameters: number
      readonly warnings: readonly FitWarning[]
      readonly evaluations: number
    })
  | { readonly kind: 'all-zero' | 'all-trials' | 'not-converged' }
  /** Along these weights on the columns the likelihood rises for ever: a rate there cannot be told from zero. */
  | { readonly kind: 'separated'; readonly direction: Float64Array }
  /** The likelihood is flat, or has no top, about this place. */
  | { readonly kind: 'not-identifiable'; readonly coefficients: Float64Array }

function requireCounts(name: string, values: ArrayLike<number>, n: number): Float64Array {
  if (values.length !== n)
    throw new InputError('ground/input/lengths-differ', `${name} has ${values.length} entries; expected ${n}, one per row`)
  const own = Float64Array.from(values)
  for (const value of own) {
    if (!(Number.isInteger(value) && value >= 0))
      throw new InputError('ground/input/out-of-range', `${name} holds ${value}; expected whole numbers from 0`)
  }
  return own
}

/** @throws InputError on lengths that differ, counts that are not whole numbers from 0, a level that is not there, an offset without end */
export function requireModel({ counts, trials, design, offset, groupings = [], zeros }: CountModel): {
  readonly response: Response
  readonly offset: Float64Array
} {
  const { rows: n } = design
  const own = requireCounts('counts', counts, n)
  const most = trials === undefined ? null : requireCounts('trials', trials, n)
  if (most !== null && own.some((count, i) => count > (most[i] as number)))
    throw new InputError('ground/input/out-of-range', 'a count is above its trials')
  const shifts = Float64Array.from({ length: n }, (_, i) => offset?.[i] ?? 0)
  for (const value of shifts) requireFinite('offset', value)
  for (const { name, of, levels } of groupings) {
    if (of.length !== n || of.some((level) => level < 0 || level >= levels))
      throw new InputError('ground/input/out-of-range', `grouping ${name} does not give each row one of ${levels} levels`)
  }
  if (zeros !== undefined && zeros.rows !== n)
    throw new InputError('ground/input/lengths-differ', `zeros has ${zeros.rows} rows; expected ${n}`)
  return { response: { counts: own, trials: most }, offset: shifts }
}
