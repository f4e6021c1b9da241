import type { Snapshot } from '@thrum/model'
import { contrastLimits, unitSlope } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import { columnOverUnits, type UnitNuisance } from './adjustment.ts'
import type { Units } from './unit-values.ts'

const excludesZero = ({ lower, upper }: { readonly lower: number; readonly upper: number }): boolean => lower > 0 || upper < 0

/**
 * Log of open flowers over the units of a contrast per flower: flower-minutes over minutes, summed over each unit's counts.
 * With effort F * t as weights that is the mean of 1 / F, turned over.
 */
export function logFlowers(snapshot: Snapshot, design: Design, units: Units, level: number): Float64Array | null {
  const { flowers } = snapshot.tables.count.columns
  const perFlower = Float64Array.from(design.rows, (row) => 1 / (flowers.values[row] as number))
  return columnOverUnits(design, units, perFlower, level, (mean) => -Math.log(mean))
}

/**
 * Whether visitors rise with flowers in proportion, as a rate per flower takes for granted: the slope of the log count on
 * log flowers is estimated beside blocks, nuisances and level; if its 95 % interval excludes 1, flowers enter as a covariate
 * and not as an offset (product charter). On the log rate per flower that is a slope whose interval excludes 0, and the
 * contrast beside it is the same.
 *
 * @returns the covariate, or null where flowers stay an offset
 */
export function flowersToEnter(
  snapshot: Snapshot,
  design: Design,
  units: Units,
  level: number,
  entered: readonly UnitNuisance[],
): UnitNuisance | null {
  if (design.measure !== 'flower') return null
  const value = logFlowers(snapshot, design, units, level)
  if (value === null) return null
  const nuisance = entered.flatMap(({ columns }) => columns)
  const levels = [...new Set(units.level)].filter((own) => own !== 0)
  const slope =
    units.layout === 'within'
      ? unitSlope({ z: units.z, value: [...value], nuisance })
      : unitSlope({
          z: units.z,
          value: [...value],
          block: units.block,
          nuisance: [...nuisance, ...levels.map((own) => Float64Array.from(units.level, (code) => (code === own ? 1 : 0)))],
        })
  return slope.kind === 'fitted' && excludesZero(contrastLimits(slope.contrast)) ? { name: 'flowers', columns: [value] } : null
}
