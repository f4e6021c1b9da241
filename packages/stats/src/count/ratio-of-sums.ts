import { InputError, requireFinite, requireOpenUnit, requirePositive, requireSameLength } from '@thrum/model/ground'
import { studentMultiplier } from '../distribution/student.ts'
import { exp } from '../elementary.ts'
import type { Interval } from '../interval.ts'
import { poissonUpperLimit } from './poisson-interval.ts'

/** Totals of independent units and the effort behind each. */
export interface UnitTotals {
  /** Length F, each at least 0. */
  readonly totals: readonly number[]
  /** Length F, each above 0, in one unit. */
  readonly efforts: readonly number[]
  /** Two-sided coverage, 0.95 unless said. */
  readonly level?: number
}

/** A rate per unit of effort from several independent units, or why there is no interval for it. */
export type UnitRate =
  | {
      readonly kind: 'rate'
      readonly rate: number
      readonly se: number
      readonly limits: Interval
      readonly df: number
      readonly units: number
    }
  /** One or two units: their scatter cannot be told. The rate is theirs alone. */
  | { readonly kind: 'too-few-units'; readonly units: number; readonly rate: number }
  /** Nothing at all in `effort`: the two-sided upper limit of a Poisson count of 0 over the whole effort. */
  | { readonly kind: 'none'; readonly units: number; readonly effort: number; readonly upper: number }

/** Smallest number of units whose scatter is used. Methods 2.1a. */
const leastUnits = 3

function check({ totals, efforts, level = 0.95 }: UnitTotals): number {
  requireSameLength({ totals, efforts })
  requireOpenUnit('level', level)
  if (totals.length === 0) throw new InputError('ground/input/out-of-range', 'totals is empty; expected at least one unit')
  for (const total of totals) {
    if (!(total >= 0 && Number.isFinite(total))) {
      throw new InputError('ground/input/out-of-range', `totals holds ${total}; expected finite numbers of at least 0`)
    }
  }
  efforts.forEach((effort, f) => {
    requirePositive('efforts', effort)
    requireFinite('total over effort', (totals[f] ?? 0) / effort)
  })
  return level
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/**
 * Rate of several independent units as the ratio of their sums, with limits from the scatter between units.
 *
 * Units count by their effort: this is the rate per minute watched, not the mean of the units' rates. Limits lie on the log
 * scale, t with units - 1 degrees of freedom, so they never go below 0.
 *
 * @throws InputError ground/input/out-of-range, ground/input/lengths-differ
 * @source Cochran W.G. (1977) Sampling Techniques, 3rd ed., 6.4 (ratio estimate), on the log scale.
 * @check totals 30, 12, 25, 8, 40, 18 in 100, 100, 100, 80, 120, 100 min give 13.3 per hour, 8.427459 to 20.989719 (R 4.2.2)
 */
export function ratioOfSums(units: UnitTotals): UnitRate {
  const level = check(units)
  const { totals, efforts } = units
  const count = totals.length
  const effort = sum(efforts)
  const rate = sum(totals) / effort
  if (rate === 0) return { kind: 'none', units: count, effort, upper: poissonUpperLimit(0, 1 - (1 - level) / 2) / effort }
  if (count < leastUnits) return { kind: 'too-few-units', units: count, rate }
  const squares = sum(totals.map((total, f) => (total - rate * (efforts[f] ?? 0)) ** 2))
  const se = Math.sqrt((count / (count - 1)) * squares) / effort
  const reach = exp((studentMultiplier(level, count - 1) * se) / rate)
  return { kind: 'rate', rate, se, limits: { lower: rate / reach, upper: rate * reach }, df: count - 1, units: count }
}

/** The plain mean of the units' own rates with its t limits, to stand beside the ratio of sums. */
export type MeanRate =
  | {
      readonly kind: 'mean'
      readonly mean: number
      readonly se: number
      readonly limits: Interval
      readonly df: number
      readonly units: number
    }
  | { readonly kind: 'too-few-units'; readonly units: number; readonly mean: number }

/**
 * Plain mean of the units' rates, every unit counting once whatever its effort. Its lower limit can go below 0.
 *
 * For comparison with tables that hold it; the headline is `ratioOfSums`.
 *
 * @throws InputError ground/input/out-of-range, ground/input/lengths-differ
 * @source Student (1908) Biometrika 6, 1-25.
 * @check the data of `ratioOfSums` give 12.833333 per hour, 6.799063 to 18.867603 (R 4.2.2 t.test)
 */
export function meanOfRates(units: UnitTotals): MeanRate {
  const level = check(units)
  const rates = units.totals.map((total, f) => total / (units.efforts[f] ?? 1))
  const count = rates.length
  const mean = sum(rates) / count
  if (count < leastUnits) return { kind: 'too-few-units', units: count, mean }
  const squares = sum(rates.map((rate) => (rate - mean) ** 2))
  const se = Math.sqrt(squares / (count - 1) / count)
  const reach = studentMultiplier(level, count - 1) * se
  return { kind: 'mean', mean, se, limits: { lower: mean - reach, upper: mean + reach }, df: count - 1, units: count }
}
