// What the product says to one data set of totals: its own functions, on arrays.

import { readVerdict, type VerdictRead } from '@thrum/questions'
import { type Contrast, contrastLimits, type Interval } from '@thrum/stats'
import { type Cell, type Design, fitFieldUnits, type Refusal } from '@thrum/survey'
import { refuseByTotals } from '../packages/survey/src/contrast/refusal.ts'
import { standingContrast } from '../packages/survey/src/contrast/thinned-pair.ts'
import { rateValues, unitsOf } from '../packages/survey/src/contrast/unit-values.ts'
import type { CalibrationCell } from './calibration-cells.ts'
import type { Place } from './calibration-draw.ts'

/** The design that a table of such counts would have. */
export function designOf({ layout, visits }: CalibrationCell, places: readonly Place[]): Design {
  const rows = places.length * visits
  const byVisit = (of: (place: Place) => number): Int32Array =>
    Int32Array.from({ length: rows }, (_, row) => of(places[Math.floor(row / visits)] as Place))
  const fields = [...new Map(places.map(({ field, arm }) => [field, arm]))]
  return {
    structure: layout,
    factor: null,
    levels: ['first', 'second'],
    since: null,
    measured: null,
    measure: 'time',
    unit: 'individuals',
    rows: Int32Array.from({ length: rows }, (_, row) => row),
    fieldOf: byVisit(({ field }) => field),
    levelOf: byVisit(({ arm, side }) => (layout === 'within-fields' ? side : arm)),
    periodOf: byVisit(({ side }) => (layout === 'before-after-control' ? side : 0)),
    effort: Float64Array.from({ length: rows }, (_, row) => (places[Math.floor(row / visits)] as Place).effort),
    effortKnown: true,
    minutes: new Float64Array(rows),
    fields: fields.map(([field, arm]) => ({
      name: `field ${field}`,
      index: field,
      block: 0,
      level: layout === 'within-fields' ? -1 : arm,
    })),
    blocks: ['all'],
    leftOut: [],
  }
}

/** What is said, and what the field-level t says that never refuses on numbers of insects. */
export interface Decision {
  readonly refusal: Refusal['because'] | null
  /** Null where even the t cannot be had. */
  readonly contrast: Contrast | null
  readonly plain: Contrast | null
}

/** The contrast of the second level with the first, and whether the product answers it. */
export function decide({ visits }: CalibrationCell, design: Design, places: readonly Place[], totals: Float64Array): Decision {
  const cells = places.map(
    ({ field, side, effort }, k): Cell => ({ field, side, total: totals[k] as number, effort: effort * visits, counts: visits }),
  )
  const units = unitsOf(design, rateValues(cells), 1)
  const fit = fitFieldUnits(units, 1, [])
  const byTotals = refuseByTotals(design, cells, 1, 'rates')
  if (fit.kind === 'fitted') {
    const plain = fit.contrast
    const contrast = byTotals === null ? standingContrast(design, cells, units, 1, [], plain).contrast : plain
    return { refusal: byTotals?.because ?? null, contrast, plain }
  }
  return { refusal: byTotals?.because ?? (fit.kind === 'no-scatter' ? 'no-scatter' : 'no-freedom'), contrast: null, plain: null }
}

/** Limits on the log at a level, each worked out once. */
export function limitsKept(contrast: Contrast): (level: number) => Interval {
  const known = new Map<number, Interval>()
  return (level) => {
    const before = known.get(level)
    if (before !== undefined) return before
    const limits = contrastLimits(contrast, level)
    known.set(level, limits)
    return limits
  }
}

/** The verdict on one contrast asked alone, after the last visit. */
export function verdictOf(
  contrast: Contrast,
  worth: number,
  limitsAt: (level: number) => Interval = (level) => contrastLimits(contrast, level),
): VerdictRead['verdict'] {
  const limits = (level: number) => {
    const { lower, upper } = limitsAt(level)
    return { ratio: Math.exp(contrast.estimate), lower: Math.exp(lower), upper: Math.exp(upper) }
  }
  return readVerdict({ limits, worth, contrasts: 1, early: false }).verdict
}

/** Limits on the log at 95 %. */
export function limitsOf(contrast: Contrast): Interval {
  return contrastLimits(contrast)
}
