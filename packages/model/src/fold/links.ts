import { type TextColumn, textAt } from '../columns/column.ts'
import { parseAddress } from '../facts/fact.ts'
import type { Field } from '../snapshot/snapshot.ts'
import type { Table } from '../tables/table.ts'
import { isoDate } from './day.ts'
import type { SheetBlock } from './sheets.ts'

/** For each row the position of its word in a list; -1 where nothing was written. */
export function linkByName(column: TextColumn, names: readonly string[]): Int32Array {
  const place = new Map(names.map((name, k) => [name, k]))
  const byCode = Int32Array.from(column.dictionary, (word) => place.get(word) ?? -1)
  const linked = new Int32Array(column.codes.length)
  for (let row = 0; row < linked.length; row++) {
    const code = column.codes[row] as number
    linked[row] = code < 0 ? -1 : (byCode[code] as number)
  }
  return linked
}

/** A text column whose blank rows take a word from elsewhere; words are numbered anew, in the order of their rows. */
function fillBlanks(
  column: TextColumn,
  wordOf: { readonly codes: Int32Array; readonly words: readonly (string | null)[] },
): TextColumn {
  const dictionary: string[] = []
  const codeOf = new Map<string, number>()
  const coded = (words: readonly (string | null)[]): ((code: number) => number) => {
    const newCode = new Int32Array(words.length).fill(-1)
    return (code) => {
      const word = words[code] ?? null
      if (word === null) return -1
      if (newCode[code] === -1) {
        const found = codeOf.get(word) ?? dictionary.push(word) - 1
        codeOf.set(word, found)
        newCode[code] = found
      }
      return newCode[code] as number
    }
  }
  const own = coded(column.dictionary)
  const other = coded(wordOf.words)
  const codes = new Int32Array(column.codes.length)
  for (let row = 0; row < codes.length; row++) {
    const code = column.codes[row] as number
    codes[row] = code < 0 ? other(wordOf.codes[row] as number) : own(code)
  }
  return { type: 'text', codes, dictionary }
}

/** For each row which year its day lies in. */
function yearsOf(days: Float64Array): { readonly codes: Int32Array; readonly words: readonly string[] } {
  const words: string[] = []
  const codeOfYear = new Map<string, number>()
  const codeOfDay = new Map<number, number>()
  const codes = new Int32Array(days.length).fill(-1)
  for (let row = 0; row < days.length; row++) {
    const day = days[row] as number
    if (Number.isNaN(day)) continue
    let code = codeOfDay.get(day)
    if (code === undefined) {
      const year = isoDate(day).slice(0, 4)
      code = codeOfYear.get(year) ?? words.push(year) - 1
      codeOfYear.set(year, code)
      codeOfDay.set(day, code)
    }
    codes[row] = code
  }
  return { codes, words }
}

/** Counts without a season take the year of their date; counts without a crop that of their described field. */
export function fillFromFieldAndDate(table: Table<'count'>, countField: Int32Array, fields: readonly Field[]): Table<'count'> {
  const { season, crop, date } = table.columns
  const missingSeason = season.codes.some((code, row) => code < 0 && !Number.isNaN(date.values[row] ?? Number.NaN))
  const missingCrop = fields.some((field) => field.crop !== null) && crop.codes.some((code) => code < 0)
  if (!missingSeason && !missingCrop) return table
  return {
    ...table,
    columns: {
      ...table.columns,
      season: missingSeason ? fillBlanks(season, yearsOf(date.values)) : season,
      crop: missingCrop ? fillBlanks(crop, { codes: countField, words: fields.map((field) => field.crop) }) : crop,
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
