import type { BinLabel } from './bins.ts'
import type { Standing } from './standing.ts'

/** What a check looks at. */
export type CheckSubject =
  | { readonly kind: 'uniformity' | 'dispersion' | 'zeros' | 'outliers' | 'time' | 'autocorrelation' }
  | { readonly kind: 'covariate'; readonly name: string }

/** What a line of a figure is of. */
export type ShownLabel =
  | BinLabel
  /** Rows whose residual lies between these. */
  | { readonly kind: 'quantiles'; readonly low: number; readonly high: number }
  /** Rows of which the fit expects between these. */
  | { readonly kind: 'means'; readonly low: number; readonly high: number }
  | { readonly kind: 'all-rows' }
  /** Visits of one field so many visits apart. */
  | { readonly kind: 'apart'; readonly visits: number }
  /** Rows above, or below, all draws. */
  | { readonly kind: 'beyond'; readonly side: 'above' | 'below' }

/** A line of a figure before it has its numbers. */
export interface ShownLine {
  readonly label: ShownLabel
  /** Rows it is made of; pairs of visits for a correlation. */
  readonly rows: number
}

/** What a check finds in counts and the fit to them. */
export interface Found {
  readonly statistic: number
  /** What the fit leads to expect of the statistic, scatter apart. */
  readonly fitted: number
  /** For each line: what was found, and what the fit leads to expect. */
  readonly found: readonly number[]
  readonly expected: readonly number[]
}

/** A check made ready for the rows of a model: the same look is taken at what was counted and at every drawn set. */
export interface Look {
  readonly subject: CheckSubject
  /** Which deviations count against the model. */
  readonly against: 'above' | 'both'
  /** How lines are set beside what is expected of them: as its multiple, or as they are. */
  readonly scale: 'ratio' | 'plain'
  readonly lines: readonly ShownLine[]
  at(standing: Standing): Found
}

/** Why a check could not be made. */
export type NotLooked =
  /** Fewer than 10 rows. */
  | 'few-rows'
  /** All values equal, one level only, or too few rows on either side. */
  | 'one-value'
  | 'no-dates'
  /** Fewer than 10 pairs of visits that follow one another in a field. */
  | 'few-pairs'
  /** Too few drawn sets could be fitted. */
  | 'few-refits'
