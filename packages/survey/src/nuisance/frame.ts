import type { Design } from '../design/design.ts'
import type { Nuisance } from './nuisance.ts'

/**
 * The rows on which a contrast may be tangled with a nuisance (methods 2.11): fields, where the level is a field's; field by
 * period, before and after; the counts themselves, where the level changes between counts of one field.
 * Blocks or fields stand as `groupOf`: every column is told from the mean of its group, which equals a column for each group.
 */
export interface Frame {
  readonly rows: number
  readonly groupOf: Int32Array
  /** Position in the design's levels. */
  readonly levelOf: Int32Array
  /** 0 before, 1 after; all 0 where time does not divide. */
  readonly periodOf: Int32Array
  /** For each row of the design its row in the frame. */
  readonly frameRow: Int32Array
  /** Where counts that read alike stand as one row: how many they are, and one of them. Null: rows stand for themselves. */
  readonly alike: { readonly number: Float64Array; readonly one: Int32Array } | null
}

function fieldFrame(design: Design): Frame {
  return {
    rows: design.fields.length,
    groupOf: Int32Array.from(design.fields, ({ block }) => block),
    levelOf: Int32Array.from(design.fields, ({ level }) => level),
    periodOf: new Int32Array(design.fields.length),
    frameRow: design.fieldOf,
    alike: null,
  }
}

function periodFrame(design: Design): Frame {
  const rows = design.fields.length * 2
  return {
    rows,
    groupOf: Int32Array.from({ length: rows }, (_, k) => k >> 1),
    levelOf: Int32Array.from({ length: rows }, (_, k) =>
      design.structure === 'before-after' ? k & 1 : (design.fields[k >> 1]?.level ?? -1),
    ),
    periodOf: Int32Array.from({ length: rows }, (_, k) => k & 1),
    frameRow: design.fieldOf.map((field, row) => field * 2 + (design.periodOf[row] ?? 0)),
    alike: null,
  }
}

function countFrame(design: Design): Frame {
  return {
    rows: design.rows.length,
    groupOf: design.fieldOf,
    levelOf: design.levelOf,
    periodOf: new Int32Array(design.rows.length),
    frameRow: new Int32Array(design.rows.length).map((_, k) => k),
    alike: null,
  }
}

export function frameOf(design: Design): Frame {
  if (design.structure === 'between-fields') return fieldFrame(design)
  return design.structure === 'within-fields' ? countFrame(design) : periodFrame(design)
}

/** Effort-weighted mean of a column over the design's rows of each frame row; NaN where none has it recorded. */
export function meansOver(rows: number, frameRow: Int32Array, effort: Float64Array, column: Float64Array): Float64Array {
  const sums = new Float64Array(rows)
  const weights = new Float64Array(rows)
  for (let k = 0; k < column.length; k++) {
    const value = column[k] as number
    if (Number.isNaN(value)) continue
    const at = frameRow[k] as number
    sums[at] = (sums[at] as number) + value * (effort[k] as number)
    weights[at] = (weights[at] as number) + (effort[k] as number)
  }
  return sums.map((sum, at) => ((weights[at] as number) > 0 ? sum / (weights[at] as number) : Number.NaN))
}

/** A column of the design on a frame: effort-weighted means; of counts that read alike what they read. */
export function columnOnFrame({ rows, frameRow, alike }: Frame, effort: Float64Array, column: Float64Array): Float64Array {
  return alike === null ? meansOver(rows, frameRow, effort, column) : Float64Array.from(alike.one, (row) => column[row] as number)
}

/** A column told from the mean of its group, in which row k stands for `number[k]` rows (null: for one). */
export function withinGroups(groupOf: Int32Array, column: Float64Array, number: Float64Array | null = null): Float64Array {
  const groups = groupOf.reduce((most, group) => Math.max(most, group + 1), 0)
  const sums = new Float64Array(groups)
  const sizes = new Float64Array(groups)
  for (let k = 0; k < column.length; k++) {
    const group = groupOf[k] as number
    const size = number === null ? 1 : (number[k] as number)
    sums[group] = (sums[group] as number) + size * (column[k] as number)
    sizes[group] = (sizes[group] as number) + size
  }
  const means = sums.map((sum, group) => sum / (sizes[group] as number))
  // Once more, so that a day number near 20,000 leaves no dust of its own size.
  const first = column.map((value, k) => value - (means[groupOf[k] as number] as number))
  const rest = new Float64Array(groups)
  for (let k = 0; k < first.length; k++) {
    const size = number === null ? 1 : (number[k] as number)
    rest[groupOf[k] as number] = (rest[groupOf[k] as number] as number) + size * (first[k] as number)
  }
  return first.map((value, k) => value - (rest[groupOf[k] as number] as number) / (sizes[groupOf[k] as number] as number))
}

/** Range of a column, greatest less least; 0 for an empty one. */
export function rangeOf(column: Float64Array): number {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const value of column) {
    if (value < low) low = value
    if (value > high) high = value
  }
  return high >= low ? high - low : 0
}

/** True where a range is too small to mislead. Rounding of means does not decide at the limit itself. */
export const isTooEven = (range: number, even: number): boolean => range < even * (1 - 1e-9)

/** Range over fields of the change from before to after, told from the mean of their block. */
function spreadOfChanges(design: Design, means: Float64Array): number {
  const changes = Float64Array.from(design.fields, (_, k) => (means[2 * k + 1] ?? Number.NaN) - (means[2 * k] ?? Number.NaN))
  return rangeOf(
    withinGroups(
      Int32Array.from(design.fields, ({ block }) => block),
      changes,
    ),
  )
}

/**
 * Share of counts with a nuisance recorded from which those without are taken to be like their field's others, where the
 * counts themselves are the rows. Common practice, no source.
 */
const mostlyRecorded = 0.8

/** A column of counts with its gaps filled by the mean of their field; null where too much is missing. */
function filledWithinFields(frame: Frame, column: Float64Array): Float64Array | null {
  const number = frame.alike?.number ?? new Float64Array(column.length).fill(1)
  const all = number.reduce((sum, size) => sum + size, 0)
  const known = column.reduce((sum, value, k) => sum + (Number.isNaN(value) ? 0 : (number[k] as number)), 0)
  if (known === all) return column
  if (known < mostlyRecorded * all) return null
  const groups = frame.groupOf.reduce((most, group) => Math.max(most, group + 1), 0)
  const means = meansOver(groups, frame.groupOf, number, column)
  const filled = column.map((value, k) => (Number.isNaN(value) ? (means[frame.groupOf[k] as number] as number) : value))
  return filled.some(Number.isNaN) ? null : filled
}

/**
 * A nuisance's columns on the frame, means over counts, those too even to mislead dropped: as they are, and told from their
 * group. `null` where some row of the frame has nothing recorded, so that the nuisance cannot be checked.
 * With controls the spread is that of the fields' changes after blocks: what both arms share misleads nobody.
 */
export function nuisanceOnFrame(
  design: Design,
  frame: Frame,
  nuisance: Nuisance,
): { readonly means: readonly Float64Array[]; readonly told: readonly Float64Array[] } | null {
  const made: Float64Array[] = []
  for (const column of nuisance.columns) {
    const means = columnOnFrame(frame, design.effort, column)
    const whole = design.structure === 'within-fields' ? filledWithinFields(frame, means) : means
    if (whole === null || whole.some(Number.isNaN)) return null
    made.push(whole)
  }
  if (made.length === 0) return null
  const number = frame.alike?.number ?? null
  const both = made.map((means) => ({ means, told: withinGroups(frame.groupOf, means, number) }))
  const isTold = (own: { readonly means: Float64Array; readonly told: Float64Array }): boolean =>
    !isTooEven(
      design.structure === 'before-after-control' ? spreadOfChanges(design, own.means) : rangeOf(own.told),
      nuisance.even,
    )
  // An hour and its square are one curve: they stay or go together, by the hour.
  const first = both[0]
  const stay = nuisance.name === 'hour' && first !== undefined ? (isTold(first) ? both : []) : both.filter(isTold)
  return { means: stay.map(({ means }) => means), told: stay.map(({ told }) => told) }
}
