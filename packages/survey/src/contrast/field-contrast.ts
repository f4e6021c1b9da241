import type { Snapshot } from '@thrum/model'
import { betweenUnits, type Contrast, contrastLimits, type UnitRefusal, withinUnits } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import type { Tangles } from '../nuisance/tangle.ts'
import { type AdjustedFor, nuisancesToEnter, type UnitNuisance } from './adjustment.ts'
import { type Cell, cellsOf } from './cells.ts'
import { flowersToEnter, logFlowers } from './flowers.ts'
import { leastFields, type Refusal, refuseByTotals } from './refusal.ts'
import { slopeContrast } from './slope.ts'
import { standingContrast } from './thinned-pair.ts'
import { type CellValue, oddsValues, rateValues, type Units, unitsOf } from './unit-values.ts'

/** One level against the reference, by the field-level t (methods 2.8). */
export interface PairContrast {
  readonly kind: 'estimated'
  /** Position of the level in the design's levels; the reference is 0. */
  readonly level: number
  /** Of logs: exp(estimate) is the ratio. Adjusted for what `adjusted` names. */
  readonly contrast: Contrast
  /** True where few insects or unequal exposures bend the field-level t, and thinning decides instead. */
  readonly isThinned: boolean
  /** The field-level t, adjusted for the same, whichever stands. */
  readonly fieldT: Contrast
  readonly unadjusted: Contrast
  /** Totals of the units; null of relative counts and of slopes. */
  readonly cells: readonly Cell[] | null
  readonly adjusted: readonly AdjustedFor[]
  /** Nuisances that should have entered and could not, for lack of degrees of freedom or of rank. */
  readonly notAdjusted: readonly { readonly name: AdjustedFor; readonly because: 'freedom' | 'rank' }[]
  readonly residualSd: number
  /** Columns of the fit, contrast and intercept included. */
  readonly columns: number
  readonly units: Units
  readonly nuisances: readonly UnitNuisance[]
  /** Of a rate per flower: whether the levels themselves differ in open flowers (95 % interval). */
  readonly flowersDiffer: boolean
}

export interface RefusedPair {
  readonly kind: 'refused'
  readonly level: number
  readonly refusal: Refusal
}

export interface FieldContrast {
  readonly pairs: readonly (PairContrast | RefusedPair)[]
  /** Totals by field and level, of the kind (and of the other kind, for a relative count). */
  readonly cells: readonly Cell[]
  readonly otherCells: readonly Cell[] | null
}

interface Fitted {
  readonly kind: 'fitted'
  readonly contrast: Contrast
  readonly residualSd: number
  readonly columns: number
}

/** A fit of units with the contrast that stands: the t, or the one by thinning. */
export interface StandingFit extends Fitted {
  readonly isThinned: boolean
  /** The field-level t, whichever stands. */
  readonly fieldT: Contrast
}

type NoFit = UnitRefusal | { readonly kind: 'one-level' }

/** The rule of methods 2.8 on given units and nuisance columns: between fields (or their differences), or pairs. */
export function fitFieldUnits(units: Units, level: number, nuisances: readonly UnitNuisance[]): Fitted | NoFit {
  const nuisance = nuisances.flatMap(({ columns }) => columns)
  if (units.layout === 'within') {
    const fit = withinUnits({ first: units.z.map(() => 0), second: units.z, nuisance })
    return fit.kind === 'fitted'
      ? { kind: 'fitted', contrast: fit.contrast, residualSd: fit.residualSd, columns: fit.columns }
      : fit
  }
  if (!units.level.includes(0) || !units.level.includes(level)) return { kind: 'one-level' }
  const fit = betweenUnits({ z: units.z, level: units.level, reference: 0, block: units.block, nuisance })
  if (fit.kind !== 'fitted') return fit.kind === 'one-level' ? { kind: 'one-level' } : fit
  const contrast = fit.contrasts.find((found) => found.level === level)
  return contrast === undefined
    ? { kind: 'one-level' }
    : { kind: 'fitted', contrast, residualSd: fit.residualSd, columns: fit.columns }
}

/**
 * `fitFieldUnits`, and where few insects or unequal exposures bend its t, the contrast by thinning.
 *
 * @param cells totals of the units; null of relative counts, whose t stands
 */
export function fitStanding(
  design: Design,
  cells: readonly Cell[] | null,
  units: Units,
  level: number,
  nuisances: readonly UnitNuisance[],
): StandingFit | NoFit {
  const fit = fitFieldUnits(units, level, nuisances)
  if (fit.kind !== 'fitted') return fit
  const standing =
    cells === null
      ? { contrast: fit.contrast, isThinned: false }
      : standingContrast(design, cells, units, level, nuisances, fit.contrast)
  return { ...fit, ...standing, fieldT: fit.contrast }
}

function refuseByFields(design: Design, units: Units, level: number): Refusal | null {
  if (units.layout === 'within') {
    return units.fields.length < leastFields ? { because: 'few-pairs', fields: units.fields.length } : null
  }
  for (const arm of [0, level]) {
    const fields = units.level.filter((own) => own === arm).length
    if (fields < leastFields) return { because: 'few-fields', level: design.levels[arm] ?? '', fields }
  }
  return null
}

function refusalOf(fit: NoFit): Refusal {
  if (fit.kind === 'no-freedom') return { because: 'no-freedom', df: fit.df }
  return fit.kind === 'no-scatter' ? { because: 'no-scatter' } : { because: 'lost' }
}

/** True where something told of the units differs between the two levels beyond its scatter (95 % interval). */
export function differsBetweenLevels(values: Float64Array | null, units: Units, level: number): boolean {
  if (values === null) return false
  const fit = fitFieldUnits({ ...units, z: [...values] }, level, [])
  if (fit.kind !== 'fitted') return false
  const { lower, upper } = contrastLimits(fit.contrast)
  return lower > 0 || upper < 0
}

function contrastOfPair(
  snapshot: Snapshot,
  design: Design,
  values: readonly CellValue[],
  rateCells: readonly Cell[] | null,
  tangles: Tangles,
  level: number,
): PairContrast | RefusedPair {
  const units = unitsOf(design, values, level)
  const tooFew = refuseByFields(design, units, level)
  if (tooFew !== null) return { kind: 'refused', level, refusal: tooFew }
  const plain = fitFieldUnits(units, level, [])
  if (plain.kind !== 'fitted') return { kind: 'refused', level, refusal: refusalOf(plain) }

  let fit: Fitted = plain
  const entered: UnitNuisance[] = []
  const notAdjusted: { name: AdjustedFor; because: 'freedom' | 'rank' }[] = []
  for (const nuisance of nuisancesToEnter(snapshot, design, units, tangles, level)) {
    const wider = fitFieldUnits(units, level, [...entered, nuisance])
    if (wider.kind === 'fitted') {
      fit = wider
      entered.push(nuisance)
    } else notAdjusted.push({ name: nuisance.name, because: wider.kind === 'aliased' ? 'rank' : 'freedom' })
  }
  const flowers = flowersToEnter(snapshot, design, units, level, entered)
  const withFlowers = flowers === null ? null : fitFieldUnits(units, level, [...entered, flowers])
  if (flowers !== null && withFlowers?.kind === 'fitted') {
    fit = withFlowers
    entered.push(flowers)
  }
  const standing = fitStanding(design, rateCells, units, level, entered)
  const unadjusted = fitStanding(design, rateCells, units, level, [])
  if (standing.kind !== 'fitted' || unadjusted.kind !== 'fitted') return { kind: 'refused', level, refusal: { because: 'lost' } }
  return {
    kind: 'estimated',
    level,
    flowersDiffer: design.measure === 'flower' && differsBetweenLevels(logFlowers(snapshot, design, units, level), units, level),
    contrast: standing.contrast,
    isThinned: standing.isThinned,
    fieldT: standing.fieldT,
    unadjusted: unadjusted.contrast,
    cells: rateCells,
    adjusted: entered.map(({ name }) => name),
    notAdjusted,
    residualSd: fit.residualSd,
    columns: fit.columns,
    units,
    nuisances: entered,
  }
}

/**
 * Every asked level against the reference, by the field-level t of methods 2.8: what decides a contrast of whole fields, of
 * levels within fields, and of before and after. Refused pairs carry the reason.
 *
 * @param tallies of the kind, for each count of the snapshot; NaN where it was not looked for
 * @param against tallies of another kind, for a relative count (methods 2.9a)
 */
export function fieldContrast(
  snapshot: Snapshot,
  design: Design,
  tangles: Tangles,
  tallies: Float64Array,
  against: Float64Array | null,
): FieldContrast {
  const both = (own: Float64Array, other: Float64Array): Float64Array =>
    own.map((value, row) => (Number.isNaN(other[row] ?? Number.NaN) ? Number.NaN : value))
  const cells = cellsOf(design, against === null ? tallies : both(tallies, against))
  const otherCells = against === null ? null : cellsOf(design, both(against, tallies))
  const values = otherCells === null ? rateValues(cells) : oddsValues(cells, otherCells)
  if (design.measured !== null) {
    return { pairs: [slopeContrast(snapshot, design, design.measured, tangles, tallies, cells, values)], cells, otherCells }
  }
  const pairs = design.levels.slice(1).map((_, k): PairContrast | RefusedPair => {
    const level = k + 1
    const pair = contrastOfPair(snapshot, design, values, otherCells === null ? cells : null, tangles, level)
    if (pair.kind === 'refused' && (pair.refusal.because === 'few-fields' || pair.refusal.because === 'few-pairs')) return pair
    const compared = otherCells === null ? 'rates' : 'relative-counts'
    const byTotals =
      refuseByTotals(design, cells, level, compared) ??
      (otherCells === null ? null : refuseByTotals(design, otherCells, level, compared))
    return byTotals === null ? pair : { kind: 'refused', level, refusal: byTotals }
  })
  return { pairs, cells, otherCells }
}
