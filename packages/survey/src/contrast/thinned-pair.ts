import { baseColumns, type Contrast, indicatorColumns, type ThinnedCell, thinnedContrast } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import type { UnitNuisance } from './adjustment.ts'
import type { Cell } from './cells.ts'
import type { Units } from './unit-values.ts'

/**
 * From here on thinning decides: it moves the estimate by more than this part of its standard error, or its degrees of freedom are below
 * this part of those of the t. Found by the trial of calibration (docs/trials/calibration.md): below, the t covers what it should.
 */
const bentFrom = 0.05
const unlikeFrom = 0.65

/** Totals as cells of units, for the level against the reference; null where a total is no whole number. */
function thinnedCells(design: Design, cells: readonly Cell[], units: Units, level: number): readonly ThinnedCell[] | null {
  const unitOf = new Map(units.fields.map((field, unit) => [field, unit]))
  const found: ThinnedCell[] = []
  // Fields of another level are held against each other alone: a company for each block and level.
  const blocks = Math.max(0, ...units.block) + 1
  for (const { field, side, total, effort } of cells) {
    const unit = unitOf.get(field)
    if (unit === undefined) continue
    if (!Number.isInteger(total)) return null
    const block = units.block[unit] ?? 0
    const own = { unit, total, effort }
    if (design.structure === 'between-fields') {
      const isPart = side === 0 || side === level
      found.push({ ...own, sign: 1, isAsked: side === level, company: isPart ? block : blocks * (1 + side) + block })
    } else if (design.structure === 'within-fields') {
      if (side === 0 || side === level) found.push({ ...own, sign: side === 0 ? -1 : 1, isAsked: side === level, company: unit })
    } else if (design.structure === 'before-after-control') {
      const arm = units.level[unit]
      const isPart = arm === 0 || arm === level
      found.push({
        ...own,
        sign: side === 0 ? -1 : 1,
        isAsked: arm === level && side === 1,
        company: isPart ? block : blocks * (2 + (arm ?? 0)) + block,
      })
    } else {
      found.push({ ...own, sign: side === 0 ? -1 : 1, isAsked: side === 1, company: unit })
    }
  }
  return found
}

/**
 * The contrast that stands: the field-level t, or, where few insects or unequal exposures bend it, the contrast by thinning.
 *
 * @param cells totals of the kind, by field and side
 * @param contrast the field-level t on the same units, adjusted for the same nuisances
 */
export function standingContrast(
  design: Design,
  cells: readonly Cell[],
  units: Units,
  level: number,
  nuisances: readonly UnitNuisance[],
  contrast: Contrast,
): { readonly contrast: Contrast; readonly isThinned: boolean } {
  const own = thinnedCells(design, cells, units, level)
  const n = units.z.length
  const isPaired = units.layout === 'within'
  const asked = isPaired ? new Float64Array(n).fill(1) : Float64Array.from(units.level, (at) => Number(at === level))
  const others = [...new Set(units.level)].filter((at) => at > 0 && at !== level)
  const base = isPaired ? [] : [...baseColumns(n, units.block), ...indicatorColumns(units.level, others)]
  const columns = { base, nuisance: nuisances.flatMap((nuisance) => nuisance.columns), contrasts: [asked] }
  const thinned = own === null ? null : thinnedContrast({ cells: own, columns, isPaired })
  if (thinned === null) return { contrast, isThinned: false }
  const isBent = Math.abs(thinned.estimate - contrast.estimate) > bentFrom * contrast.se || thinned.df < unlikeFrom * contrast.df
  return isBent ? { contrast: thinned, isThinned: true } : { contrast, isThinned: false }
}
