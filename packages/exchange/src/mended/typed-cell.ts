import { countingUnits, declarationOf, type MarkName, markName, type TableName } from '@thrum/model'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { readClockTime, readOffset } from '../cell/clock-time.ts'
import { readCount } from '../cell/count.ts'
import { type DateHabit, readDate } from '../cell/date.ts'
import { type DecimalHabit, readMeasure } from '../cell/decimal.ts'
import { readMinutes } from '../cell/minutes.ts'
import { plainName } from '../cell/plain-name.ts'
import { markOfReading, type Reading } from '../cell/reading.ts'

/** A value that a person typed for one cell: what it becomes, and the mark beside it where a number needs one. */
export interface TypedCell {
  readonly to: string | number | null
  readonly mark: MarkName | null
}

/** The words for a number that is not there; the two that must never become zero. */
export const missingWords = ['missing', 'not-looked-for'] as const

/** What a number of a watch can be. Common practice, no source: beyond it a number is a slip of the keys. */
const ranges: { readonly [column: string]: readonly [least: number, most: number] } = {
  minutes: [0, 1440],
  pauses: [0, 1440],
  flowers: [0, 10_000_000],
  area: [0, 1_000_000],
  temperature: [-60, 60],
  wind: [0, 12],
  cloud: [0, 8],
  sun: [0, 100],
  stage: [0, 99],
  hives: [0, 100_000],
  hiveDistance: [0, 100_000],
  edgeDistance: [0, 100_000],
}

/** Numbers that must be more than nothing. */
const positive: ReadonlySet<string> = new Set(['minutes', 'area'])

const point: DecimalHabit = { decimal: '.', mixed: false }
const wholeDates: DateHabit = { orderOf: () => null, year: null }

function readingOf(table: TableName, column: string, written: string): Reading {
  if (table === 'tally') return readCount(written, point)
  if (column === 'date') return readDate(written, wholeDates)
  if (column === 'start' || column === 'end') return readClockTime(written)
  if (column === 'offset') return readOffset(written)
  if (column === 'minutes' || column === 'pauses') return readMinutes(written, point)
  return readMeasure(written, point, unitOfColumn(table, column))
}

function refuse(column: string, written: string, because: Saying): never {
  throw new ThrumError('exchange/typed/refused', { column, written, because })
}

function typedNumber(table: TableName, column: string, written: string): TypedCell {
  const reading = readingOf(table, column, written)
  if (reading.kind === 'waiting') {
    // What is proposed reads best as part of the reason.
    refuse(column, written, saying(reading.because, { proposed: reading.proposed ?? '' }))
  }
  if (!('value' in reading)) return { to: null, mark: markName(markOfReading[reading.kind]) ?? null }
  const [least, most] = ranges[column] ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  if (positive.has(column) && reading.value <= 0) throw new ThrumError('exchange/typed/not-positive', { column, written })
  if (reading.value < least || reading.value > most) {
    throw new ThrumError('exchange/typed/out-of-range', { column, written, least, most })
  }
  const mark = markName(markOfReading[reading.kind]) ?? null
  return { to: reading.value, mark: mark === 'asWritten' ? null : mark }
}

/**
 * Reads a value that a person typed for one cell of a count or a tally, as a sheet would be read, but with nothing left
 * open: a date whole, a decimal point, the table's own unit.
 *
 * @param isNumber true for columns of numbers; factors may be either
 * @throws ThrumError exchange/typed/refused with the reason, not-positive, out-of-range, not-one-of
 */
export function readTypedCell(table: TableName, column: string, isNumber: boolean, written: string): TypedCell {
  const text = written.trim()
  if (isNumber) {
    if (text === 'missing') return { to: null, mark: 'lost' }
    if (text === 'not-looked-for') return { to: null, mark: 'notLookedFor' }
    if (text === '') refuse(column, written, saying('exchange/typed/nothing'))
    return typedNumber(table, column, text)
  }
  const name = column === 'note' ? text : plainName(text)
  if (table === 'count' && column === 'unit' && !(countingUnits as readonly string[]).includes(name)) {
    throw new ThrumError('exchange/typed/not-one-of', { column, written, choices: countingUnits.join(', ') })
  }
  return { to: name === '' || name === 'missing' ? null : name, mark: null }
}

/** The unit in which a column of numbers is kept; null for texts and for columns that no declaration names. */
export function unitOfColumn(table: TableName, column: string): string | null {
  return declarationOf(table, column)?.unit ?? null
}
