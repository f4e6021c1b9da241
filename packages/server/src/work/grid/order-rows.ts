import { noSuchColumn } from './filter-rows.ts'
import type { Grid, GridColumn } from './grid.ts'

/** Words as places in their order: as a person reads them, numbers in them by size. */
function ranksOf({ codes, dictionary }: NonNullable<GridColumn['words']>): Float64Array {
  const collator = new Intl.Collator('en', { numeric: true })
  const order = dictionary.map((_, code) => code).sort((a, b) => collator.compare(dictionary[a] ?? '', dictionary[b] ?? ''))
  const rank = new Float64Array(dictionary.length)
  order.forEach((code, place) => {
    rank[code] = place
  })
  return Float64Array.from(codes, (code) => (code < 0 ? Number.NaN : (rank[code] as number)))
}

/**
 * Rows in the order of a column; `-` before its name turns it round. Empty cells come last either way, and rows that are alike
 * keep their order.
 *
 * @throws ThrumError server/counts/no-such-column
 */
export function orderRows(grid: Grid, rows: Int32Array, sort: string | null): Int32Array {
  if (sort === null) return rows
  const exact = grid.columns.find(({ name }) => name === sort)
  const column = exact ?? grid.columns.find(({ name }) => `-${name}` === sort)
  if (column === undefined) throw noSuchColumn(grid, sort)
  const direction = exact === undefined ? -1 : 1
  const keys = column.words === null ? (column.numbers as Float64Array) : ranksOf(column.words)
  return rows.toSorted((a, b) => {
    const [x, y] = [keys[a] as number, keys[b] as number]
    if (Number.isNaN(x) || Number.isNaN(y)) return Number(Number.isNaN(x)) - Number(Number.isNaN(y)) || a - b
    return (x - y) * direction || a - b
  })
}
