import type { CountingUnit } from '@thrum/model'
import type { Factor } from '../factor/factor.ts'
import type { MeasuredScale } from '../factor/measured-factor.ts'

/** What effort is measured in: minutes; flower-minutes; square metre-minutes. */
export const measures = ['time', 'flower', 'area'] as const
export type Measure = (typeof measures)[number]

/** What is compared with what. */
export type Structure =
  /** Each field has one level: fields are compared. */
  | 'between-fields'
  /** Fields hold both levels: differences within fields are compared with 0. */
  | 'within-fields'
  /** Before and after one date, in the same fields, without control. */
  | 'before-after'
  /** Before and after one date, in fields of each level. */
  | 'before-after-control'

export interface DesignField {
  readonly name: string
  /** Position in the snapshot's fields. */
  readonly index: number
  /** Position in `blocks`. */
  readonly block: number
  /** Position in `levels`, for structures in which a field has one level; -1 where fields hold several. */
  readonly level: number
}

/** Counts that could not enter, and why. */
export interface LeftOut {
  readonly because:
    | 'no-field'
    | 'no-level'
    | 'level-not-asked'
    | 'no-date'
    | 'field-lacks-a-level'
    | 'field-holds-both-levels'
    | 'no-effort'
    | 'outside-window'
  readonly rows: readonly number[]
  readonly fields: readonly string[]
}

/** A measured level, whose slope per step is asked for; the levels of the design are then its lower and upper half. */
export interface Measured {
  readonly name: string
  readonly scale: MeasuredScale
  readonly step: number
  /** For each row of the design the number as it enters. */
  readonly values: Float64Array
}

/**
 * Rows by factors, effort and clusters: what an audit and an analysis see of a project. Counts are not in it, so that the
 * audit cannot look at them.
 */
export interface Design {
  readonly structure: Structure
  readonly factor: Factor | null
  /** Levels asked, the reference first. For before and after: "before", "after". */
  readonly levels: readonly string[]
  /** Day on which "after" begins; null where time is not what divides. */
  readonly since: number | null
  /** Null where levels are compared. */
  readonly measured: Measured | null
  readonly measure: Measure
  readonly unit: CountingUnit | null
  /** Rows of the snapshot's counts. */
  readonly rows: Int32Array
  /** For each of those rows: its field in `fields`, its level in `levels`, its period (0 before, 1 after; 0 where there is none). */
  readonly fieldOf: Int32Array
  readonly levelOf: Int32Array
  readonly periodOf: Int32Array
  /** Effort of each row in the design's measure; always above 0. */
  readonly effort: Float64Array
  /** False where some effort is not known, and none is needed: then every row weighs 1, and no rate can be told. */
  readonly effortKnown: boolean
  /** Watched minutes of each row (NaN where only scans are counted). */
  readonly minutes: Float64Array
  readonly fields: readonly DesignField[]
  readonly blocks: readonly string[]
  readonly leftOut: readonly LeftOut[]
}
