import { columnOf, type Matrix } from './matrix.ts'

/** A design made fit for arithmetic: column j is (x_j - shift_j * x_0) / scale_j. */
export interface ScaledColumns {
  readonly columns: readonly Float64Array[]
  /** Multiples of column 0 taken off; all 0 unless column 0 is constant. */
  readonly shift: Float64Array
  /** Lengths of the shifted columns; 0 marks a column with nothing left. */
  readonly scale: Float64Array
}

/** What is left of a column after its mean counts as rounding when below this part of it: a few hundred units in the last place. */
const dust = 1e-13

/**
 * Centres and scales the columns of a design. Day numbers near 20,000 that span a week keep all their digits this way.
 *
 * Columns are centred only when column 0 is constant (an intercept), for then nothing changes but the intercept's meaning.
 */
export function scaleColumns(matrix: Matrix): ScaledColumns {
  const { columns: p } = matrix
  const shift = new Float64Array(p)
  const scale = new Float64Array(p)
  const columns: Float64Array[] = []
  const first = p > 0 ? columnOf(matrix, 0) : new Float64Array(0)
  const constant = first[0] ?? 0
  const centres = constant !== 0 && first.every((value) => value === constant)
  for (let j = 0; j < p; j++) {
    const column = columnOf(matrix, j)
    const before = norm(column)
    if (centres && j > 0) {
      const mean = meanOf(column)
      for (let i = 0; i < column.length; i++) column[i] = (column[i] ?? 0) - mean
      shift[j] = mean / constant
    }
    const length = norm(column)
    if (length > dust * before) {
      scale[j] = length
      for (let i = 0; i < column.length; i++) column[i] = (column[i] ?? 0) / length
    } else {
      column.fill(0)
    }
    columns.push(column)
  }
  return { columns, shift, scale }
}

/** Mean in two passes: the second takes up what the first one rounded away. */
function meanOf(values: Float64Array): number {
  let sum = 0
  for (const value of values) sum += value
  const mean = sum / values.length
  let rest = 0
  for (const value of values) rest += value - mean
  return mean + rest / values.length
}

/** Euclidean length, safe against overflow of the squares. */
export function norm(values: ArrayLike<number>): number {
  let greatest = 0
  for (let i = 0; i < values.length; i++) greatest = Math.max(greatest, Math.abs(values[i] ?? 0))
  if (greatest === 0) return 0
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += ((values[i] ?? 0) / greatest) ** 2
  return greatest * Math.sqrt(sum)
}
