import type { Snapshot } from '@thrum/model'
import type { Design } from '../design/design.ts'
import { isTooEven, meansOver, rangeOf, withinGroups } from '../nuisance/frame.ts'
import { type Nuisance, type NuisanceName, nuisancesOf } from '../nuisance/nuisance.ts'
import type { Tangles } from '../nuisance/tangle.ts'
import type { Units } from './unit-values.ts'

/** Inflation from which a nuisance enters the headline (methods 2.11). */
export const entersFrom = 1.5

/** What a headline may be adjusted for: a nuisance, or the open flowers of a rate per flower. */
export type AdjustedFor = NuisanceName | 'flowers'

/** A nuisance as columns over the units of a contrast. */
export interface UnitNuisance {
  readonly name: AdjustedFor
  readonly columns: readonly Float64Array[]
}

/** Effort-weighted mean of a column of the design over each field, in one of its sides or in all (null). */
function fieldMeans(design: Design, column: Float64Array, side: 0 | 1 | null, level: number): Float64Array {
  const inside = (k: number): boolean => {
    if (side === null) return true
    if (design.structure === 'within-fields') return design.levelOf[k] === (side === 0 ? 0 : level)
    return design.periodOf[k] === side
  }
  const seen = column.map((value, k) => (inside(k) ? value : Number.NaN))
  return meansOver(design.fields.length, design.fieldOf, design.effort, seen)
}

/**
 * A column of the design over the units of a contrast: means of fields, or differences of their sides, second less first.
 *
 * @param shape applied to each mean, before differences are taken
 * @returns null where some unit lacks it
 */
export function columnOverUnits(
  design: Design,
  units: Units,
  column: Float64Array,
  level: number,
  shape: (mean: number) => number = (mean) => mean,
): Float64Array | null {
  const at = (side: 0 | 1 | null): Float64Array => fieldMeans(design, column, side, level).map(shape)
  const whole = design.structure === 'between-fields' ? at(null) : at(1)
  const first = design.structure === 'between-fields' ? null : at(0)
  const found = Float64Array.from(
    units.fields,
    (field) => (whole[field] ?? Number.NaN) - (first === null ? 0 : (first[field] ?? Number.NaN)),
  )
  return found.some(Number.isNaN) ? null : found
}

/** The nuisance over the units; null where some unit lacks it. */
function overUnits(design: Design, units: Units, nuisance: Nuisance, level: number): UnitNuisance | null {
  if (nuisance.columns.length === 0) return null
  const columns = nuisance.columns.map((column) => columnOverUnits(design, units, column, level))
  return columns.every((column) => column !== null) ? { name: nuisance.name, columns } : null
}

/** How far a column of units can mislead: its range after blocks; for differences within fields, also its distance from 0. */
function reach(units: Units, column: Float64Array): number {
  if (units.layout === 'between') return rangeOf(withinGroups(Int32Array.from(units.block), column))
  return Math.max(rangeOf(column), ...Array.from(column, Math.abs))
}

/** The nuisances of a design, first the one that always enters, then by their inflation, greatest first. */
function inOrder(
  snapshot: Snapshot,
  design: Design,
  tangles: Tangles,
): readonly { readonly nuisance: Nuisance; readonly inflation: number; readonly isFirst: boolean }[] {
  const all = nuisancesOf(snapshot, design)
  const stageRecorded = (all.find(({ name }) => name === 'stage')?.recorded ?? 0) > 0
  const first: NuisanceName = stageRecorded ? 'stage' : 'date'
  return all
    .map((nuisance) => ({
      nuisance,
      inflation: tangles.found.find(({ nuisances }) => nuisances.length === 1 && nuisances[0] === nuisance.name)?.inflation ?? 1,
      isFirst: nuisance.name === first,
    }))
    .sort((a, b) => Number(b.isFirst) - Number(a.isFirst) || b.inflation - a.inflation)
}

/** The nuisance over the units, where it is recorded of each and varies between them; else null. */
function varyingOver(design: Design, units: Units, nuisance: Nuisance, level: number): UnitNuisance | null {
  const enters = overUnits(design, units, nuisance, level)
  const varies = (enters?.columns ?? []).some((column) => !isTooEven(reach(units, column), nuisance.even))
  return varies ? enters : null
}

/**
 * Nuisances in the order in which they enter the headline, by the design alone: bloom stage (date where no stage was
 * recorded) whenever it varies between units; then every other of inflation above 1.5, greatest first.
 */
export function nuisancesToEnter(
  snapshot: Snapshot,
  design: Design,
  units: Units,
  tangles: Tangles,
  level: number,
): readonly UnitNuisance[] {
  // What cannot enter is not laid over the units at all.
  return inOrder(snapshot, design, tangles)
    .filter(({ inflation, isFirst }) => isFirst || inflation > entersFrom)
    .flatMap(({ nuisance }) => varyingOver(design, units, nuisance, level) ?? [])
}

/**
 * Nuisances that vary between units and stay out of the headline because they are too little tangled with the level, the
 * most tangled first: a careful person might have entered one all the same.
 */
export function nuisancesLeftOut(
  snapshot: Snapshot,
  design: Design,
  units: Units,
  tangles: Tangles,
  level: number,
): readonly UnitNuisance[] {
  return inOrder(snapshot, design, tangles)
    .filter(({ inflation, isFirst }) => !isFirst && inflation <= entersFrom)
    .flatMap(({ nuisance }) => varyingOver(design, units, nuisance, level) ?? [])
}
