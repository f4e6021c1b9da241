import { InputError } from '@thrum/model/ground'

/** A correlation matrix taken apart as L L', L of m rows and `rank` columns, row major. */
export interface CorrelationFactor {
  readonly rank: number
  readonly rows: Float64Array
}

/** Of a variance of 1 less than this is left by the columns before: left out, it moves a simultaneous multiplier by less than 1e-4. */
const dust = 1e-8
/** Entries that should be equal, or 1, differ by no more than rounding. */
const rounding = 1e-8
/** As far below 0 a variance may come out by correlations of five digits, which large numbers in a covariance leave of sixteen. */
const belowZero = 1e-4

function requireCorrelation(correlation: Float64Array, m: number): void {
  if (correlation.length !== m * m)
    throw new InputError('ground/input/lengths-differ', `correlation has ${correlation.length} entries; expected ${m} by ${m}`)
  for (let i = 0; i < m; i++)
    for (let j = 0; j <= i; j++) {
      const value = correlation[i * m + j] as number
      const isSound = Math.abs(value - (correlation[j * m + i] as number)) <= rounding && Math.abs(value) <= 1 + rounding
      if (!isSound || (i === j && Math.abs(value - 1) > rounding))
        throw new InputError(
          'ground/input/out-of-range',
          `correlation holds ${value} in row ${i}, column ${j}; expected a correlation`,
        )
    }
}

/**
 * Cholesky factor with the largest remaining variance first; correlations that hang on each other give fewer columns than rows.
 *
 * @param correlation m by m, row major; it may be singular
 * @throws InputError when it is no correlation matrix
 * @source Higham N.J. (1990) in Reliable Numerical Computation, 161-185. From memory.
 * @check all entries 1: rank 1, a column of ones
 */
export function factorOfCorrelation(correlation: Float64Array, m: number): CorrelationFactor {
  requireCorrelation(correlation, m)
  const columns: Float64Array[] = []
  const left = new Float64Array(m).fill(1)
  while (columns.length < m) {
    const pivot = left.indexOf(left.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY))
    const variance = left[pivot] as number
    if (!(variance > dust)) break
    const root = Math.sqrt(variance)
    const column = new Float64Array(m)
    for (let i = 0; i < m; i++) {
      let rest = correlation[i * m + pivot] as number
      for (const before of columns) rest -= (before[i] as number) * (before[pivot] as number)
      column[i] = rest / root
    }
    for (let i = 0; i < m; i++) left[i] = (left[i] as number) - (column[i] as number) ** 2
    left[pivot] = 0
    columns.push(column)
  }
  if (left.some((value) => value < -belowZero))
    throw new InputError(
      'ground/input/out-of-range',
      'correlation is that of no variables: a sum of them would have a negative variance',
    )
  const rank = columns.length
  const rows = new Float64Array(m * rank)
  columns.forEach((column, k) => {
    for (let i = 0; i < m; i++) rows[i * rank + k] = column[i] as number
  })
  return { rank, rows }
}
