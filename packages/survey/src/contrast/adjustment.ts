import type { Snapshot } from '@thrum/model'
import type { Design } from '../design/design.ts'
import { isTooEven, meansOver, rangeOf, withinGroups } from '../nuisance/frame.ts'
import { type Nuisance, type NuisanceName, nuisancesOf } from '../nuisance/nuisance.ts'
import type { Tangles } from '../nuisance/tangle.ts'
import type { Units } from './unit-values.ts'

/** Inflation from which a nuisance enters the headline (methods 2.11). */
export const entersFrom = 1.5

/** A nuisance as columns over the units of a contrast. */
export interface UnitNuisance {
  readonly name: NuisanceName
  readonly columns: readonly Float64Array[]
}

/** For each field (and side) the effort-weighted means of the nuisance's columns. */
function fieldMeans(design: Design, nuisance: Nuisance, side: 0 | 1 | null, level: number): readonly Float64Array[] {
  const inside = (k: number): boolean => {
    if (side === null) return true
    if (design.structure === 'within-fields') return design.levelOf[k] === (side === 0 ? 0 : level)
    return design.periodOf[k] === side
  }
  return nuisance.columns.map((column) =>
    meansOver(
      design.fields.length,
      design.fieldOf,
      design.effort,
      column.map((value, k) => (inside(k) ? value : Number.NaN)),
    ),
  )
}

/** The nuisance over the units: field means between fields, differences of sides within; null where some unit lacks it. */
function overUnits(design: Design, units: Units, nuisance: Nuisance, level: number): UnitNuisance | null {
  if (nuisance.columns.length === 0) return null
  const means =
    design.structure === 'between-fields'
      ? fieldMeans(design, nuisance, null, level)
      : fieldMeans(design, nuisance, 1, level).map((second, c) => {
          const first = fieldMeans(design, nuisance, 0, level)[c] ?? new Float64Array()
          return second.map((value, field) => value - (first[field] ?? Number.NaN))
        })
  const columns = means.map((column) => Float64Array.from(units.fields, (field) => column[field] ?? Number.NaN))
  return columns.some((column) => column.some(Number.isNaN)) ? null : { name: nuisance.name, columns }
}

/** How far a column of units can mislead: its range after blocks; for differences within fields, also its distance from 0. */
function reach(units: Units, column: Float64Array): number {
  if (units.layout === 'between') return rangeOf(withinGroups(Int32Array.from(units.block), column))
  return Math.max(rangeOf(column), ...Array.from(column, Math.abs))
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
  const all = nuisancesOf(snapshot, design)
  const inflationOf = (name: NuisanceName): number =>
    tangles.found.find(({ nuisances }) => nuisances.length === 1 && nuisances[0] === name)?.inflation ?? 1
  const stageRecorded = (all.find(({ name }) => name === 'stage')?.recorded ?? 0) > 0
  const first: NuisanceName = stageRecorded ? 'stage' : 'date'
  const ordered = [...all].sort(
    (a, b) => Number(b.name === first) - Number(a.name === first) || inflationOf(b.name) - inflationOf(a.name),
  )
  return ordered.flatMap((nuisance) => {
    const enters = overUnits(design, units, nuisance, level)
    const columns = enters?.columns ?? []
    const varies =
      columns[0] !== undefined &&
      (nuisance.columns.length > 1 ? columns : [columns[0]]).some((column) => !isTooEven(reach(units, column), nuisance.even))
    if (enters === null || !varies) return []
    return nuisance.name === first || inflationOf(nuisance.name) > entersFrom ? [enters] : []
  })
}
