import { dayNumber, mark, markNames } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import type { Grid, GridColumn } from './grid.ts'

const signs = ['>=', '<=', '!=', '=', '~', '>', '<'] as const
type Sign = (typeof signs)[number]

interface Filter {
  readonly column: GridColumn
  readonly sign: Sign
  readonly value: string
}

/** A filter as it is written; of columns whose names begin alike the longest is meant. */
function parseFilter({ columns }: Pick<Grid, 'columns'>, text: string): Filter {
  const fits = columns
    .filter(({ name }) => text.startsWith(name))
    .sort((a, b) => b.name.length - a.name.length)
    .flatMap((column): readonly Filter[] => {
      const rest = text.slice(column.name.length).trimStart()
      const sign = signs.find((own) => rest.startsWith(own))
      return sign === undefined ? [] : [{ column, sign, value: rest.slice(sign.length).trim() }]
    })
  const found = fits[0]
  if (found !== undefined) return found
  throw noSuchColumn({ columns }, text)
}

export function noSuchColumn({ columns }: Pick<Grid, 'columns'>, found: string): ThrumError {
  return new ThrumError('server/counts/no-such-column', { found, known: columns.map(({ name }) => name).join(', ') })
}

/** A value of a filter as the column's numbers have it: a date as a day, a time as minutes. */
function numberOf({ type }: GridColumn, value: string): number {
  if (type === 'date') return dayNumber(value)
  const time = type === 'time' ? /^(\d{1,2}):(\d\d)$/u.exec(value) : null
  if (time !== null) return Number(time[1]) * 60 + Number(time[2])
  return value === '' ? Number.NaN : Number(value)
}

const folded = (text: string): string => text.toLowerCase()

function holdsNumber(sign: Sign, limit: number): (value: number) => boolean {
  switch (sign) {
    case '>':
      return (value) => value > limit
    case '<':
      return (value) => value < limit
    case '>=':
      return (value) => value >= limit
    case '<=':
      return (value) => value <= limit
    case '!=':
      return (value) => value !== limit
    default:
      return (value) => value === limit
  }
}

/** Whether a row of numbers passes. `column=waiting` and the names of the other marks ask for what stands beside them. */
function passesNumber({ column, sign, value }: Filter): (row: number) => boolean {
  const isEqual = sign === '=' || sign === '!='
  if (sign === '~') {
    const part = folded(value)
    return (row) => folded(String(column.cell(row) ?? '')).includes(part)
  }
  if (isEqual && value === '') return (row) => (column.cell(row) === null) === (sign === '=')
  const named = markNames.find((name) => name === value)
  if (isEqual && named !== undefined) return (row) => (column.markOf(row) === mark[named]) === (sign === '=')
  const limit = numberOf(column, value)
  if (Number.isNaN(limit))
    throw new ThrumError('server/counts/not-a-number', { found: `${column.name}${sign}${value}`, column: column.name })
  const holds = holdsNumber(sign, limit)
  const numbers = column.numbers as Float64Array
  return (row) => {
    const found = numbers[row] as number
    return !Number.isNaN(found) && holds(found)
  }
}

/** Whether a row of words passes: each word is looked at once. */
function passesWord({ column, sign, value }: Filter): (row: number) => boolean {
  const { codes, dictionary } = column.words as NonNullable<GridColumn['words']>
  const part = folded(value)
  const holds = (word: string): boolean => {
    if (sign === '~') return folded(word).includes(part)
    if (sign === '=') return word === value
    return sign === '!=' ? word !== value : holdsNumber(sign, 0)(word < value ? -1 : word > value ? 1 : 0)
  }
  const passes = Uint8Array.from(dictionary, (word) => (holds(word) ? 1 : 0))
  const none = value === '' ? sign === '=' : sign === '!='
  return (row) => {
    const code = codes[row] as number
    return code < 0 ? none : passes[code] === 1
  }
}

/**
 * Rows that pass every filter, in the order of the grid.
 *
 * @throws ThrumError server/counts/no-such-column, server/counts/not-a-number
 */
export function filterRows(grid: Grid, filters: readonly string[], addresses: readonly string[] | null): Int32Array {
  const passes = filters
    .map((text) => parseFilter(grid, text))
    .map((filter) => (filter.column.words === null ? passesNumber(filter) : passesWord(filter)))
  const all =
    addresses === null ? Int32Array.from({ length: grid.rows }, (_, row) => row) : Int32Array.from(grid.rowsAt(addresses))
  return passes.length === 0 ? all : all.filter((row) => passes.every((pass) => pass(row)))
}
