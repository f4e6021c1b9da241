import type { Snapshot } from '@thrum/model'
import { type Contrast, type ContrastFit, logRate, type UnitRefusal, unitSlope, withinSlopes } from '@thrum/stats'
import type { Design, Measured } from '../design/design.ts'
import { stepLength } from '../factor/measured-factor.ts'
import { rangeOf, withinGroups } from '../nuisance/frame.ts'
import type { Tangles } from '../nuisance/tangle.ts'
import { columnOverUnits, nuisancesToEnter, type UnitNuisance } from './adjustment.ts'
import type { Cell } from './cells.ts'
import type { PairContrast, RefusedPair } from './field-contrast.ts'
import { leastFields, leastMeanTotal, type Refusal } from './refusal.ts'
import { type CellValue, type Units, unitsOf } from './unit-values.ts'

const perStep = ({ estimate, se, ...rest }: Contrast, length: number): Contrast => ({
  estimate: estimate * length,
  se: se * length,
  ...rest,
})

/** The refusals of a slope that hang on numbers: fields, zeros, insects. The halves need not both hold insects. */
function refuse(fields: number, cells: readonly Cell[]): Refusal | null {
  if (fields < leastFields) return { because: 'few-pairs', fields }
  const zeros = cells.filter(({ total }) => total === 0).length
  if (zeros * 2 > cells.length) return { because: 'mostly-zero', zeros, totals: cells.length }
  const mean = cells.reduce((sum, { total }) => sum + total, 0) / cells.length
  return mean < leastMeanTotal ? { because: 'few-insects', mean, least: leastMeanTotal } : null
}

const refusalOf = (fit: UnitRefusal): Refusal =>
  fit.kind === 'no-freedom'
    ? { because: 'no-freedom', df: fit.df }
    : fit.kind === 'no-scatter'
      ? { because: 'no-scatter' }
      : { because: 'lost' }

interface Slope {
  readonly fit: ContrastFit
  readonly plain: Contrast
  readonly entered: readonly UnitNuisance[]
  readonly notAdjusted: PairContrast['notAdjusted']
}

/** Between fields: least squares on blocks, nuisances and the measured level. */
function betweenSlope(
  snapshot: Snapshot,
  design: Design,
  measured: Measured,
  tangles: Tangles,
  units: Units,
): Slope | UnitRefusal {
  const value = [...(columnOverUnits(design, units, measured.values, 1) ?? [])]
  const fitWith = (entered: readonly UnitNuisance[]): ContrastFit | UnitRefusal =>
    unitSlope({ z: units.z, value, block: units.block, nuisance: entered.flatMap(({ columns }) => columns) })
  const plain = fitWith([])
  if (plain.kind !== 'fitted') return plain
  let fit = plain
  const entered: UnitNuisance[] = []
  const notAdjusted: { name: UnitNuisance['name']; because: 'freedom' | 'rank' }[] = []
  for (const nuisance of nuisancesToEnter(snapshot, design, units, tangles, 1)) {
    const wider = fitWith([...entered, nuisance])
    if (wider.kind === 'fitted') {
      fit = wider
      entered.push(nuisance)
    } else notAdjusted.push({ name: nuisance.name, because: wider.kind === 'aliased' ? 'rank' : 'freedom' })
  }
  return { fit, plain: plain.contrast, entered, notAdjusted }
}

/** Within fields: a least-squares slope for each field over its measured levels, then the one-sample t on the slopes. */
function withinSlope(design: Design, measured: Measured, tallies: Float64Array): Slope | UnitRefusal {
  const sums = new Map<string, { field: number; value: number; total: number; effort: number }>()
  for (let k = 0; k < design.rows.length; k++) {
    const total = tallies[design.rows[k] as number] as number
    if (Number.isNaN(total)) continue
    const [field, value] = [design.fieldOf[k] as number, measured.values[k] as number]
    const found = sums.get(`${field}\n${value}`) ?? { field, value, total: 0, effort: 0 }
    found.total += total
    found.effort += design.effort[k] as number
    sums.set(`${field}\n${value}`, found)
  }
  const list = [...sums.values()]
  const fit = withinSlopes({
    z: list.map(({ total, effort }) => logRate(total, effort)),
    value: list.map(({ value }) => value),
    unit: list.map(({ field }) => field),
  })
  return fit.kind === 'fitted' ? { fit, plain: fit.contrast, entered: [], notAdjusted: [] } : fit
}

/** A step may reach twice as far as the measured level ranges after blocks or fields, no further. Common practice, no source. */
const furthestReach = 2

/** How far the measured level ranges between fields of one block, or within fields. */
function rangeMeasured(design: Design, measured: Measured, units: Units): number {
  if (design.structure === 'within-fields') return rangeOf(withinGroups(design.fieldOf, measured.values))
  const values = columnOverUnits(design, units, measured.values, 1)
  return values === null ? 0 : rangeOf(withinGroups(Int32Array.from(units.block), values))
}

/** One slope per named step of a measured level (methods 2.8): between fields, or within them. */
export function slopeContrast(
  snapshot: Snapshot,
  design: Design,
  measured: Measured,
  tangles: Tangles,
  tallies: Float64Array,
  cells: readonly Cell[],
  values: readonly CellValue[],
): PairContrast | RefusedPair {
  const within = design.structure === 'within-fields'
  const units = unitsOf(design, values, 1)
  const length = stepLength(measured, measured.step)
  const isBeyond = Math.abs(length) > furthestReach * rangeMeasured(design, measured, units)
  const refusal =
    refuse(design.fields.length, cells) ?? (isBeyond ? ({ because: 'beyond-range', name: measured.name } as const) : null)
  if (refusal !== null) return { kind: 'refused', level: 1, refusal }
  const found = within ? withinSlope(design, measured, tallies) : betweenSlope(snapshot, design, measured, tangles, units)
  if ('kind' in found) return { kind: 'refused', level: 1, refusal: refusalOf(found) }
  return {
    kind: 'estimated',
    isThinned: false,
    cells: null,
    fieldT: perStep(found.fit.contrast, length),
    level: 1,
    flowersDiffer: false,
    contrast: perStep(found.fit.contrast, length),
    unadjusted: perStep(found.plain, length),
    adjusted: found.entered.map(({ name }) => name),
    notAdjusted: found.notAdjusted,
    residualSd: found.fit.residualSd,
    columns: found.fit.columns,
    units,
    nuisances: found.entered,
  }
}
