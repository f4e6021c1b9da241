import { type Factors, factorise, solveUpper } from './householder.ts'
import type { ScaledColumns } from './scaled-columns.ts'

/** A column that says nothing new, and the sum of kept columns it equals (an empty sum: the column is all zeros). */
export interface AliasedColumn {
  readonly column: number
  readonly equals: readonly { readonly column: number; readonly weight: number }[]
}

/** A term this small beside the column it helps to make up is rounding. */
const dust = 1e-9
/** Weights that differ by this little, relative to a sum's own weights, are equal but for rounding. */
const mismatch = 1e-9

/**
 * For every column set aside, the combination of kept columns that it equals.
 *
 * @check intercept, hive 0, 0, 0, 0, 1, 1, 1, 1 and year the same: year equals 1 hive
 */
export function aliasedColumns(factors: Factors, { shift, scale }: ScaledColumns): readonly AliasedColumn[] {
  const { rank, order } = factors
  const unit = scale[0] ?? 0
  return order.slice(rank).map((column, place) => {
    const inner = solveUpper(
      factors,
      Array.from({ length: rank }, (_, r) => factors.upper(r, rank + place)),
    )
    const size = scale[column] ?? 0
    const moved = shift[column] ?? 0
    // Column 0 takes its own weight and what centring took off the others.
    let first = moved
    const others: { column: number; weight: number }[] = []
    inner.forEach((value, r) => {
      if (Math.abs(value) < dust) return
      const other = order[r] ?? 0
      const weight = (size * value) / (scale[other] ?? 1)
      first -= weight * (shift[other] ?? 0)
      if (other === 0) first += weight
      else others.push({ column: other, weight })
    })
    const weighs = Math.abs(first) * unit > dust * (size + Math.abs(moved) * unit)
    return { column, equals: weighs ? [{ column: 0, weight: first }, ...others] : others }
  })
}

/** Aliased columns of a design that is scaled already; none where every column says something new. */
export const aliasedIn = (scaled: ScaledColumns, tolerance: number): readonly AliasedColumn[] =>
  aliasedColumns(factorise(scaled.columns, tolerance), scaled)

/**
 * The aliased columns that a sum of coefficients hangs on: kept columns tell it only where it gives an aliased column the weight that
 * its equal has.
 *
 * @param weights one for each column of the design
 */
export function columnsLost(aliased: readonly AliasedColumn[], weights: ArrayLike<number>): readonly number[] {
  return aliased
    .filter(({ column, equals }) => {
      const direct = weights[column] ?? 0
      const asked = equals.reduce((sum, term) => sum + term.weight * (weights[term.column] ?? 0), 0)
      const size = equals.reduce((sum, term) => sum + Math.abs(term.weight * (weights[term.column] ?? 0)), Math.abs(direct))
      return Math.abs(direct - asked) > mismatch * size
    })
    .map(({ column }) => column)
}
