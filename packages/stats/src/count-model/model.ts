import type { AliasedColumn } from '../least-squares/aliased.ts'
import type { Matrix } from '../least-squares/matrix.ts'
import type { Grouping } from './effects/grouping.ts'
import type { FamilyName } from './family/family.ts'

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
  /**
   * How random intercepts are integrated out: by the Laplace approximation unless said; with so many nodes by adaptive Gauss-Hermite
   * quadrature, for one grouping without a slope.
   */
  readonly nodes?: number
}

/** What is to be known of a fit beside its numbers. */
export type FitWarning =
  /** A variance of random intercepts or slopes is estimated as zero: a result, not an error. */
  | { readonly kind: 'zero-variance'; readonly of: string }
  /** Slopes and intercepts of a grouping are estimated as one and the same, up to a factor: too few levels tell them apart. */
  | { readonly kind: 'perfect-correlation'; readonly of: string }
  | { readonly kind: 'no-overdispersion' }
  /** The chance of a zero of another origin is as good as none in every row; its coefficients say no more than that. */
  | { readonly kind: 'no-extra-zeros' }
  | { readonly kind: 'few-groups'; readonly of: string; readonly groups: number }
  /** log effort spans more than this many units: one row weighs hundreds of others. */
  | { readonly kind: 'wide-offset'; readonly span: number }

/** Coefficients of one linear predictor, on the columns as they came; an aliased column is left out, and its place holds 0. */
export interface Coefficients {
  readonly coefficients: Float64Array
  /** p by p, row major; rows and columns of aliased columns hold 0. */
  readonly covariance: Float64Array
  readonly standardErrors: Float64Array
  readonly aliased: readonly AliasedColumn[]
}

/** Random intercepts of one grouping, and its random slope, as estimated. */
export interface GroupEffects {
  readonly name: string
  /** Standard deviation of the intercepts, where a slope's covariate is 0 [linear predictor]. */
  readonly deviation: number
  /** Intercepts of the levels at their modes [linear predictor]. */
  readonly intercepts: Float64Array
  readonly slope: {
    readonly name: string
    readonly deviation: number
    /** Of intercepts and slopes; null where they are drawn apart, or one of them does not vary. */
    readonly correlation: number | null
    readonly slopes: Float64Array
  } | null
}

/** How a search went. */
export interface SearchHistory {
  /** Where it began, where it ended: parameters on the scale of the search. */
  readonly start: Float64Array
  readonly end: Float64Array
  /** Log likelihood at the start and after each step; a second search from the other side of a zero variance is told apart. */
  readonly steps: readonly number[]
  readonly again: readonly number[] | null
  readonly evaluations: number
}

/** A parameter, by what it is of. */
export type ParameterName =
  | { readonly kind: 'coefficient' | 'zero-coefficient'; readonly column: number }
  | { readonly kind: 'deviation' | 'slope-deviation' | 'slope-correlation'; readonly of: string }
  | { readonly kind: 'dispersion' }

/** Parameters along which the likelihood is flattest, the first foremost; weight in the direction of least curvature, -1 to 1. */
export interface Suspect {
  readonly parameter: ParameterName
  readonly weight: number
}

export interface FittedCountModel extends Coefficients {
  readonly kind: 'fitted'
  /** Of the chance of a zero of another origin; null where there is none. */
  readonly zeros: Coefficients | null
  readonly groups: readonly GroupEffects[]
  /** Standard deviation of the random intercepts of each grouping. */
  readonly deviations: readonly number[]
  /**
   * theta of NB2 (variance mu + mu^2 / theta; thousands, or Infinity, where none was found), phi of NB1 (variance mu (1 + phi)), a + b of the
   * beta-binomial (likewise); null without one.
   */
  readonly dispersion: number | null
  /** Linear predictor of each row, offset and modes of the random effects with it. */
  readonly predictor: Float64Array
  readonly logLikelihood: number
  /** Estimated parameters, variances and dispersion among them. */
  readonly parameters: number
  /** Of all parameters on the scale of the search; rows and columns of what was estimated as zero hold 0. */
  readonly searchCovariance: Float64Array
  readonly warnings: readonly FitWarning[]
  readonly history: SearchHistory
}

export type CountModelFit =
  | FittedCountModel
  | { readonly kind: 'all-zero' | 'all-trials' }
  /** Along these weights on the columns the likelihood rises for ever: a rate there cannot be told from zero. */
  | { readonly kind: 'separated'; readonly direction: Float64Array }
  | { readonly kind: 'not-converged'; readonly history: SearchHistory; readonly suspects: readonly Suspect[] }
  /** The likelihood is flat, or has no top, about this place. */
  | {
      readonly kind: 'not-identifiable'
      readonly coefficients: Float64Array
      readonly history: SearchHistory
      readonly suspects: readonly Suspect[]
    }
