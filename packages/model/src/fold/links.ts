import { type TextColumn, textColumn } from '../columns/column.ts'
import type { Field } from '../snapshot/snapshot.ts'
import type { Table } from '../tables/table.ts'
import { isoDate } from './day.ts'

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

/**
 * The count of each tally. A tally names its count by the row among the counts of the same sheet.
 *
 * @param firstCountOf row of the first count of each sheet, before any row was taken out
 */
export function linkTallies(
  tallies: Table<'tally'>,
  sheetOf: ReadonlyMap<string, string>,
  firstCountOf: ReadonlyMap<string, number>,
): Int32Array {
  const offsets = tallies.sources.map((source) => firstCountOf.get(sheetOf.get(source) ?? '') ?? Number.NaN)
  const { values } = tallies.columns.count
  const linked = new Int32Array(tallies.rows)
  for (let row = 0; row < linked.length; row++) {
    const at = (offsets[tallies.sourceOf[row] ?? -1] ?? Number.NaN) + (values[row] ?? Number.NaN)
    linked[row] = Number.isNaN(at) ? -1 : at
  }
  return linked
}
