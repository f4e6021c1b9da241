import { InputError, requireCount, requireFinite } from '@thrum/model/ground'

/** Numbers in rows and columns, row major: the entry of row i and column j is `values[i * columns + j]`. */
export interface Matrix {
  readonly rows: number
  readonly columns: number
  readonly values: Float64Array
}

/**
 * A matrix from row-major values.
 *
 * @throws InputError when sizes disagree or a value is not finite
 */
export function matrixOfValues(rows: number, columns: number, values: Float64Array): Matrix {
  requireCount('rows', rows)
  requireCount('columns', columns)
  if (values.length !== rows * columns) {
    throw new InputError('ground/input/lengths-differ', `${values.length} values; expected ${rows} rows by ${columns} columns`)
  }
  for (const value of values) requireFinite('values', value)
  return { rows, columns, values }
}

/** A matrix from its rows, all of one length. */
export function matrixOfRows(rows: readonly ArrayLike<number>[]): Matrix {
  const columns = rows[0]?.length ?? 0
  const values = new Float64Array(rows.length * columns)
  rows.forEach((row, i) => {
    if (row.length !== columns)
      throw new InputError('ground/input/lengths-differ', `row ${i} has ${row.length} entries; expected ${columns}`)
    for (let j = 0; j < columns; j++) values[i * columns + j] = row[j] ?? 0
  })
  return matrixOfValues(rows.length, columns, values)
}

/** A matrix from its columns, each of length `rows`. */
export function matrixOfColumns(rows: number, columns: readonly ArrayLike<number>[]): Matrix {
  const values = new Float64Array(rows * columns.length)
  columns.forEach((column, j) => {
    if (column.length !== rows)
      throw new InputError('ground/input/lengths-differ', `column ${j} has ${column.length} entries; expected ${rows}`)
    for (let i = 0; i < rows; i++) values[i * columns.length + j] = column[i] ?? 0
  })
  return matrixOfValues(rows, columns.length, values)
}

/** One column, copied. */
export function columnOf(matrix: Matrix, column: number): Float64Array {
  const out = new Float64Array(matrix.rows)
  for (let i = 0; i < matrix.rows; i++) out[i] = matrix.values[i * matrix.columns + column] ?? 0
  return out
}
