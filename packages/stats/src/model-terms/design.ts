import { InputError, requireFinite } from '@thrum/model/ground'
import { type Matrix, matrixOfColumns } from '../least-squares/matrix.ts'
import {
  type ColumnValues,
  columnNamed,
  type LevelColumn,
  lengthOf,
  type ModelColumn,
  type ModelColumns,
  requireColumn,
  rowsByLevel,
} from './columns.ts'
import { type Term, withContained } from './terms.ts'

/** One factor of a design column: whether a row is of a level, or a number (`level` null). */
export interface ColumnPart {
  readonly column: string
  readonly level: string | null
}

/** A term, and the places of its design columns. */
export interface DesignTerm extends Term {
  readonly columns: readonly number[]
}

/** A design matrix that knows what its columns mean. */
export interface TermDesign {
  readonly kind: 'design'
  /** n rows; the first column is of ones. */
  readonly matrix: Matrix
  /** One a column, such as `all at reference`, `strip: sown`, `strip: sown, and bloom stage`. */
  readonly names: readonly string[]
  /** What each column is the product of; none for the first. */
  readonly parts: readonly (readonly ColumnPart[])[]
  /** In the order of their columns, those that were added among them. */
  readonly terms: readonly DesignTerm[]
  /** The columns that terms are made of. */
  readonly of: ModelColumns
  /** The design row of any combination, for all columns in `of`. @throws InputError on a column or level unknown, a value missing */
  rowAt(values: ColumnValues): Float64Array
}

/** A design, or the column that cannot be a part of one, as all rows are of one level. */
export type DesignOutcome =
  | TermDesign
  | { readonly kind: 'one-level'; readonly column: string /** Null where there is no row. */; readonly level: string | null }

function nameOf(parts: readonly ColumnPart[]): string {
  const told = parts.map(({ column, level }) => (level === null ? column : `${column}: ${level}`))
  const last = told.pop()
  if (last === undefined) return 'all at reference'
  return told.length === 0 ? last : `${told.join(', ')}, and ${last}`
}

/** The products of a term: of every level but the first of each column of levels, and the numbers. */
function productsOf(columns: ModelColumns, names: readonly string[]): readonly (readonly ColumnPart[])[] {
  return names.reduce<readonly (readonly ColumnPart[])[]>(
    (products, name) => {
      const column = columnNamed(columns, name)
      const levels: readonly (string | null)[] = column.kind === 'number' ? [null] : column.levels.slice(1)
      return levels.flatMap((level) => products.map((parts) => [...parts, { column: name, level }]))
    },
    [[]],
  )
}

/** What a part is in each row. */
export function partValues(column: ModelColumn, { level }: ColumnPart): ArrayLike<number> {
  if (column.kind === 'number') return column.values
  const place = level === null ? -1 : column.levels.indexOf(level)
  return Float64Array.from(column.of, (own) => Number(own === place))
}

function requireValues(columns: ModelColumns, values: ColumnValues): void {
  for (const name of Object.keys(values)) columnNamed(columns, name)
  for (const [name, column] of Object.entries(columns)) {
    const value = Object.hasOwn(values, name) ? values[name] : undefined
    if (column.kind === 'number' && typeof value === 'number') requireFinite(name, value)
    else if (column.kind === 'number' || typeof value !== 'string' || !column.levels.includes(value)) {
      const expected = column.kind === 'number' ? 'a number' : `one of ${column.levels.join(', ')}`
      throw new InputError('ground/input/out-of-range', `${name} is ${String(value)}; expected ${expected}`)
    }
  }
}

/** The only level of a column, where it has no other in its rows. */
function onlyLevel(column: LevelColumn): { readonly level: string | null } | null {
  const seen = rowsByLevel(column).flatMap((rows, place) => (rows > 0 ? [column.levels[place] ?? null] : []))
  return seen.length > 1 ? null : { level: seen[0] ?? null }
}

/**
 * From named columns to a design matrix: a column of ones, then the terms.
 *
 * Levels stand against their first one (1 in rows of the level, 0 in others); several columns together are products. What an
 * interaction contains comes in with it, and `terms` tells so. A level that no row has gives a column of zeros: a fit sets it aside.
 *
 * @param columns by name; only those that terms name are looked at
 * @param terms names of one column, or of several that act together; none gives the column of ones, as long as the first column
 * @throws InputError on an unknown column, a term twice, lengths that differ, a number that is not finite, no column, no row
 * @source Treatment contrasts: Chambers J.M., Hastie T.J. (1992) Statistical Models in S, ch. 2. From memory.
 * @check strip (none, sown) and stage together: all at reference; strip: sown; stage; strip: sown, and stage
 */
export function designOf(columns: ModelColumns, terms: readonly (readonly string[])[]): DesignOutcome {
  const all = withContained(terms)
  const names = [...new Set(all.flatMap(({ of }) => of))]
  const own: ModelColumns = Object.fromEntries(names.map((name) => [name, columnNamed(columns, name)]))
  const [first] = [...Object.values(own), ...Object.values(columns)]
  const rows = first === undefined ? 0 : lengthOf(first)
  if (rows === 0) throw new InputError('ground/input/out-of-range', 'there is no row; expected at least 1')
  for (const [name, column] of Object.entries(own)) {
    requireColumn(name, column, rows)
    const only = column.kind === 'levels' ? onlyLevel(column) : null
    if (only !== null) return { kind: 'one-level', column: name, ...only }
  }

  const parts: (readonly ColumnPart[])[] = [[]]
  const told = all.map((term): DesignTerm => {
    const products = productsOf(own, term.of)
    const from = parts.length
    parts.push(...products)
    return { ...term, columns: products.map((_, k) => from + k) }
  })
  const values = parts.map((product) => {
    const out = new Float64Array(rows).fill(1)
    for (const part of product) {
      const factor = partValues(columnNamed(own, part.column), part)
      for (let i = 0; i < rows; i++) out[i] = (out[i] as number) * (factor[i] as number)
    }
    return out
  })
  return {
    kind: 'design',
    matrix: matrixOfColumns(rows, values),
    names: parts.map(nameOf),
    parts,
    terms: told,
    of: own,
    rowAt: (at) => {
      requireValues(own, at)
      return Float64Array.from(parts, (product) =>
        product.reduce(
          (value, { column, level }) => value * (level === null ? Number(at[column]) : Number(at[column] === level)),
          1,
        ),
      )
    },
  }
}
