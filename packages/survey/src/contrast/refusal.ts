import type { Design } from '../design/design.ts'
import type { Cell } from './cells.ts'

/** Fewest fields in a level, or fewest fields that hold both (methods 2.8). */
export const leastFields = 3
/** Least mean total over (field, level) for which the half in the logs is harmless; computed, methods 1.6 and 2.8. */
export const leastMeanTotal = 2.5

/** Why a contrast of fields is not answered: the fields are described instead. */
export type Refusal =
  | { readonly because: 'few-fields'; readonly level: string; readonly fields: number }
  | { readonly because: 'few-pairs'; readonly fields: number }
  | { readonly because: 'no-freedom'; readonly df: number }
  | { readonly because: 'lost' }
  | { readonly because: 'no-scatter' }
  | { readonly because: 'level-without-insects'; readonly level: string }
  | { readonly because: 'mostly-zero'; readonly zeros: number; readonly totals: number }
  | { readonly because: 'few-in-level'; readonly level: string; readonly insects: number; readonly least: number }
  /** Mean by field and level; before and after with controls: in the poorest of the four groups. */
  | { readonly because: 'few-insects'; readonly mean: number; readonly least: number }
  /** A step so long that the slope would be carried far beyond what was measured. */
  | { readonly because: 'beyond-range'; readonly name: string }

/** Cells of the two levels compared: in before/after with controls, a field's own level decides. */
export function cellsOfPair(design: Design, cells: readonly Cell[], level: number): readonly (Cell & { readonly arm: number })[] {
  return cells
    .map((cell) => ({
      ...cell,
      arm: design.structure === 'before-after-control' ? (design.fields[cell.field]?.level ?? -1) : cell.side,
    }))
    .filter(({ arm }) => arm === 0 || arm === level)
}

/** What is compared: totals of a kind, which may be thinned to equal exposure, or the logs of two kinds' totals, which bend with few. */
export type Compared = 'rates' | 'relative-counts'

/**
 * Before and after with controls compares four groups of totals; where the poorest holds fewer than this in the mean, differences of so few
 * are too lopsided for a t. Found by the trial of calibration (docs/trials/calibration.md).
 */
export const leastPoorestMean = 1.5
/** From so many fields a group on: with fewer the t is wide enough to bear it. */
export const poorestFromFields = 6

/** The least mean total among treated and controls, before and after, of groups with fields enough. */
function poorestMean(pair: readonly (Cell & { readonly arm: number })[]): number {
  const groups = new Map<string, { sum: number; cells: number }>()
  for (const { arm, side, total } of pair) {
    const group = groups.get(`${arm}/${side}`) ?? { sum: 0, cells: 0 }
    groups.set(`${arm}/${side}`, { sum: group.sum + total, cells: group.cells + 1 })
  }
  const large = [...groups.values()].filter(({ cells }) => cells >= poorestFromFields)
  return Math.min(...large.map(({ sum, cells }) => sum / cells))
}

/** A level with fewer insects than this in all its fields has no rate to speak of; found by the same trial. */
export const leastInsects = 5

/** The refusals that hang on numbers of insects (methods 2.8). Few insects are no hindrance to rates: thinning takes them as they are. */
export function refuseByTotals(design: Design, cells: readonly Cell[], level: number, compared: Compared): Refusal | null {
  const pair = cellsOfPair(design, cells, level)
  for (const arm of [0, level]) {
    if (pair.every((cell) => cell.arm !== arm || cell.total === 0)) {
      return { because: 'level-without-insects', level: design.levels[arm] ?? '' }
    }
  }
  if (compared === 'rates') {
    for (const arm of [0, level]) {
      const insects = pair.reduce((sum, cell) => sum + (cell.arm === arm ? cell.total : 0), 0)
      if (insects < leastInsects)
        return { because: 'few-in-level', level: design.levels[arm] ?? '', insects, least: leastInsects }
    }
    const poorest = design.structure === 'before-after-control' ? poorestMean(pair) : Number.POSITIVE_INFINITY
    return poorest < leastPoorestMean ? { because: 'few-insects', mean: poorest, least: leastPoorestMean } : null
  }
  const zeros = pair.filter(({ total }) => total === 0).length
  if (zeros * 2 > pair.length) return { because: 'mostly-zero', zeros, totals: pair.length }
  const mean = pair.reduce((sum, { total }) => sum + total, 0) / pair.length
  return mean < leastMeanTotal ? { because: 'few-insects', mean, least: leastMeanTotal } : null
}
