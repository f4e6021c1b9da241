// What the product says to one data set of totals: its own functions, on arrays.

import { readVerdict, type VerdictRead } from '@thrum/questions'
import { type Contrast, contrastLimits, ratioOfContrast } from '@thrum/stats'
import { type Cell, type Design, fitFieldUnits, type Refusal } from '@thrum/survey'
import { refuseByTotals } from '../packages/survey/src/contrast/refusal.ts'
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
}

/** The contrast of the second level with the first, and whether the product answers it. */
export function decide({ visits }: CalibrationCell, design: Design, places: readonly Place[], totals: Float64Array): Decision {
  const cells = places.map(
    ({ field, side, effort }, k): Cell => ({ field, side, total: totals[k] as number, effort: effort * visits, counts: visits }),
  )
  const fit = fitFieldUnits(unitsOf(design, rateValues(cells), 1), 1, [])
  const byTotals = refuseByTotals(design, cells, 1)
  if (fit.kind === 'fitted') return { refusal: byTotals?.because ?? null, contrast: fit.contrast }
  return { refusal: byTotals?.because ?? (fit.kind === 'no-scatter' ? 'no-scatter' : 'no-freedom'), contrast: null }
}

/** The verdict on one contrast asked alone, after the last visit. */
export function verdictOf(contrast: Contrast, worth: number): VerdictRead['verdict'] {
  const limits = (level: number) => ratioOfContrast(contrast, level)
  return readVerdict({ limits, worth, contrasts: 1, early: false }).verdict
}

/** Limits on the log at 95 %. */
export function limitsOf(contrast: Contrast): { readonly lower: number; readonly upper: number } {
  return contrastLimits(contrast)
}
