import type { Saying } from '../ground/index.ts'

/** Estimates with their intervals on one axis, and the band inside which a ratio is too small to act on. */
export interface IntervalsFigure {
  readonly kind: 'intervals'
  readonly title: Saying
  readonly unit: Saying
  readonly scale: 'linear' | 'log' | 'share'
  readonly band: { readonly low: number; readonly high: number } | null
  readonly rows: readonly {
    readonly label: Saying
    /** null: beyond all numbers; with neither limit: the row has no estimate, and its label says what it has. */
    readonly value: number | null
    /** null: no limit on that side. */
    readonly low: number | null
    readonly high: number | null
    readonly level: number
    readonly n: number
    readonly role: 'headline' | 'beside'
  }[]
  /** What the figure comes to, in sentences; absent where it speaks for itself. */
  readonly told?: readonly Saying[]
}

/** The raw counts behind a summary: one mark for each unit (a field, or a field at one level). */
export interface RatesFigure {
  readonly kind: 'rates-by-level'
  readonly title: Saying
  readonly unit: Saying
  readonly points: readonly {
    readonly field: string
    readonly level: string
    readonly kind: string
    readonly count: number
    readonly effort: number
    readonly rate: number
  }[]
}

/**
 * Where counts lie on a date or a bloom stage, a strip for each level: what may be tangled with what. Values are days since
 * 1 January 1970 (date), days since the first count of each season (season-day), BBCH codes, hours of the day or °C.
 */
export interface StripsFigure {
  readonly kind: 'strips'
  readonly title: Saying
  readonly axis: 'date' | 'season-day' | 'stage' | 'hour' | 'temperature'
  readonly strips: readonly { readonly level: string; readonly values: readonly number[] }[]
}

/** Figures are data, never drawings. One file in `report` draws each kind. */
export type Figure = IntervalsFigure | RatesFigure | StripsFigure
