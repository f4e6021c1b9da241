import { leastSquares } from '../least-squares/least-squares.ts'
import { columnOf, type Matrix, matrixOfColumns } from '../least-squares/matrix.ts'
import type { Response } from './family/family.ts'

/** Of a linear predictor this much is rounding, beside the largest of it. */
const dust = 1e-9

/**
 * A combination of columns along which the likelihood rises for ever: it is 0 wherever something was counted, and never below 0,
 * or never above, where nothing was. A treatment under which nothing was ever seen is the usual case.
 *
 * Looks along each column that the rows with counts alone cannot tell from the others; a direction made of several such columns may
 * escape it, and is met after the fit as an estimate without limit.
 *
 * @returns weights on the columns, or null where nothing is separated
 * @source Correia S., Guimaraes P., Zylkin T. (2019) arXiv:1903.01633 (counts); Albert A., Anderson J.A. (1984) Biometrika 71, 1-10
 */
export function separatedDirection(design: Matrix, { counts, trials }: Response): Float64Array | null {
  const { rows: n, columns: p } = design
  const isBetween = (i: number): boolean =>
    (counts[i] as number) > 0 && (trials === null || (counts[i] as number) < (trials[i] as number))
  const between = Array.from({ length: n }, (_, i) => i).filter(isBetween)
  const columns = Array.from({ length: p }, (_, j) => columnOf(design, j))
  if (between.length === 0) return null
  const inner = matrixOfColumns(
    between.length,
    columns.map((column) => between.map((i) => column[i] as number)),
  )
  const known = new Set(leastSquares({ design, response: counts }).aliased.map(({ column }) => column))
  const { aliased } = leastSquares({ design: inner, response: between.map((i) => counts[i] as number) })
  for (const { column, equals } of aliased) {
    if (known.has(column)) continue
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
