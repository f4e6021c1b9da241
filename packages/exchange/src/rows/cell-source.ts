import { dayNumber } from '@thrum/model'
import { readClockTime, readOffset } from '../cell/clock-time.ts'
import { readCount } from '../cell/count.ts'
import { type DateHabit, readDate } from '../cell/date.ts'
import { dateEvidence, dateHabit } from '../cell/date-order.ts'
import { type DecimalHabit, decimalHabit, noHabit, readMeasure } from '../cell/decimal.ts'
import { type DurationUnit, readMinutes } from '../cell/minutes.ts'
import { nothingWritten, type Reading, valueOfReading } from '../cell/reading.ts'
import { isMeasureRole, measureUnits } from '../mapping/roles.ts'
import type { Mapping } from '../mapping/shape.ts'
import { conversionTo } from '../mapping/units.ts'
import type { Sheet } from '../read/sheet.ts'
import type { MappedColumns, SheetColumn } from './mapped-columns.ts'

/** One number of each row: what was written and what it was taken to mean. */
export interface CellSource {
  readonly header: string
  /** True where some cell holds something. */
  readonly filled: boolean
  at(row: number): Reading
  /** Different readings of the column, each once. */
  readonly distinct: readonly Reading[]
}

/** Reads one text as the column's kind of number. */
type CellReader = (written: string) => Reading

function meaningOf(written: string, column: SheetColumn, mapping: Mapping): Reading | null {
  const text = written.trim()
  const own = column.mapped.means
  const ofFile = mapping.means
  const said =
    own !== undefined && Object.hasOwn(own, text)
      ? own[text]
      : ofFile !== undefined && Object.hasOwn(ofFile, text)
        ? ofFile[text]
        : undefined
  if (said === undefined) return null
  if (said === null) return { kind: 'not-looked-for', written }
  const value = Number(said)
  return Number.isNaN(value) ? null : { kind: 'number', written, value, because: 'exchange/cell/means' }
}

/** Reads every different text of a column once. */
export function cellSource(column: SheetColumn, mapping: Mapping, read: CellReader): CellSource {
  const { codes, dictionary } = column.cells
  const distinct = dictionary.map((written) => meaningOf(written, column, mapping) ?? read(written))
  const blank = meaningOf('', column, mapping) ?? nothingWritten
  return {
    header: column.header,
    filled: dictionary.length > 0,
    at: (row) => distinct[codes[row] ?? -1] ?? blank,
    distinct: blank === nothingWritten ? distinct : [...distinct, blank],
  }
}

/** How numbers are written in each column: as the mapping says, as the column proves, as the file proves. */
export interface NumberHabits {
  of(column: SheetColumn): DecimalHabit
  /** Headers of columns that prove a decimal comma, and of those that hold both marks. */
  readonly commas: readonly string[]
  readonly mixed: readonly string[]
}

export function numberHabits(sheet: Sheet, mapping: Mapping, columns: MappedColumns): NumberHabits {
  const said = mapping.file?.decimal
  if (said !== undefined) return { of: () => ({ decimal: said, mixed: false }), commas: [], mixed: [] }
  const numbers = columns.all.filter(
    ({ mapped }) => isMeasureRole(mapped.as) || ['minutes', 'tally', 'number'].includes(mapped.as),
  )
  const own = new Map(numbers.map((column) => [column, decimalHabit(column.cells.dictionary)]))
  const proven = new Set(
    [...own.values()].flatMap(({ decimal, mixed }) => (mixed ? ['.', ','] : decimal === null ? [] : [decimal])),
  )
  // In a table of commas a decimal comma would need quotes in every cell: a point is the decimal mark unless a comma was proven.
  const ofFile = proven.size === 1 ? ([...proven][0] as '.' | ',') : proven.size === 0 && sheet.delimiter === ',' ? '.' : null
  const headersOf = (is: (habit: DecimalHabit) => boolean): readonly string[] =>
    [...own].flatMap(([{ header }, habit]) => (is(habit) ? [header] : []))
  return {
    commas: headersOf(({ decimal }) => decimal === ','),
    mixed: headersOf(({ mixed }) => mixed),
    of: (column) => {
      const habit = own.get(column) ?? noHabit
      return habit.decimal === null && !habit.mixed ? { decimal: ofFile, mixed: false } : habit
    },
  }
}

export function countSource(column: SheetColumn, mapping: Mapping, habits: NumberHabits): CellSource {
  const habit = habits.of(column)
  return cellSource(column, mapping, (written) => readCount(written, habit))
}

export function measureSource(column: SheetColumn, mapping: Mapping, habits: NumberHabits): CellSource {
  const habit = habits.of(column)
  const { as } = column.mapped
  const convert = isMeasureRole(as) ? conversionTo(as, column.mapped.unit) : null
  const unit = column.mapped.unit ?? (isMeasureRole(as) ? measureUnits[as][0] : null)
  return cellSource(column, mapping, (written) => {
    const reading = readMeasure(written, habit, unit)
    return convert === null || !('value' in reading) ? reading : { ...reading, value: convert(reading.value) }
  })
}

export function minutesSource(column: SheetColumn, mapping: Mapping, habits: NumberHabits): CellSource {
  const habit = habits.of(column)
  return cellSource(column, mapping, (written) => readMinutes(written, habit, column.mapped.unit as DurationUnit | undefined))
}

export function clockSource(column: SheetColumn, mapping: Mapping): CellSource {
  return cellSource(column, mapping, readClockTime)
}

export function offsetSource(column: SheetColumn, mapping: Mapping): CellSource {
  return cellSource(column, mapping, readOffset)
}

function habitOf(column: SheetColumn, mapping: Mapping): DateHabit {
  const year = mapping.file?.year ?? null
  return dateHabit(dateEvidence(column.cells.dictionary, year), mapping.file?.dateOrder ?? null, year)
}

/** Dates of a column, with the year of another column where they are written without one. */
export function dateSource(columns: MappedColumns, mapping: Mapping): CellSource | null {
  const column = columns.one('date')
  const year = columns.one('year')
  if (column !== undefined) {
    const habit = habitOf(column, mapping)
    if (year === undefined) return cellSource(column, mapping, (written) => readDate(written, habit))
    return pairedSource(column, year, (date, of) => readDate(date, { ...habit, year: yearOf(of) ?? habit.year }))
  }
  const day = columns.one('day')
  const month = columns.one('month')
  if (day !== undefined && month !== undefined) return splitDateSource(day, month, year, mapping)
  const said = mapping.constants?.date
  return said === undefined ? null : constantSource('date', dayNumber(said))
}

const yearOf = (written: string): number | null => (/^\s*\d{4}\s*$/u.test(written) ? Number(written) : null)

function pairedSource(a: SheetColumn, b: SheetColumn, read: (a: string, b: string) => Reading): CellSource {
  const known = new Map<string, Reading>()
  return {
    header: a.header,
    filled: a.cells.dictionary.length > 0,
    distinct: [],
    at: (row) => {
      const key = `${a.cells.codes[row]}/${b.cells.codes[row]}`
      const seen = known.get(key)
      if (seen !== undefined) return seen
      const reading = read(a.cells.dictionary[a.cells.codes[row] ?? -1] ?? '', b.cells.dictionary[b.cells.codes[row] ?? -1] ?? '')
      known.set(key, reading)
      return reading
    },
  }
}

function splitDateSource(day: SheetColumn, month: SheetColumn, year: SheetColumn | undefined, mapping: Mapping): CellSource {
  const text = (column: SheetColumn, row: number): string => (column.cells.dictionary[column.cells.codes[row] ?? -1] ?? '').trim()
  const habit: DateHabit = { orderOf: () => 'day first', year: null }
  const known = new Map<string, Reading>()
  return {
    header: day.header,
    filled: day.cells.dictionary.length > 0,
    distinct: [],
    at: (row) => {
      const of = year === undefined ? String(mapping.file?.year ?? '') : text(year, row)
      const d = text(day, row)
      const m = text(month, row)
      const written = d === '' && m === '' ? '' : /^\d+$/u.test(m) ? `${d}.${m}.${of}` : `${d} ${m} ${of}`
      const seen = known.get(written) ?? readDate(written, habit)
      known.set(written, seen)
      return seen
    },
  }
}

/** The same number for every row. */
export function constantSource(header: string, value: number): CellSource {
  const reading: Reading = { kind: 'number', written: String(value), value }
  return { header, filled: true, distinct: [reading], at: () => reading }
}

/** Value of a source at a row; NaN without one. */
export const valueAt = (source: CellSource, row: number): number => valueOfReading(source.at(row))
