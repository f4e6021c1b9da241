import { InputError, requireCount, requirePositive } from '@thrum/model/ground'
import { studentMultiplier } from '../distribution/student.ts'

/** How exact a contrast of independent units is now. */
export interface ContrastSize {
  /** Independent units F of the fit, all arms together; of pairs, the number of pairs. */
  readonly units: number
  /** Columns of the fit, contrast and intercept included; pairs: 1 and its nuisances. */
  readonly columns: number
  /** Residual SD of the fit, at least 0. */
  readonly residualSd: number
  /** Standard error of the contrast in that fit, at least 0: unequal arms and nuisances are in it. */
  readonly se: number
  /** Two-sided level of the verdict, 0.95 unless said. */
  readonly level?: number
}

function requireScatter(name: 'residualSd' | 'se', value: number): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new InputError('ground/input/out-of-range', `${name} is ${value}; expected a finite number of at least 0`)
  }
}

/**
 * Half-width of the interval of a contrast on the log scale: now, or with more units of the same kind in the same proportions,
 * t(units - columns) se sqrt(F / units). In equal arms without nuisances that is t 2 s / sqrt(units), for pairs t s / sqrt(units).
 *
 * @param units how many units there would be, as many as now unless said
 * @returns Infinity when no degree of freedom is left
 * @throws InputError ground/input/out-of-range
 * @source Student's t interval; its use as a stopping width, and the scaling by the standard error found, are ours (methods 2.8).
 * @check 8 units in equal arms, 3 columns, s 0.156098: 0.283736; 16 units: 0.168615 (R 4.2.2 qt)
 */
export function halfWidthAt({ units: now, columns, se, level = 0.95 }: ContrastSize, units = now): number {
  requireCount('units', now, { min: 1 })
  requireCount('units', units, { min: 1 })
  requireCount('columns', columns, { min: 1 })
  requireScatter('se', se)
  if (units - columns < 1) return Number.POSITIVE_INFINITY
  return studentMultiplier(level, units - columns) * se * Math.sqrt(now / units)
}

/** How many units would make an interval short enough. */
export type UnitsNeeded =
  | { readonly kind: 'enough-now'; readonly halfWidth: number }
  | { readonly kind: 'more-units'; readonly units: number; readonly more: number; readonly halfWidth: number }
  /** Not by counting in units like these, up to the cap. */
  | { readonly kind: 'beyond-cap'; readonly cap: number }

/**
 * The smallest number of units, in whole steps, whose interval is no wider than asked.
 *
 * Rests on the scatter and never on the effect seen. The SD of few units is itself uncertain: say "about".
 *
 * @param size units now, columns, scatter and level
 * @param target greatest half-width on the log scale, such as ln(S) / 2
 * @param step units added at a time: one a level and block, of pairs 1
 * @param cap largest number of units worth naming (60: common practice, no source)
 * @throws InputError ground/input/out-of-range
 * @source Methods 2.8, rule ours.
 * @check 8 units in 2 blocks, 3 columns, s 0.156098, target ln(1.5) / 2, step 4: 16 units, half-width 0.168615 (R 4.2.2)
 */
export function unitsNeeded(size: ContrastSize, target: number, step = 1, cap = 60): UnitsNeeded {
  requirePositive('target', target)
  requireCount('step', step, { min: 1 })
  requireCount('cap', cap, { min: 1 })
  const now = halfWidthAt(size)
  if (now <= target) return { kind: 'enough-now', halfWidth: now }
  for (let units = size.units + step; units <= cap; units += step) {
    const halfWidth = halfWidthAt(size, units)
    if (halfWidth <= target) return { kind: 'more-units', units, more: units - size.units, halfWidth }
  }
  return { kind: 'beyond-cap', cap }
}

/** Totals behind the z of a contrast. */
export interface CountedSize extends ContrastSize {
  /** Every total that entered a z, equally many for each unit: one of a rate, two where a unit's z is a difference of rates. */
  readonly totals: readonly number[]
}

/**
 * Residual SD and half-width if every total were `times` as large: counting noise shrinks, scatter between units stays.
 *
 * The counting noise of a log rate is about 1 / (Y + 1/2); of a difference, the sum over both rates.
 *
 * @param times how many times as many minutes, at least 1; Infinity for endless minutes
 * @throws InputError ground/input/out-of-range, ground/input/lengths-differ
 * @source Delta method; methods 2.8, rule ours.
 * @check totals 62, 88, 171, 140, 35, 51, 90, 122, s 0.156098, 3 columns, endless minutes: half-width 0.190516 (R 4.2.2)
 */
export function withMoreMinutes(size: CountedSize, times: number): { readonly residualSd: number; readonly halfWidth: number } {
  if (!(times >= 1)) throw new InputError('ground/input/out-of-range', `times is ${times}; expected a number of at least 1`)
  const { units, totals } = size
  if (totals.length === 0 || totals.length % units !== 0) {
    throw new InputError(
      'ground/input/lengths-differ',
      `${totals.length} totals; expected equally many for each of ${units} units`,
    )
  }
  let noise = 0
  for (const total of totals) {
    requireCount('totals', total)
    noise += 1 / (total + 0.5) / units
  }
  requireScatter('residualSd', size.residualSd)
  const residualSd = Math.sqrt(Math.max(0, size.residualSd ** 2 - (1 - 1 / times) * noise))
  const se = size.residualSd === 0 ? 0 : size.se * (residualSd / size.residualSd)
  return { residualSd, halfWidth: halfWidthAt({ ...size, se }) }
}

/**
 * The half-width that no number of minutes in the same units would get below: `withMoreMinutes` without end.
 *
 * @throws InputError ground/input/out-of-range, ground/input/lengths-differ
 * @source Methods 2.8, rule ours.
 * @check as `withMoreMinutes`: 0.190516
 */
export function floorWithEndlessMinutes(size: CountedSize): { readonly residualSd: number; readonly halfWidth: number } {
  return withMoreMinutes(size, Number.POSITIVE_INFINITY)
}
