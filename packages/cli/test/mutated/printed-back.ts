import type { MappedColumn, Mapping, Sheet, ShownReading } from '@thrum/exchange'
import { type Column, isCounted, markAt, type NumberColumn, numberAt, type Snapshot, type TextColumn, textAt } from '@thrum/model'
import { isSpelledAs, plainSpelling } from './spellings.ts'

export interface PrintedBack {
  readonly cells: number
  readonly shown: number
  readonly wrong: string | null
}

/** A column of the sheet by row of the project: what was written in it. */
type WrittenAt = (row: number) => string

const textRoles = new Set('field plot visit key observer crop cultivar season method position rain flowersHow factor'.split(' '))
const numberRoles = new Set(
  'date start end offset minutes pauses flowers area temperature wind cloud sun stage hives hiveDistance edgeDistance'.split(' '),
)

/** Signs that stand for no name, and for a number that nobody looked for; they are kept in the file. */
const noName = /^(?:na|n\/a|#n\/a|null)$/iu
const notLookedFor = /^(?:na|n\.a\.?|n\/a|#n\/a|nan|null|none recorded|not recorded|nr|n\.r\.|k\.a\.|nd|n\.d\.|ej|\.)$/iu

interface Held {
  readonly snapshot: Snapshot
  readonly sheet: Sheet
  readonly mapping: Mapping
  /** Readings as the machine form of the import told them. */
  readonly readings: readonly ShownReading[]
}

const leftOut = new Set(['exchange/note/control-characters', 'exchange/note/unseen-signs'])

function columnAt(sheet: Sheet, header: string, rowOf: (row: number) => number): WrittenAt {
  const column = sheet.columns[sheet.headers.indexOf(header)]
  return (row) => (column?.dictionary[column.codes[rowOf(row)] ?? -1] ?? '').trim()
}

const meant = ({ means }: Mapping, column: MappedColumn, written: string): boolean =>
  Object.hasOwn(column.means ?? {}, written) || Object.hasOwn(means ?? {}, written)

/**
 * Every cell of the project that holds a number or a name, written again as its column is declared, against what stands in
 * the file. What a column alone does not say is left out: constants, products of columns, sums of several lines, blanks
 * that another line of the same watch fills.
 */
export function printBack(held: Held): PrintedBack {
  const { snapshot, sheet, mapping, readings } = held
  const rowOfLine = new Map(Array.from(sheet.lines, (line, row) => [line, row]))
  const told = new Set(readings.map(({ column, written, value }) => JSON.stringify([column, written.trim(), value])))
  const { count, tally } = snapshot.tables
  const lineOfCount = count.columns.line
  const rowOfCount = (row: number): number => rowOfLine.get(numberAt(lineOfCount, row) ?? -1) ?? -1
  const single = mapping.columns.filter(({ as }) => mapping.columns.filter((other) => other.as === as).length === 1)
  const isTold = (snapshot.sheets[0]?.notes ?? []).some(({ id }) => leftOut.has(id))
  let cells = 0
  let shown = 0
  let wrong: string | null = null
  const see = (isSame: boolean, header: string, written: string, value: number | string): void => {
    cells++
    if (isSame) return
    shown++
    if (!told.has(JSON.stringify([header, written.trim(), value])))
      wrong ??= `${header}: ${JSON.stringify(written.slice(0, 80))} became ${JSON.stringify(value)} in silence`
  }
  const texts = ({ header }: MappedColumn): readonly string[] => sheet.columns[sheet.headers.indexOf(header)]?.dictionary ?? []
  const numbers = (column: NumberColumn, mapped: MappedColumn, writtenAt: WrittenAt, isSum: (row: number) => boolean): void => {
    for (let row = 0; row < column.values.length; row++) {
      const value = numberAt(column, row)
      const written = writtenAt(row)
      if (value === null || !isCounted(markAt(column, row)) || written === '' || isSum(row)) continue
      // Where nobody looked, another line of the same watch may say the number: then it is written there.
      if (notLookedFor.test(written) && texts(mapped).some((text) => isSpelledAs(value, text, mapped, mapping))) continue
      see(!meant(mapping, mapped, written) && isSpelledAs(value, written, mapped, mapping), mapped.header, written, value)
    }
  }
  const names = (column: TextColumn, mapped: MappedColumn, writtenAt: WrittenAt): void => {
    for (let row = 0; row < column.codes.length; row++) {
      const written = writtenAt(row)
      if (written === '' || noName.test(written) || meant(mapping, mapped, written)) continue
      const name = textAt(column, row) ?? ''
      // What is not seen may be left out of a name where the person is told that the file holds it.
      const hasUnseen = /\p{Cf}|(?![\t\n])\p{Cc}/u.test(written)
      see(name === plainSpelling(written) && (!hasUnseen || isTold), mapped.header, written, name)
    }
  }
  const never = (): boolean => false
  const declared = count.columns as { readonly [name: string]: Column | undefined }
  const products = new Set(['flowers'].filter(() => mapping.columns.some(({ unit }) => unit === '{flowers}/m2')))
  for (const mapped of mapping.columns) {
    const { as, header } = mapped
    const column = as === 'factor' ? count.factors.get(mapped.factor ?? header) : declared[as]
    if (column === undefined || (as !== 'factor' && !single.includes(mapped)) || products.has(as)) continue
    const at = columnAt(sheet, header, rowOfCount)
    // A year in a column of its own belongs to the date.
    if (as === 'date' && mapping.columns.some((other) => other.as === 'year')) continue
    if (column.type === 'number' && (numberRoles.has(as) || as === 'factor')) numbers(column, mapped, at, never)
    else if (column.type === 'text' && textRoles.has(as)) names(column, mapped, at)
  }
  const { number, kind } = tally.columns
  const headersOf = Map.groupBy(
    mapping.columns.filter(({ as }) => as === 'tally'),
    (own) => plainSpelling(own.kind ?? own.header),
  )
  if (mapping.shape === 'wide') {
    const countOf = snapshot.tallyCount
    for (const [name, columns] of headersOf) {
      const [mapped, ...others] = columns
      if (mapped === undefined || others.length > 0) continue
      const at = columnAt(sheet, mapped.header, (row) => rowOfCount(countOf[row] ?? -1))
      numbers(number, mapped, at, (row) => textAt(kind, row) !== name)
    }
  } else {
    const mapped = single.find(({ as }) => as === 'number')
    if (mapped !== undefined) {
      const rowOfTally = (row: number): number => rowOfLine.get(numberAt(tally.columns.line, row) ?? -1) ?? -1
      numbers(number, mapped, columnAt(sheet, mapped.header, rowOfTally), sumsOfLines(held, rowOfTally))
    }
  }
  return { cells, shown, wrong }
}

/** In a long table: tallies to which more than one line of the same watch and kind belongs. */
function sumsOfLines({ sheet, mapping }: Held, rowOfTally: (row: number) => number): (row: number) => boolean {
  const columns = ['kind', 'caste', 'behaviour', ...(mapping.key ?? [])]
    .flatMap(
      (name) => mapping.columns.find(({ as }) => as === name) ?? mapping.columns.find(({ header }) => header === name) ?? [],
    )
    .map(({ header }) => columnAt(sheet, header, (row) => row))
  const keyOf = (row: number): string => JSON.stringify(columns.map((at) => plainSpelling(at(row))))
  const lines = new Map<string, number>()
  for (let row = 0; row < sheet.rows; row++) lines.set(keyOf(row), (lines.get(keyOf(row)) ?? 0) + 1)
  return (row) => (lines.get(keyOf(rowOfTally(row))) ?? 0) > 1
}
