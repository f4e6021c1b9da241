import { type Column, declarationOf, mark, markAt, type NamedColumn, numberAt, textAt } from '@thrum/model'
import type { CountsRead } from '../rows/counts-read.ts'
import { emptyCell, emptyNumber, emptyText, type MendedCell } from './cell.ts'
import type { ForgottenKey } from './forgotten-row.ts'

/** Who was counted: kind, caste, behaviour, as one text that two tables share. */
export type TallyLabel = string

export function tallyLabel(kind: string | null, caste: string | null, behaviour: string | null): TallyLabel {
  return [kind, caste, behaviour].filter((part) => part !== null && part !== '').join(', ')
}

/** Counts of one file and all it mended, as they are held: what the files said last, and what stands now. */
export interface HeldRows {
  /** Id of the project that holds them. */
  readonly project: string
  readonly rows: number
  /** Columns of counts that one of the files has. */
  readonly columns: ReadonlySet<string>
  address(row: number): string
  /** Line in the latest of the files that holds the row; null where it is not known. */
  line(row: number): number | null
  /** True for a row that does not stand: it was withdrawn, or forgotten. */
  isWithdrawn(row: number): boolean
  /** What recognises a row that was forgotten; null for every other row. */
  forgotten(row: number): { readonly keys: readonly ForgottenKey[] } | null
  said(row: number, column: string): MendedCell
  stands(row: number, column: string): MendedCell
  tallies(row: number): readonly HeldTally[]
}

export interface HeldTally {
  readonly label: TallyLabel
  readonly address: string
  readonly said: MendedCell
  readonly stands: MendedCell
  readonly isWithdrawn: boolean
}

/** Counts of the file that came, as it was read. */
export interface FreshRows {
  readonly rows: number
  readonly columns: ReadonlySet<string>
  line(row: number): number
  cell(row: number, column: string): MendedCell
  tallies(row: number): readonly FreshTally[]
}

export interface FreshTally {
  readonly label: TallyLabel
  /** Row of the table `tally` that was read. */
  readonly row: number
  readonly line: number | null
  readonly cell: MendedCell
}

/** A cell of a column, with what was written where it waits. */
export function cellOf(column: Column, row: number, written: () => string | undefined): MendedCell {
  if (column.type === 'text') {
    const text = textAt(column, row)
    return text === null ? emptyText : { value: text, mark: mark.asWritten }
  }
  const code = markAt(column, row)
  const value = numberAt(column, row)
  if (code !== mark.waiting) return value === null && code === mark.asWritten ? emptyNumber : { value, mark: code }
  return { value: null, mark: code, written: written() ?? '' }
}

const byName = (columns: readonly NamedColumn[]): ReadonlyMap<string, Column> =>
  new Map(columns.map(({ name, column }) => [name, column]))

/** What was written in the cells that wait, by table, column and row. */
export function writtenOf(setAside: readonly NamedColumn[]): (table: string, column: string, row: number) => string | undefined {
  const columns = byName(setAside)
  const texts = new Map<string, string>()
  const text = (name: string, row: number): string | null => {
    const column = columns.get(name)
    return column?.type === 'text' ? textAt(column, row) : null
  }
  const rows = columns.get('row')
  if (rows?.type === 'number') {
    rows.values.forEach((of, row) => {
      if (!Number.isNaN(of)) texts.set(`${text('table', row)}/${text('column', row)}/${of}`, text('written', row) ?? '')
    })
  }
  return (table, column, row) => texts.get(`${table}/${column}/${row}`)
}

/** Rows of the table `tally` by the count they belong to. */
function talliesByCount(counted: Column | undefined, counts: number): readonly (readonly number[])[] {
  const lists: number[][] = Array.from({ length: counts }, () => [])
  if (counted?.type !== 'number') return lists
  for (const [row, count] of counted.values.entries()) lists[count]?.push(row)
  return lists
}

/** Columns of counts that the mapping fills, whether any cell of them holds something or not. */
function mappedColumns({ mapping }: CountsRead): readonly string[] {
  return mapping.columns.flatMap(({ header, as, factor }) => {
    if (as === 'factor') return [factor ?? header]
    return declarationOf('count', as) === undefined ? [] : [as]
  })
}

/** What a file was read as, row by row. */
export function freshRows(read: CountsRead): FreshRows {
  const counts = byName(read.tables.count)
  const tallies = byName(read.tables.tally)
  const written = writtenOf(read.tables.setAside)
  const ofCount = talliesByCount(tallies.get('count'), read.counts)
  const number = tallies.get('number')
  const word = (name: string, row: number): string | null => {
    const column = tallies.get(name)
    return column?.type === 'text' ? textAt(column, row) : null
  }
  const lineOf = (columns: ReadonlyMap<string, Column>, row: number): number | null => {
    const column = columns.get('line')
    return column?.type === 'number' ? numberAt(column, row) : null
  }
  return {
    rows: read.counts,
    columns: new Set([...counts.keys(), ...mappedColumns(read)].filter((name) => name !== 'line')),
    line: (row) => lineOf(counts, row) ?? 0,
    cell: (row, column) => {
      const found = counts.get(column)
      return found === undefined
        ? emptyCell(declarationOf('count', column)?.type === 'number')
        : cellOf(found, row, () => written('count', column, row))
    },
    tallies: (row) =>
      (ofCount[row] ?? []).map((tally) => ({
        label: tallyLabel(word('kind', tally), word('caste', tally), word('behaviour', tally)),
        row: tally,
        line: lineOf(tallies, tally),
        cell: number === undefined ? emptyNumber : cellOf(number, tally, () => written('tally', 'number', tally)),
      })),
  }
}
