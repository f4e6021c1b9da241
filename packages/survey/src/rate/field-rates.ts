import {
  expectedAtOneRate,
  type Interval,
  type MeanRate,
  meanOfRates,
  poissonDispersion,
  poissonInterval,
  ratioOfSums,
  type UnitRate,
} from '@thrum/stats'

/** Totals of one kind in one group of counts: by field, and watch by watch for the scatter. */
export interface RateData {
  /** For each field that holds counts: name, total, effort. */
  readonly fields: readonly { readonly name: string; readonly total: number; readonly effort: number; readonly counts: number }[]
  /** For each count: how many, and its effort. */
  readonly counts: readonly { readonly total: number; readonly effort: number }[]
}

/** Dispersion above which a pooled exact interval is warned of, and above which it is hidden (methods 2.1). */
export const dispersionWarned = 1.5
export const dispersionHidden = 3

export interface FieldRate {
  /** Rate over fields per unit of effort, with the scatter between fields; the headline where three fields or more stand. */
  readonly fields: UnitRate
  /** Plain mean of field rates, printed beside. */
  readonly mean: MeanRate
  /** Exact interval of the pooled counts: these watches only. */
  readonly pooled: { readonly total: number; readonly effort: number; readonly rate: number; readonly limits: Interval }
  /** Pearson dispersion of the watches; null with fewer than two of them or none counted. */
  readonly dispersion: number | null
}

/** Rate of a kind by methods 2.1a and 2.1. */
export function fieldRate(data: RateData, level = 0.95): FieldRate {
  const totals = data.fields.map(({ total }) => total)
  const efforts = data.fields.map(({ effort }) => effort)
  const total = totals.reduce((sum, value) => sum + value, 0)
  const effort = efforts.reduce((sum, value) => sum + value, 0)
  const limits = poissonInterval(total, level)
  return {
    fields: ratioOfSums({ totals, efforts, level }),
    mean: meanOfRates({ totals, efforts, level }),
    pooled: { total, effort, rate: total / effort, limits: { lower: limits.lower / effort, upper: limits.upper / effort } },
    dispersion: total > 0 ? dispersionOf(data) : null,
  }
}

function dispersionOf({ counts }: RateData): number | null {
  const totals = counts.map(({ total }) => total)
  const efforts = counts.map(({ effort }) => effort)
  const found = poissonDispersion(totals, expectedAtOneRate(totals, efforts))
  return found.kind === 'dispersion' ? found.dispersion : null
}
