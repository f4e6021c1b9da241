import { requireSameLength } from '@thrum/model/ground'
import type { Columns } from '../least-squares/inflation.ts'
import { leastSquares } from '../least-squares/least-squares.ts'
import { matrixOfColumns } from '../least-squares/matrix.ts'
import { codesOf } from './between-units.ts'
import { type ContrastFit, fitOneContrast, type UnitRefusal } from './unit-fit.ts'

/** Units that hold both levels. */
export interface WithinUnits {
  /** z of each unit at the first level; length F. */
  readonly first: readonly number[]
  /** z of each unit at the second level; length F. */
  readonly second: readonly number[]
  /** Nuisance columns as differences, second less first; each of length F. */
  readonly nuisance?: Columns
}

/** Second less first for every unit. */
export function unitDifferences(first: readonly number[], second: readonly number[]): readonly number[] {
  requireSameLength({ first, second })
  return second.map((z, f) => z - (first[f] ?? 0))
}

/**
 * Contrast of two levels within units: the one-sample t on the differences, second less first.
 *
 * With nuisance differences, the contrast is what is left at no difference in them. For before and after between treated and
 * control units hand `unitDifferences` to `betweenUnits` instead.
 *
 * @throws InputError on lengths that differ or numbers not finite
 * @source Student (1908) Biometrika 6, 1-25.
 * @check 52, 38, 61, 44, 30 in 100, 100, 100, 90, 100 and 40, 31, 49, 42, 16 in 100, 100, 90, 100, 100: ratio 0.765275,
 *   0.595788 to 0.982977, t -2.966855, df 4, p 0.041273 (R 4.2.2 t.test)
 */
export function withinUnits({ first, second, nuisance = [] }: WithinUnits): ContrastFit | UnitRefusal {
  const d = unitDifferences(first, second)
  return fitOneContrast(d, { base: [], nuisance, contrasts: [new Float64Array(d.length).fill(1)] })
}

/** Several readings per unit of a measured level. */
export interface WithinSlopes {
  /** One number per reading; length n. */
  readonly z: readonly number[]
  /** Measured level of each reading; length n. */
  readonly value: readonly number[]
  /** Unit code of each reading, whole numbers from 0; length n. */
  readonly unit: readonly number[]
}

/** As a one-sample t; units whose level does not vary have no slope and are named. */
export type SlopesFit = (ContrastFit | UnitRefusal) & { readonly withoutSlope: readonly number[] }

/**
 * Slope on a measured level within units: a least-squares slope for every unit, then the one-sample t on the slopes.
 *
 * @throws InputError on lengths that differ, codes that are not whole, numbers not finite
 * @source Two-stage analysis of repeated readings: Matthews J.N.S. et al. (1990) BMJ 300, 230-235.
 * @check slopes 1, 2, 3 of three units give 2, se 0.577350, df 2
 */
export function withinSlopes({ z, value, unit }: WithinSlopes): SlopesFit {
  requireSameLength({ z, value, unit })
  const slopes: number[] = []
  const withoutSlope: number[] = []
  for (const code of codesOf(unit)) {
    const rows = [...unit.keys()].filter((i) => unit[i] === code)
    const own = rows.map((i) => value[i] ?? 0)
    const design = matrixOfColumns(rows.length, [new Float64Array(rows.length).fill(1), own])
    const fit = leastSquares({ design, response: rows.map((i) => z[i] ?? 0) })
    if (fit.aliased.length > 0) withoutSlope.push(code)
    else slopes.push(fit.coefficients[1] ?? 0)
  }
  return {
    ...fitOneContrast(slopes, { base: [], nuisance: [], contrasts: [new Float64Array(slopes.length).fill(1)] }),
    withoutSlope,
  }
}
