import { nothingWritten, type Reading } from '../cell/reading.ts'
import { measureRoles } from '../mapping/roles.ts'
import type { Mapping } from '../mapping/shape.ts'
import {
  type CellSource,
  clockSource,
  constantSource,
  dateSource,
  measureSource,
  minutesSource,
  type NumberHabits,
  offsetSource,
  valueAt,
} from './cell-source.ts'
import type { MappedColumns } from './mapped-columns.ts'

/** A number column of the table `count` and where its cells come from. */
export interface WatchColumn {
  readonly column: string
  readonly source: CellSource
  /** For numbers that no declaration names: the unit the mapping gives. */
  readonly unit?: string
}

/** Longest watch believed: a day. */
const longestMinutes = 1440

function positiveMinutes(reading: Reading): Reading {
  if (reading.kind !== 'number' && reading.kind !== 'approximate') return reading
  if (reading.value <= 0) return { kind: 'waiting', written: reading.written, because: 'exchange/effort/not-positive' }
  return reading.value > longestMinutes
    ? { kind: 'waiting', written: reading.written, because: 'exchange/effort/too-long' }
    : reading
}

/** Minutes between start and end, less pauses. Never negative, never over midnight without asking. */
function betweenTimes(start: CellSource, end: CellSource, pauses: CellSource | null): CellSource {
  const at = (row: number): Reading => {
    const from = start.at(row)
    const to = end.at(row)
    const written = from.written === '' && to.written === '' ? '' : `${from.written.trim()} - ${to.written.trim()}`
    if (from.kind === 'waiting' || to.kind === 'waiting')
      return { kind: 'waiting', written, because: 'exchange/effort/time-waits' }
    if (from.kind !== 'number' || to.kind !== 'number') return { kind: 'not-looked-for', written }
    const minutes = to.value - from.value
    if (minutes < 0) return { kind: 'waiting', written, because: 'exchange/effort/ends-before-start' }
    const paused = pauses?.at(row) ?? nothingWritten
    if (paused.kind === 'waiting') return { kind: 'waiting', written, because: 'exchange/effort/time-waits' }
    return positiveMinutes({ kind: 'number', written, value: minutes - ('value' in paused ? paused.value : 0) })
  }
  return { header: `${start.header} - ${end.header}`, filled: start.filled || end.filled, distinct: [], at }
}

const typedOrBetween = (typed: CellSource | null, between: CellSource | null): CellSource | null => {
  if (typed === null || between === null) return typed ?? between
  return {
    header: typed.header,
    filled: true,
    distinct: typed.distinct,
    at: (row) => {
      const reading = typed.at(row)
      return reading.kind === 'not-looked-for' ? between.at(row) : positiveMinutes(reading)
    },
  }
}

type WithValue = Extract<Reading, { readonly value: number }>

/** A product is as sure as its less sure part; two parts that are vague in different ways have none. */
function productOf(first: WithValue, second: WithValue, written: string): Reading {
  const value = first.value * second.value
  if (first.kind !== 'number' && second.kind !== 'number' && first.kind !== second.kind) {
    return { kind: 'waiting', written, because: 'exchange/cell/not-a-number' }
  }
  if (first.kind !== 'number') return { ...first, written, value }
  if (second.kind !== 'number') return { ...second, written, value }
  const because = first.because ?? second.because
  return because === undefined ? { kind: 'number', written, value } : { kind: 'number', written, value, because }
}

/** Flowers: typed; or units times flowers a unit; or flowers a square metre times the area watched. */
function product(a: CellSource, b: CellSource): CellSource {
  return {
    header: `${a.header} × ${b.header}`,
    filled: a.filled && b.filled,
    distinct: [],
    at: (row) => {
      const first = a.at(row)
      const second = b.at(row)
      const written = `${first.written.trim()} × ${second.written.trim()}`
      if (first.kind === 'waiting') return { ...first, written }
      if (second.kind === 'waiting') return { ...second, written }
      if (!('value' in first) || !('value' in second)) {
        return { kind: first.kind === 'lost' || second.kind === 'lost' ? 'lost' : 'not-looked-for', written }
      }
      return productOf(first, second, written)
    },
  }
}

function flowersOf(columns: MappedColumns, mapping: Mapping, habits: NumberHabits, area: CellSource | null): CellSource | null {
  const typed = columns.one('flowers')
  if (typed !== undefined) {
    const source = measureSource(typed, mapping, habits)
    if (typed.mapped.unit !== '{flowers}/m2') return source
    return area === null ? null : product(source, area)
  }
  const units = columns.one('flowerUnits')
  const each = columns.one('flowersPerUnit')
  if (units === undefined || each === undefined) return null
  return product(measureSource(units, mapping, habits), measureSource(each, mapping, habits))
}

/** Effort of each row, and where minutes that were typed differ from those between start and end. */
export interface Effort {
  readonly source: CellSource
  readonly differs: (row: number) => boolean
  /** True where the mapping gives one number for every row. */
  readonly constant: boolean
}

/** The effort of each row, or null where neither a column nor the mapping says one. */
export function effortSource(columns: MappedColumns, mapping: Mapping, habits: NumberHabits): Effort | null {
  const start = columns.one('start')
  const end = columns.one('end')
  const pauses = columns.one('pauses')
  const minutes = columns.one('minutes')
  const typed = minutes === undefined ? null : minutesSource(minutes, mapping, habits)
  const checked = typed === null ? null : { ...typed, at: (row: number) => positiveMinutes(typed.at(row)) }
  const between =
    start === undefined || end === undefined
      ? null
      : betweenTimes(
          clockSource(start, mapping),
          clockSource(end, mapping),
          pauses === undefined ? null : minutesSource(pauses, mapping, habits),
        )
  const source = typedOrBetween(checked, between)
  const differs = (row: number): boolean => {
    if (checked === null || between === null) return false
    // A second of rounding either way is no difference.
    return Math.abs(valueAt(checked, row) - valueAt(between, row)) > 1 / 60
  }
  if (source !== null) return { source, differs, constant: false }
  const constant = mapping.constants?.minutes
  return constant === undefined ? null : { source: constantSource('minutes', constant), differs, constant: true }
}

/** Every number column of the table `count` that the sheet fills, effort apart. */
export function watchColumns(columns: MappedColumns, mapping: Mapping, habits: NumberHabits): readonly WatchColumn[] {
  const found: WatchColumn[] = []
  const add = (column: string, source: CellSource | null): void => {
    if (source?.filled) found.push({ column, source })
  }
  const measured = (role: (typeof measureRoles)[number]): CellSource | null => {
    const column = columns.one(role)
    return column === undefined ? null : measureSource(column, mapping, habits)
  }
  add('date', dateSource(columns, mapping))
  for (const role of ['start', 'end'] as const) {
    const column = columns.one(role)
    if (column !== undefined) add(role, clockSource(column, mapping))
  }
  const offset = columns.one('offset')
  if (offset !== undefined) add('offset', offsetSource(offset, mapping))
  const pauses = columns.one('pauses')
  if (pauses !== undefined) add('pauses', minutesSource(pauses, mapping, habits))
  const saidArea = mapping.constants?.area
  const area = measured('area') ?? (saidArea === undefined ? null : constantSource('area', saidArea))
  add('area', area)
  add('flowers', flowersOf(columns, mapping, habits, area))
  for (const role of measureRoles) {
    if (role !== 'area' && role !== 'flowers' && role !== 'flowerUnits' && role !== 'flowersPerUnit') add(role, measured(role))
  }
  for (const column of columns.every('factor')) {
    const { unit, factor } = column.mapped
    if (unit !== undefined) found.push({ column: factor ?? column.header, source: measureSource(column, mapping, habits), unit })
  }
  return found
}
