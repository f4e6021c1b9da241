import { InputError, requireCount, requirePositive } from '@thrum/model/ground'
import { studentMultiplier } from '../distribution/student.ts'

/** How a contrast is laid out: whole units in equal arms, or both levels in every unit. */
export type Layout = 'between' | 'within'

/** Scatter and size of a contrast. */
export interface ContrastSize {
  readonly layout: Layout
  /** Independent units F, both arms together; of pairs, the number of pairs. */
  readonly units: number
  /** Columns of the fit, contrast and intercept included; pairs: 1 and its nuisances. */
  readonly columns: number
  /** Residual SD of the fit, at least 0. */
  readonly residualSd: number
  /** Two-sided level of the verdict, 0.95 unless said. */
  readonly level?: number
}

function requireScatter(residualSd: number): void {
  if (!(residualSd >= 0 && Number.isFinite(residualSd))) {
    throw new InputError('ground/input/out-of-range', `residualSd is ${residualSd}; expected a finite number of at least 0`)
  }
}

/**
 * Half-width of the interval of a contrast on the log scale: t 2 s / sqrt(F) between units in equal arms, t s / sqrt(F) for pairs.
 *
 * @returns Infinity when no degree of freedom is left
 * @throws InputError ground/input/out-of-range
 * @source Student's t interval for a balanced contrast; its use as a stopping width is ours (methods 2.8).
 * @check 8 units, 3 columns, s 0.156098: 0.283736; 16 units: 0.168615 (R 4.2.2 qt)
 */
export function halfWidthAt({ layout, units, columns, residualSd, level = 0.95 }: ContrastSize): number {
  requireCount('units', units, { min: 1 })
  requireCount('columns', columns, { min: 1 })
  requireScatter(residualSd)
  if (units - columns < 1) return Number.POSITIVE_INFINITY
  const spread = layout === 'between' ? 2 * residualSd : residualSd
  return (studentMultiplier(level, units - columns) * spread) / Math.sqrt(units)
}

/** How many units would make an interval short enough. */
export type UnitsNeeded =
  | { readonly kind: 'enough-now'; readonly halfWidth: number }
  | { readonly kind: 'more-units'; readonly units: number; readonly more: number; readonly halfWidth: number }
  /** Not by counting in units like these, up to the cap. */
  | { readonly kind: 'beyond-cap'; readonly cap: number }

/**
 * The smallest number of units, in whole steps of two per block (pairs: of one), whose interval is no wider than asked.
 *
 * Rests on the residual SD and never on the effect seen. The SD of few units is itself uncertain: say "about".
 *
 * @param size layout, units now, columns, residual SD and level
 * @param target greatest half-width on the log scale, such as ln(S) / 2
 * @param blocks number of blocks, 1 unless said
 * @param cap largest number of units worth naming (60: common practice, no source)
 * @throws InputError ground/input/out-of-range
 * @source Methods 2.8, rule ours.
 * @check 8 units in 2 blocks, 3 columns, s 0.156098, target ln(1.5) / 2: 16 units, half-width 0.168615 (R 4.2.2)
 */
export function unitsNeeded(size: ContrastSize, target: number, blocks = 1, cap = 60): UnitsNeeded {
  requirePositive('target', target)
  requireCount('blocks', blocks, { min: 1 })
  requireCount('cap', cap, { min: 1 })
  const now = halfWidthAt(size)
  if (now <= target) return { kind: 'enough-now', halfWidth: now }
  const step = size.layout === 'between' ? 2 * blocks : 1
  for (let units = size.units + step; units <= cap; units += step) {
    const halfWidth = halfWidthAt({ ...size, units })
    if (halfWidth <= target) return { kind: 'more-units', units, more: units - size.units, halfWidth }
  }
  return { kind: 'beyond-cap', cap }
}

/** Totals behind the z of a contrast. */
export interface CountedSize extends ContrastSize {
  /** Every total that entered a z: one per unit between units, two per unit within (each level's). */
  readonly totals: readonly number[]
}

/**
 * Residual SD and half-width if every total were `times` as large: counting noise shrinks, scatter between units stays.
 *
 * The counting noise of a log rate is about 1 / (Y + 1/2); of a difference, the sum over both levels.
 *
 * @param times how many times as many minutes, at least 1; Infinity for endless minutes
 * @throws InputError ground/input/out-of-range
 * @source Delta method; methods 2.8, rule ours.
 * @check totals 62, 88, 171, 140, 35, 51, 90, 122, s 0.156098, 3 columns, endless minutes: half-width 0.190516 (R 4.2.2)
 */
export function withMoreMinutes(size: CountedSize, times: number): { readonly residualSd: number; readonly halfWidth: number } {
  if (!(times >= 1)) throw new InputError('ground/input/out-of-range', `times is ${times}; expected a number of at least 1`)
  const { units, totals, layout } = size
  const expected = layout === 'between' ? units : 2 * units
  if (totals.length !== expected) {
    throw new InputError(
      'ground/input/lengths-differ',
      `${totals.length} totals; expected ${expected} for ${units} units ${layout}`,
    )
  }
  let noise = 0
  for (const total of totals) {
    requireCount('totals', total)
    noise += 1 / (total + 0.5) / units
  }
  requireScatter(size.residualSd)
  const residualSd = Math.sqrt(Math.max(0, size.residualSd ** 2 - (1 - 1 / times) * noise))
  return { residualSd, halfWidth: halfWidthAt({ ...size, residualSd }) }
}

/**
 * The half-width that no number of minutes in the same units would get below: `withMoreMinutes` without end.
 *
 * @throws InputError ground/input/out-of-range
 * @source Methods 2.8, rule ours.
 * @check as `withMoreMinutes`: 0.190516
 */
export function floorWithEndlessMinutes(size: CountedSize): { readonly residualSd: number; readonly halfWidth: number } {
  return withMoreMinutes(size, Number.POSITIVE_INFINITY)
}
