import { type TextColumn, textAt, textColumn } from '../columns/column.ts'
import { parseAddress } from '../facts/fact.ts'
import type { Field } from '../snapshot/snapshot.ts'
import type { Table } from '../tables/table.ts'
import { isoDate } from './day.ts'
import type { SheetBlock } from './sheets.ts'

/** For each row the position of its word in a list; -1 where nothing was written. */
export function linkByName(column: TextColumn, names: readonly string[]): Int32Array {
  const place = new Map(names.map((name, k) => [name, k]))
  const byCode = Int32Array.from(column.dictionary, (word) => place.get(word) ?? -1)
  return column.codes.map((code) => (code < 0 ? -1 : (byCode[code] ?? -1)))
}

/** Counts without a season take the year of their date; counts without a crop that of their described field. */
export function fillFromFieldAndDate(table: Table<'count'>, countField: Int32Array, fields: readonly Field[]): Table<'count'> {
  const { season, crop, date } = table.columns
  const missingSeason = season.codes.some((code, row) => code < 0 && !Number.isNaN(date.values[row] ?? Number.NaN))
  const missingCrop = fields.some((field) => field.crop !== null) && crop.codes.some((code) => code < 0)
  if (!missingSeason && !missingCrop) return table
  const fill = (column: TextColumn, word: (row: number) => string | null): TextColumn =>
    textColumn(Array.from(column.codes, (code, row) => (code < 0 ? word(row) : (column.dictionary[code] ?? null))))
  const yearOf = new Map<number, string>()
  const year = (row: number): string | null => {
    const day = date.values[row] ?? Number.NaN
    if (Number.isNaN(day)) return null
    const known = yearOf.get(day)
    if (known !== undefined) return known
    const found = isoDate(day).slice(0, 4)
    yearOf.set(day, found)
    return found
  }
  return {
    ...table,
    columns: {
      ...table.columns,
      season: missingSeason ? fill(season, year) : season,
      crop: missingCrop ? fill(crop, (row) => fields[countField[row] ?? -1]?.crop ?? null) : crop,
    },
  }
}

/** Where the counts of one batch begin: in their sheet, and in the table of counts. */
interface CountBlock {
  readonly first: number
  readonly rows: number
  readonly start: number
}

/** Batches of counts by sheet, with the row of the table at which each begins. */
function countBlocksOf(blocks: readonly SheetBlock[]): ReadonlyMap<string, readonly CountBlock[]> {
  const bySheet = new Map<string, CountBlock[]>()
  let start = 0
  for (const { sheet, first, rows } of blocks) {
    const list = bySheet.get(sheet) ?? []
    list.push({ first, rows, start })
    bySheet.set(sheet, list)
    start += rows
  }
  return bySheet
}

/** The row of the table of counts for a count's address; -1 where it is not there. */
function countAt(blocks: readonly SheetBlock[]): (address: string) => number {
  const place = new Map<string, { readonly start: number; readonly rows: number }>()
  let start = 0
  for (const { source, rows } of blocks) {
    place.set(source, { start, rows })
    start += rows
  }
  return (address) => {
    const { fact, row } = parseAddress(address)
    const block = place.get(fact)
    return block === undefined || row < 0 || row >= block.rows ? -1 : block.start + row
  }
}

/**
 * The count of each tally, before any row was taken out; -1 where its batch of counts was forgotten. A tally names its count
 * by the row among the counts of the same sheet, or, where a mended file brought it to a count of an earlier file, by the
 * address of that count in its column `of`.
 */
export function linkTallies(
  tallies: Table<'tally'>,
  tallyBlocks: readonly SheetBlock[],
  countBlocks: readonly SheetBlock[],
): Int32Array {
  const counts = countBlocksOf(countBlocks)
  const { values } = tallies.columns.count
  const linked = new Int32Array(tallies.rows).fill(-1)
  let row = 0
  for (const { sheet, rows } of tallyBlocks) {
    const own = counts.get(sheet) ?? []
    let block = own[0]
    for (const end = row + rows; row < end; row++) {
      const ordinal = values[row] as number
      if (block === undefined || ordinal < block.first || ordinal >= block.first + block.rows) {
        block = own.find(({ first, rows: size }) => ordinal >= first && ordinal < first + size) ?? block
      }
      if (block !== undefined && ordinal >= block.first && ordinal < block.first + block.rows)
        linked[row] = block.start + ordinal - block.first
    }
  }
  const of = tallies.factors.get('of')
  if (of?.type !== 'text') return linked
  const find = countAt(countBlocks)
  const found = of.dictionary.map(find)
  return linked.map((count, at) => (count >= 0 || textAt(of, at) === null ? count : (found[of.codes[at] as number] ?? -1)))
}
