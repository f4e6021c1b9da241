import { type Column, declarationOf, isoDate, mark, rowAddress, type Snapshot, textAt } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import type { CountsColumn } from '../../api/counts.ts'
import { tallyColumns } from './tally-columns.ts'

/** A column of the grid. Cells are made when they are looked at: a page has a hundred rows, a project a hundred thousand. */
export interface GridColumn extends Pick<CountsColumn, 'name' | 'type' | 'unit'> {
  /** As a person reads it. */
  readonly title: string | Saying
  /** As a person reads it; null where there is nothing. */
  cell(row: number): string | number | null
  markOf(row: number): number
  /** Numbers as they are ordered and compared; null for texts. NaN where there is none. */
  readonly numbers: Float64Array | null
  /** Texts as codes into words (-1: none); null for numbers. */
  readonly words: { readonly codes: Int32Array; readonly dictionary: readonly string[] } | null
}

/** The counts of one state of the data as a grid: one row a count. */
export interface Grid {
  readonly rows: number
  readonly columns: readonly GridColumn[]
  address(row: number): string
  /** Line of the original file; null where there is none. */
  line(row: number): number | null
  /** Rows of counts that these addresses name: of counts themselves, or of their tallies. */
  rowsAt(addresses: readonly string[]): readonly number[]
}

/** Columns that stand beside the grid, or say nothing to a person. */
const beside: ReadonlySet<string> = new Set(['line', 'zeros'])

/** What says which watch it was; then how many were counted, then everything else. */
const first = ['field', 'plot', 'date', 'start', 'minutes', 'observer'] as const

function inReadingOrder(columns: readonly GridColumn[], tallies: readonly GridColumn[]): readonly GridColumn[] {
  const named = first.flatMap((name) => columns.find((column) => column.name === name) ?? [])
  return [...named, ...tallies, ...columns.filter((column) => !named.includes(column))]
}

const two = (number: number): string => String(number).padStart(2, '0')
const timeOf = (minutes: number): string => `${two(Math.floor(minutes / 60))}:${two(Math.floor(minutes % 60))}`

function typeOf(name: string, column: Column): GridColumn['type'] {
  if (column.type === 'text') return 'text'
  if (name === 'date') return 'date'
  return name === 'start' || name === 'end' ? 'time' : 'number'
}

/** A column of counts, declared or brought by a file. */
function countColumn(name: string, column: Column, isDeclared: boolean): GridColumn {
  const type = typeOf(isDeclared ? name : '', column)
  const head = {
    name,
    title: isDeclared ? saying(`server/column/${name}`) : name,
    type,
    unit: type === 'number' && isDeclared ? (declarationOf('count', name)?.unit ?? null) : null,
  }
  if (column.type === 'text') {
    return { ...head, cell: (row) => textAt(column, row), markOf: () => mark.asWritten, numbers: null, words: column }
  }
  const { values, marks } = column
  const shown = type === 'date' ? isoDate : type === 'time' ? timeOf : (value: number) => value
  return {
    ...head,
    cell: (row) => {
      const value = values[row] ?? Number.NaN
      return Number.isNaN(value) ? null : shown(value)
    },
    markOf: (row) => marks?.[row] ?? mark.asWritten,
    numbers: values,
    words: null,
  }
}

/** True where some cell says something: a number, a word, or why there is none. */
function saysSomething(column: Column): boolean {
  if (column.type === 'text') return column.codes.some((code) => code >= 0)
  const { values, marks } = column
  return values.some((value) => !Number.isNaN(value)) || (marks?.some((code) => code !== mark.notLookedFor) ?? false)
}

/** Builds the grid of a snapshot. Its columns share the arrays of the snapshot. */
export function buildGrid(snapshot: Snapshot): Grid {
  const { count, tally } = snapshot.tables
  const declared = Object.entries(count.columns as { readonly [name: string]: Column }).filter(
    ([name, column]) => !beside.has(name) && saysSomething(column),
  )
  const own = [...count.factors].filter(([name]) => !declared.some(([known]) => known === name))
  const columns = [
    ...declared.map(([name, column]) => countColumn(name, column, true)),
    ...own.map(([name, column]) => countColumn(name, column, false)),
  ]
  const { values: lines } = count.columns.line
  return {
    rows: count.rows,
    columns: inReadingOrder(columns, tallyColumns(snapshot, new Set(columns.map(({ name }) => name)))),
    address: (row) => rowAddress(count, row),
    line: (row) => {
      const line = lines[row] ?? Number.NaN
      return Number.isNaN(line) ? null : line
    },
    rowsAt: (addresses) => {
      const wanted = new Set(addresses)
      const found = new Set<number>()
      for (let row = 0; row < count.rows; row++) if (wanted.has(rowAddress(count, row))) found.add(row)
      if (found.size < wanted.size) {
        for (let row = 0; row < tally.rows; row++) {
          if (wanted.has(rowAddress(tally, row))) found.add(snapshot.tallyCount[row] as number)
        }
      }
      return [...found].sort((a, b) => a - b)
    },
  }
}
