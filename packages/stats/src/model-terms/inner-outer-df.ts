import type { Grouping } from '../count-model/effects/grouping.ts'
import { columnOf, type Matrix } from '../least-squares/matrix.ts'
import { independentColumns } from './independent-columns.ts'

/** Degrees of freedom of one design column, and what its units are. */
export interface ColumnDf {
  /** At least 1: where the rule leaves none, so few are said, and the interval is as wide as it gets. */
  readonly df: number
  /** Rows; levels of a grouping within which it is constant; the slopes of its levels, of which it is a multiple. */
  readonly units: 'rows' | 'levels' | 'slopes'
  /** The grouping; null of rows. */
  readonly by: string | null
}

/** A grouping by the rows it has: levels without rows are not counted. */
interface Units {
  readonly name: string
  readonly of: Int32Array
  readonly levels: number
  readonly slope: Float64Array | null
}

/** More products than this are not worth exact degrees of freedom; n less all there could be is less, never more. Ours. */
const mostProducts = 2e9

function unitsOf({ name, of, slope }: Grouping): Units {
  const known = new Map<number, number>()
  const own = Int32Array.from(of, (level) => {
    const place = known.get(level) ?? known.size
    known.set(level, place)
    return place
  })
  return { name, of: own, levels: known.size, slope: slope === undefined ? null : Float64Array.from(slope.values) }
}

/** One value a level, where the column has only one in each; null where it varies within a level. */
function perLevel(column: ArrayLike<number>, { of, levels }: Units): Float64Array | null {
  const own = new Float64Array(levels).fill(Number.NaN)
  for (let i = 0; i < of.length; i++) {
    const level = of[i] as number
    const value = column[i] as number
    if (Number.isNaN(own[level])) own[level] = value
    else if (own[level] !== value) return null
  }
  return own
}

/** What the random slope's covariate is multiplied by in each level to give the column; null where nothing does. */
function perSlope(column: Float64Array, units: Units): Float64Array | null {
  const { of, levels, slope } = units
  if (slope === null) return null
  const steepest = new Int32Array(levels).fill(-1)
  of.forEach((level, i) => {
    const place = steepest[level] as number
    if (place < 0 || Math.abs(slope[i] as number) > Math.abs(slope[place] as number)) steepest[level] = i
  })
  const factors = Float64Array.from(steepest, (i) => (slope[i] === 0 ? 0 : (column[i] as number) / (slope[i] as number)))
  const isProduct = column.every((value, i) => {
    const made = (factors[of[i] as number] as number) * (slope[i] as number)
    return Math.abs(value - made) <= 1e-9 * Math.abs(value)
  })
  return isProduct ? factors : null
}

const isCoarser = (outer: Units, inner: Units): boolean => perLevel(outer.of, inner) !== null

/** A column of 0 and 1 for each level. */
const indicators = (of: ArrayLike<number>, levels: number): readonly Float64Array[] =>
  Array.from({ length: levels }, (_, level) => Float64Array.from(of, (own) => Number(own === level)))

/** Each column less its mean in each level. */
function within(column: Float64Array, { of, levels }: Units): Float64Array {
  const sums = new Float64Array(levels)
  const rows = new Float64Array(levels)
  of.forEach((level, i) => {
    sums[level] = (sums[level] as number) + (column[i] as number)
    rows[level] = (rows[level] as number) + 1
  })
  return column.map((value, i) => value - (sums[of[i] as number] as number) / (rows[of[i] as number] as number))
}

/** Rows less all that columns and levels of all groupings can explain. */
function dfOfRows(columns: readonly Float64Array[], groups: readonly Units[], n: number): number {
  // What is coarser than another grouping explains nothing more; of two that are the same the first stays.
  const finest = groups.filter(
    (own, k) => !groups.some((other, l) => l !== k && isCoarser(own, other) && (l < k || !isCoarser(other, own))),
  )
  const [first, ...others] = finest.toSorted((one, other) => other.levels - one.levels)
  if (first === undefined) return n - independentColumns(columns)
  const spare = others.reduce((sum, { levels }) => sum + levels, columns.length)
  if (n * spare * spare > mostProducts)
    return n - independentColumns(columns) - finest.reduce((sum, { levels }) => sum + levels - 1, 0)
  const rest = [...columns, ...others.flatMap(({ of, levels }) => indicators(of, levels))]
  return (
    n -
    first.levels -
    independentColumns(
      rest.map((column) => within(column, first)),
      rest,
    )
  )
}

/** Levels less what they must tell: coarser groupings, and the columns that are constant within them. */
function dfOfLevels(own: Units, columns: readonly Float64Array[], groups: readonly Units[]): number {
  const outer = groups.filter((other) => other !== own && isCoarser(other, own) && !isCoarser(own, other))
  const constant = columns.flatMap((column) => perLevel(column, own) ?? [])
  const lying = outer.flatMap((other) => {
    const of = perLevel(other.of, own)
    return of === null ? [] : indicators(of, other.levels)
  })
  return own.levels - independentColumns([new Float64Array(own.levels).fill(1), ...lying, ...constant])
}

/**
 * Degrees of freedom for a t of each design column, by what its units are.
 *
 * A column that is the same throughout each field is told by fields, however many rows they have: levels of the grouping, less the levels of
 * groupings that it lies in, less the independent columns that are constant in it; of nested groupings the coarsest within which the column
 * is constant, of crossed ones the one that leaves fewest. A column whose slope is drawn at random is told by the levels that have slopes.
 * Others: rows less all that columns and levels explain. Beside the source, where the column of ones is told by rows, it is told by fields
 * here, as means are.
 *
 * @param design n rows, a column of ones the first
 * @param groupings with a random slope or without
 * @returns one for each column; what a sum of coefficients has is the least of its columns'
 * @source Pinheiro J.C., Bates D.M. (2000) Mixed-Effects Models in S and S-PLUS, p. 91 (from memory)
 * @check Oats, 6 blocks of 3 plots of 4 doses: variety 10, dose and both together 45 (R 4.2.2, nlme)
 */
export function innerOuterDf(design: Matrix, groupings: readonly Grouping[]): readonly ColumnDf[] {
  const columns = Array.from({ length: design.columns }, (_, j) => columnOf(design, j))
  const groups = groupings.map(unitsOf)
  const byRows = dfOfRows(columns, groups, design.rows)
  const byLevels = groups.map((own) => dfOfLevels(own, columns, groups))
  const bySlopes = groups.map((own) => {
    const factors = columns.flatMap((column) => perSlope(column, own) ?? [])
    return own.slope === null ? 0 : own.levels - independentColumns(factors)
  })
  return columns.map((column): ColumnDf => {
    const constantIn = groups.filter((own) => perLevel(column, own) !== null)
    const units = constantIn.filter(
      (own, k) => !constantIn.some((other, l) => l !== k && isCoarser(other, own) && (l < k || !isCoarser(own, other))),
    )
    const found: ColumnDf[] = units.map((own) => ({
      ...{ df: byLevels[groups.indexOf(own)] ?? 0, units: 'levels', by: own.name },
    }))
    if (units.length === 0) {
      found.push({ df: byRows, units: 'rows', by: null })
      groups.forEach((own, k) => {
        if (perSlope(column, own) !== null) found.push({ df: bySlopes[k] ?? 0, units: 'slopes', by: own.name })
      })
    }
    const least = found.reduce((fewest, own) => (own.df < fewest.df ? own : fewest))
    return { ...least, df: Math.max(1, least.df) }
  })
}

/** The degrees of freedom of a sum of coefficients: the least of the columns that have a part in it. @param weights one a column */
export function dfOfSum(columns: readonly ColumnDf[], weights: ArrayLike<number>): ColumnDf {
  const own = columns.filter((_, j) => weights[j] !== 0)
  const [first = { df: 1, units: 'rows', by: null }, ...others] = own.length === 0 ? columns : own
  return others.reduce((least, other) => (other.df < least.df ? other : least), first)
}
