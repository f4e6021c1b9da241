import { requireSameLength } from '@thrum/model/ground'
import type { Interval } from '../interval.ts'
import type { AliasedColumn } from '../least-squares/aliased.ts'
import { type ContrastInterval, contrastInterval } from '../least-squares/contrast-interval.ts'
import type { Columns } from '../least-squares/inflation.ts'
import { leastSquares } from '../least-squares/least-squares.ts'
import { matrixOfColumns } from '../least-squares/matrix.ts'

/** Fewest degrees of freedom that a contrast may rest on. Methods 2.8. */
export const leastFreedom = 2

/** One contrast with its t. Limits at any level come from `contrastLimits`. */
export interface Contrast {
  readonly estimate: number
  readonly se: number
  readonly df: number
  readonly t: number
  readonly p: number
  /** Limits at a level, on the scale of the estimate, where they are not estimate -/+ t se. */
  readonly limits?: (level: number) => Interval
}

/** What every fit of units carries. */
export interface UnitFit {
  readonly residualSd: number
  readonly df: number
  /** Independent units (rows) of the fit. */
  readonly units: number
  /** Columns that count: df = units - columns. */
  readonly columns: number
  /** Nuisance columns, by their place in the list given, that said nothing new and were left out. */
  readonly nuisanceLeftOut: readonly number[]
}

/** Why numbers alone forbid a contrast. */
export type UnitRefusal =
  /** Fewer than two degrees of freedom. */
  | { readonly kind: 'no-freedom'; readonly df: number; readonly units: number }
  /** A contrast cannot be told apart from blocks or nuisance: places in the list of contrasts. */
  | { readonly kind: 'aliased'; readonly contrasts: readonly number[] }
  /** All units say exactly the same: an estimate, and no scatter to judge it by. */
  | { readonly kind: 'no-scatter'; readonly estimates: readonly number[] }

/** Columns of a fit of units, in the order they are entered: base, nuisance, contrast. */
export interface UnitColumns {
  /** Intercept and blocks. */
  readonly base: Columns
  readonly nuisance: Columns
  readonly contrasts: Columns
}

/** Contrasts of units by least squares, with their common residual variance and pairwise differences. */
export interface UnitContrasts extends UnitFit {
  readonly kind: 'fitted'
  /** One per contrast column, in order. */
  readonly contrasts: readonly Contrast[]
  /** Difference of contrast columns: estimate of the one less the other, from the same residual variance. */
  readonly difference: (one: number, other: number) => Contrast
}

/**
 * Least squares of one number per unit on base, nuisance and contrast columns.
 *
 * Contrasts are entered last, so what they share with the others is never theirs.
 *
 * @param z one number per unit, length F
 * @throws InputError on lengths that differ or numbers that are not finite
 * @source Scheffe H. (1959) The Analysis of Variance, ch. 2.
 */
export function fitUnits(z: readonly number[], { base, nuisance, contrasts }: UnitColumns): UnitContrasts | UnitRefusal {
  const all = [...base, ...nuisance, ...contrasts]
  requireSameLength({ z, ...Object.fromEntries(all.map((column, j) => [`column ${j}`, column])) })
  const units = z.length
  if (units === 0) return { kind: 'no-freedom', df: 0, units }
  const fit = leastSquares({ design: matrixOfColumns(units, all), response: z })
  const firstContrast = base.length + nuisance.length
  const lost = fit.aliased.filter(({ column }) => column >= firstContrast)
  if (lost.length > 0) return { kind: 'aliased', contrasts: lost.map(({ column }) => column - firstContrast) }
  if (fit.df < leastFreedom || fit.kind === 'saturated') return { kind: 'no-freedom', df: fit.df, units }
  const estimates = contrasts.map((_, k) => fit.coefficients[firstContrast + k] ?? 0)
  if (fit.isExact) return { kind: 'no-scatter', estimates }

  const weigh = (places: readonly (readonly [number, number])[]): Contrast => {
    const weights = new Array<number>(all.length).fill(0)
    for (const [place, weight] of places) weights[firstContrast + place] = weight
    return contrastOf(contrastInterval(fit, weights))
  }
  return {
    kind: 'fitted',
    contrasts: contrasts.map((_, k) => weigh([[k, 1]])),
    difference: (one, other) =>
      weigh([
        [one, 1],
        [other, -1],
      ]),
    residualSd: fit.residualSd,
    df: fit.df,
    units,
    columns: fit.rank,
    nuisanceLeftOut: leftOut(fit.aliased, base.length),
  }
}

/** One contrast of units. */
export interface ContrastFit extends UnitFit {
  readonly kind: 'fitted'
  readonly contrast: Contrast
}

/** `fitUnits` for a single contrast column. */
export function fitOneContrast(z: readonly number[], columns: UnitColumns): ContrastFit | UnitRefusal {
  const fit = fitUnits(z, columns)
  if (fit.kind !== 'fitted') return fit
  const { contrasts, difference: _, ...rest } = fit
  const contrast = contrasts[0]
  if (contrast === undefined) throw new RangeError('a fit of one contrast column holds no contrast')
  return { ...rest, contrast }
}

function leftOut(aliased: readonly AliasedColumn[], baseLength: number): readonly number[] {
  return aliased.filter(({ column }) => column >= baseLength).map(({ column }) => column - baseLength)
}

function contrastOf(interval: ContrastInterval): Contrast {
  if (interval.kind !== 'contrast') throw new RangeError(`a fit with scatter and freedom gave ${interval.kind}`)
  const { estimate, se, df, t, p } = interval
  return { estimate, se, df, t, p }
}
