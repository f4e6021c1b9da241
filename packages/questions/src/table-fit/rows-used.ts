import { ThrumError } from '@thrum/model/ground'
import { type FitAsked, isShare } from './asked.ts'
import type { FitColumn, FitTable } from './table.ts'

/** Rows that are left out because a cell of a column is missing. */
export interface LeftOut {
  readonly column: string
  readonly rows: number
  /** The first of them, as lines of the file. */
  readonly lines: readonly number[]
}

export interface RowsUsed {
  /** Places of the rows in the table. */
  readonly rows: readonly number[]
  readonly leftOut: readonly LeftOut[]
  /** Columns whose cells are taken as names. */
  readonly named: ReadonlySet<FitColumn>
}

/** Lines that are named of one thing. */
const linesNamed = 5

const lineOf = ({ lines }: FitTable, row: number): number => lines[row] ?? 0

/** Columns that must hold numbers, by the option that names them. */
function numberColumns({ response, effort, offset, trials, slope }: FitAsked): readonly (readonly [string, FitColumn])[] {
  const optional = [
    ['effort', effort],
    ['offset', offset],
    ['trials', trials],
    ['slope', slope?.column ?? null],
  ] as const
  return [
    ['response', response],
    ...optional.flatMap(([option, column]): (readonly [string, FitColumn])[] => (column === null ? [] : [[option, column]])),
  ]
}

const isText = ({ texts, numbers }: FitColumn, row: number): boolean => texts[row] !== null && Number.isNaN(numbers[row])

function requireNumbers(table: FitTable, option: string, column: FitColumn): void {
  const row = column.texts.findIndex((_, k) => isText(column, k))
  if (row >= 0)
    throw new ThrumError('questions/fit/not-a-number', {
      ...{ option, column: column.name, line: lineOf(table, row), found: column.texts[row] ?? '' },
    })
}

/** True where the cells of a column are names; a column of numbers and texts is neither until a person says so. */
function isOfNames(table: FitTable, column: FitColumn): boolean {
  const written = column.texts.flatMap((text, row) => (text === null ? [] : [row]))
  const texts = written.filter((row) => isText(column, row))
  const [first] = texts
  if (first === undefined) return false
  if (texts.length === written.length) return true
  throw new ThrumError('questions/fit/mixed-column', {
    ...{ column: column.name, line: lineOf(table, first), found: column.texts[first] ?? '' },
    ...{ texts: texts.length, numbers: written.length - texts.length },
  })
}

/** Rows of the table that break a rule, as an error that names the first of them. */
function requireOfRows(
  table: FitTable,
  code: string,
  column: FitColumn,
  rows: readonly number[],
  fits: (row: number) => boolean,
): void {
  const broken = rows.filter((row) => !fits(row))
  const [first] = broken
  if (first === undefined) return
  throw new ThrumError(`questions/fit/${code}`, {
    column: column.name,
    found: column.texts[first] ?? '',
    rows: broken.length,
    lines: broken
      .slice(0, linesNamed)
      .map((row) => lineOf(table, row))
      .join(', '),
  })
}

function requireValues(table: FitTable, asked: FitAsked, rows: readonly number[]): void {
  const { response, family, trials, effort } = asked
  const number = (column: FitColumn, row: number): number => column.numbers[row] ?? Number.NaN
  const isCount = (column: FitColumn) => (row: number) => Number.isSafeInteger(number(column, row)) && number(column, row) >= 0
  if (family !== 'gaussian') requireOfRows(table, 'not-a-count', response, rows, isCount(response))
  if (trials !== null && isShare(family)) {
    requireOfRows(table, 'not-a-count', trials, rows, isCount(trials))
    requireOfRows(table, 'above-trials', response, rows, (row) => number(response, row) <= number(trials, row))
  }
  if (effort !== null) requireOfRows(table, 'no-effort', effort, rows, (row) => number(effort, row) > 0)
}

/**
 * The rows that hold all that is asked, and what the others lack.
 *
 * @param among rows that may be used; all unless said
 * @throws ThrumError questions/fit/not-a-number, mixed-column, not-a-count, above-trials, no-effort, no-rows: each names lines of the file
 */
export function rowsUsed(table: FitTable, asked: FitAsked, among?: readonly number[]): RowsUsed {
  const numbers = numberColumns(asked)
  for (const [option, column] of numbers) requireNumbers(table, option, column)
  const terms = new Set([...asked.fixed, ...(asked.zerosBy ?? []), ...(asked.compare ?? [])].flat())
  const named = new Set(
    [...terms].filter((column) => asked.asLevels.has(column) || asked.orders.has(column) || isOfNames(table, column)),
  )
  const used = new Set([...numbers.map(([, column]) => column), ...terms, ...asked.random.flat()])
  const all = among ?? Array.from({ length: table.lines.length }, (_, row) => row)
  const rows = all.filter((row) => [...used].every(({ texts }) => texts[row] !== null && texts[row] !== undefined))
  const leftOut = [...used].flatMap(({ name, texts }): LeftOut[] => {
    const missing = all.filter((row) => (texts[row] ?? null) === null)
    const lines = missing.slice(0, linesNamed).map((row) => lineOf(table, row))
    return missing.length === 0 ? [] : [{ column: name, rows: missing.length, lines }]
  })
  if (rows.length === 0)
    throw new ThrumError('questions/fit/no-rows', { columns: leftOut.map(({ column }) => column).join(', ') })
  requireValues(table, asked, rows)
  return { rows, leftOut, named }
}
