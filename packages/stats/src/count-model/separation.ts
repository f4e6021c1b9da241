import { type AliasedColumn, aliasedIn } from '../least-squares/aliased.ts'
import { rankTolerance } from '../least-squares/least-squares.ts'
import { columnOf, type Matrix, matrixOfValues } from '../least-squares/matrix.ts'
import { scaleColumns } from '../least-squares/scaled-columns.ts'
import type { Response } from './family/family.ts'

/** Of a linear predictor this much is rounding, beside the largest of it. */
const dust = 1e-9

/** The rows in which something was counted, and not everything. */
function rowsBetween(design: Matrix, { counts, trials }: Response): Matrix {
  const { rows: n, columns: p, values } = design
  const out = new Float64Array(n * p)
  let rows = 0
  for (let i = 0; i < n; i++) {
    const count = counts[i] as number
    if (count === 0 || (trials !== null && count === trials[i])) continue
    for (let j = 0; j < p; j++) out[rows * p + j] = values[i * p + j] as number
    rows++
  }
  return matrixOfValues(rows, p, out.subarray(0, rows * p))
}

/**
 * A combination of columns along which the likelihood rises for ever: it is 0 wherever something was counted, and never below 0,
 * or never above, where nothing was. A treatment under which nothing was ever seen is the usual case.
 *
 * Looks along each column that the rows with counts alone cannot tell from the others; a direction made of several such columns may
 * escape it, and is met after the fit as an estimate without limit.
 *
 * @param aliasedAtAll columns that say nothing new in all rows
 * @returns weights on the columns, or null where nothing is separated
 * @source Correia S., Guimaraes P., Zylkin T. (2019) arXiv:1903.01633 (counts); Albert A., Anderson J.A. (1984) Biometrika 71, 1-10
 */
export function separatedDirection(
  design: Matrix,
  aliasedAtAll: readonly AliasedColumn[],
  response: Response,
): Float64Array | null {
  const { rows: n, columns: p } = design
  const { counts, trials } = response
  const between = rowsBetween(design, response)
  if (between.rows === 0) return null
  const known = new Set(aliasedAtAll.map(({ column }) => column))
  const aliased = aliasedIn(scaleColumns(between), rankTolerance).filter(({ column }) => !known.has(column))
  if (aliased.length === 0) return null
  const columns = Array.from({ length: p }, (_, j) => columnOf(design, j))
  for (const { column, equals } of aliased) {
    const direction = new Float64Array(p)
    direction[column] = 1
    for (const { column: other, weight } of equals) direction[other] = (direction[other] as number) - weight
    const along = Array.from({ length: n }, (_, i) =>
      columns.reduce((sum, values, j) => sum + (direction[j] as number) * (values[i] as number), 0),
    )
    const largest = along.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
    // Where nothing was counted it may go down, where everything was it may go up.
    const pulls = along.flatMap((value, i) =>
      Math.abs(value) <= dust * largest ? [] : [trials !== null && counts[i] === trials[i] ? value : -value],
    )
    if (pulls.every((value) => value > 0)) return direction
    if (pulls.every((value) => value < 0)) return direction.map((value) => -value)
  }
  return null
}
