import type { Saying } from '@thrum/model/ground'
import type { FitFamily } from './asked.ts'
import type { FitRefusal } from './refusal.ts'
import type { LeftOut } from './rows-used.ts'

/** Limits of 95 %; null where there is none on that side. */
export interface Limits {
  readonly low: number | null
  readonly high: number | null
}

/** A coefficient on the linear predictor and, but for measured numbers, its exponential: a ratio of means, or of odds. */
export type ToldCoefficient =
  | {
      readonly kind: 'told'
      readonly label: Saying
      readonly estimate: number
      readonly se: number
      readonly df: number
      /** What it is told by, and of which grouping; null of rows. */
      readonly units: 'rows' | 'levels' | 'slopes'
      readonly by: string | null
      readonly p: number
      readonly limits: Limits
      /** Its value is null where it is beyond all numbers. */
      readonly ratio: { readonly value: number | null; readonly limits: Limits } | null
    }
  /** Other columns say the same, or it holds nothing but zeros. */
  | { readonly kind: 'set-aside'; readonly label: Saying; readonly equals: readonly Saying[] }
  /** Estimated, with a standard error that is none. */
  | { readonly kind: 'no-scatter'; readonly label: Saying; readonly estimate: number }

/** A mean of the model at a level; of counts for so much effort. */
export type ToldMean =
  | { readonly kind: 'mean'; readonly label: Saying; readonly value: number; readonly limits: Limits }
  | { readonly kind: 'no-scatter'; readonly label: Saying; readonly value: number }
  | { readonly kind: 'not-told'; readonly label: Saying }

/** A mean held against another: a ratio, a ratio of odds, or a difference. */
export type ToldPair =
  | {
      readonly kind: 'pair'
      readonly label: Saying
      readonly value: number
      readonly limits: Limits
      /** Limits that hold for all pairs of this comparison at once. */
      readonly simultaneous: Limits
      readonly p: number
      /** p after Holm, over all pairs of this comparison. */
      readonly holm: number
    }
  | { readonly kind: 'not-told'; readonly label: Saying }

export interface ToldComparison {
  readonly of: Saying
  readonly means: readonly ToldMean[]
  readonly meansDf: number
  readonly pairs: readonly ToldPair[]
  readonly pairsDf: number
  /** Columns of numbers, and where they are held. */
  readonly held: readonly Saying[]
  /** Half the width of the simultaneous limits in standard errors; null without a pair. */
  readonly multiplier: number | null
}

/** What varies beside the coefficients: its size, and what that means. */
export interface ToldScatter {
  readonly label: Saying
  readonly value: number | null
  readonly explained: Saying
}

/** A likelihood ratio: what is lost without a term or a grouping. */
export type ToldWithout =
  | {
      readonly kind: 'compared'
      readonly label: Saying
      readonly statistic: number
      readonly df: number
      readonly p: number
      readonly note: Saying | null
    }
  | { readonly kind: 'refused'; readonly label: Saying; readonly because: Saying }

export interface ToldCheck {
  readonly id: string
  readonly verdict: 'fine' | 'look' | 'suspect' | 'not-checked'
  readonly text: Saying
  readonly p: number | null
}

export interface ToldCaution {
  readonly id: string
  readonly severity: 'note' | 'warn'
  readonly text: Saying
  readonly cure: Saying | null
}

/** What was fitted, in sentences; it stands before a fit and before a refusal alike. */
export interface ToldAsked {
  readonly about: Saying
  readonly choices: readonly Saying[]
  readonly rows: { readonly used: number; readonly of: number; readonly leftOut: readonly LeftOut[] }
  readonly family: FitFamily
}

/** A model fitted to a table, told. Plain data: it can be printed as JSON. */
export interface TableFitted extends ToldAsked {
  readonly kind: 'fitted'
  readonly link: 'log' | 'logit' | 'identity'
  /** True where anything is drawn at random: means are then those of levels in the middle. */
  readonly isGrouped: boolean
  readonly intervals: 'wald' | 'profile' | 'bootstrap'
  readonly coefficients: readonly ToldCoefficient[]
  /** Of the chance of a zero of another origin; null where there is none. */
  readonly zeros: readonly ToldCoefficient[] | null
  readonly scatter: readonly ToldScatter[]
  readonly likelihood: {
    readonly logLikelihood: number
    readonly isRestricted: boolean
    readonly parameters: number
    readonly aic: number
    readonly aicc: number | null
  }
  readonly without: readonly ToldWithout[]
  readonly comparisons: readonly ToldComparison[]
  /** The effort that means refer to; null where they refer to none. */
  readonly per: Saying | null
  readonly checks: readonly ToldCheck[]
  readonly cautions: readonly ToldCaution[]
  readonly random: { readonly seed: string; readonly algorithm: string }
}

export type TableFit = TableFitted | (ToldAsked & FitRefusal)
