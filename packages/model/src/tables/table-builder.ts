import type { NamedColumn } from '../columns/codec.ts'
import type { Column, TextColumn } from '../columns/column.ts'
import { isWithoutNumber, mark } from '../columns/mark.ts'
import { type TableName, tableDeclarations } from './declarations.ts'
import type { Table } from './table.ts'

/** One block of rows that came from one fact. */
export interface Block {
  readonly source: string
  readonly rows: number
  readonly columns: readonly NamedColumn[]
}

interface Piece {
  readonly at: number
  readonly column: Column
}

function joinNumbers(rows: number, pieces: readonly Piece[]): Column {
  const values = new Float64Array(rows).fill(Number.NaN)
  const covered = pieces.reduce((sum, { column }) => sum + (column.type === 'number' ? column.values.length : 0), 0)
  const marked = covered < rows || pieces.some(({ column }) => column.type === 'number' && column.marks !== null)
  const marks = marked ? new Uint8Array(rows).fill(mark.notLookedFor) : null
  for (const { at, column } of pieces) {
    if (column.type !== 'number') continue
    values.set(column.values, at)
    if (marks === null) continue
    if (column.marks === null) marks.fill(mark.asWritten, at, at + column.values.length)
    else marks.set(column.marks, at)
  }
  return { type: 'number', values, marks }
}

function joinTexts(rows: number, pieces: readonly Piece[]): Column {
  const codes = new Int32Array(rows).fill(-1)
  const dictionary: string[] = []
  const codeOf = new Map<string, number>()
  for (const { at, column } of pieces) {
    if (column.type !== 'text') continue
    const newCode = column.dictionary.map((word) => {
      const known = codeOf.get(word)
      if (known !== undefined) return known
      codeOf.set(word, dictionary.length)
      dictionary.push(word)
      return dictionary.length - 1
    })
    const from = column.codes
    for (let row = 0; row < from.length; row++) {
      const code = from[row] as number
      if (code >= 0) codes[at + row] = newCode[code] as number
    }
  }
  return { type: 'text', codes, dictionary }
}

/** Texts of numbers, where one file wrote numbers and another texts under one name. */
function asText(column: Column): TextColumn {
  if (column.type === 'text') return column
  const dictionary: string[] = []
  const codeOf = new Map<number, number>()
  const codes = Int32Array.from(column.values, (value) => {
    if (Number.isNaN(value)) return -1
    const known = codeOf.get(value)
    if (known !== undefined) return known
    codeOf.set(value, dictionary.length)
    dictionary.push(String(value))
    return dictionary.length - 1
  })
  return { type: 'text', codes, dictionary }
}

/** Joins blocks, in the order given, into one table. Columns a block lacks are "not looked for" in its rows. */
export function buildTable<N extends TableName>(name: N, blocks: readonly Block[]): Table<N> {
  const rows = blocks.reduce((sum, block) => sum + block.rows, 0)
  const sourceOf = new Int32Array(rows)
  const rowInSource = new Int32Array(rows)
  const pieces = new Map<string, Piece[]>()
  let at = 0
  blocks.forEach((block, k) => {
    sourceOf.fill(k, at, at + block.rows)
    for (let row = 0; row < block.rows; row++) rowInSource[at + row] = row
    for (const { name: column, column: values } of block.columns) {
      const list = pieces.get(column) ?? []
      list.push({ at, column: values })
      pieces.set(column, list)
    }
    at += block.rows
  })
  const noNumbers = joinNumbers(rows, [])
  const noTexts = joinTexts(rows, [])
  const columns: { [column: string]: Column } = {}
  for (const [column, declared] of Object.entries(tableDeclarations[name])) {
    const found = (pieces.get(column) ?? []).filter((piece) => piece.column.type === declared.type)
    pieces.delete(column)
    if (found.length === 0) columns[column] = declared.type === 'number' ? noNumbers : noTexts
    else columns[column] = declared.type === 'number' ? joinNumbers(rows, found) : joinTexts(rows, found)
  }
  const factors = new Map<string, Column>()
  for (const [column, found] of pieces) {
    const mixed = new Set(found.map((piece) => piece.column.type)).size > 1
    if (mixed)
      factors.set(
        column,
        joinTexts(
          rows,
          found.map((piece) => ({ at: piece.at, column: asText(piece.column) })),
        ),
      )
    else factors.set(column, found[0]?.column.type === 'number' ? joinNumbers(rows, found) : joinTexts(rows, found))
  }
  return {
    name,
    rows,
    columns: columns as Table<N>['columns'],
    factors,
    sources: blocks.map((block) => block.source),
    sourceOf,
    rowInSource,
  }
}

/** A copy of a table with some cells replaced; untouched columns are shared. */
export interface CellChange {
  readonly row: number
  readonly column: string
  readonly to: string | number | null
  readonly mark: number
}

function changeColumn(column: Column, changes: readonly CellChange[]): Column {
  if (column.type === 'number') {
    const values = column.values.slice()
    const marks = column.marks?.slice() ?? new Uint8Array(values.length)
    for (const { row, to, mark: code } of changes) {
      values[row] = typeof to === 'number' ? to : Number.NaN
      marks[row] = typeof to === 'number' || isWithoutNumber(code) ? code : mark.lost
    }
    return { type: 'number', values, marks }
  }
  const codes = column.codes.slice()
  const dictionary = [...column.dictionary]
  for (const { row, to } of changes) {
    if (to === null) codes[row] = -1
    else {
      const word = String(to)
      const known = dictionary.indexOf(word)
      codes[row] = known >= 0 ? known : dictionary.push(word) - 1
    }
  }
  return { type: 'text', codes, dictionary }
}

function emptyFactor(rows: number, changes: readonly CellChange[]): Column {
  const isText = changes.some(({ to }) => typeof to === 'string')
  return isText ? joinTexts(rows, []) : joinNumbers(rows, [])
}

export function changeCells<N extends TableName>(table: Table<N>, changes: readonly CellChange[]): Table<N> {
  if (changes.length === 0) return table
  const byColumn = Map.groupBy(changes, (change) => change.column)
  const columns: { [column: string]: Column } = { ...(table.columns as { [column: string]: Column }) }
  const factors = new Map(table.factors)
  for (const [name, list] of byColumn) {
    const declared = Object.hasOwn(columns, name) ? columns[name] : undefined
    // A correction may say something that no file had a column for.
    const column = declared ?? factors.get(name) ?? emptyFactor(table.rows, list)
    if (declared === undefined) factors.set(name, changeColumn(column, list))
    else columns[name] = changeColumn(column, list)
  }
  return { ...table, columns: columns as Table<N>['columns'], factors }
}

/** A copy of a table without the rows for which `keep` is 0. */
export function keepRows<N extends TableName>(
  table: Table<N>,
  keep: Uint8Array,
): { readonly table: Table<N>; readonly newRow: Int32Array } {
  const newRow = new Int32Array(table.rows).fill(-1)
  let rows = 0
  for (let row = 0; row < table.rows; row++) if (keep[row] === 1) newRow[row] = rows++
  if (rows === table.rows) return { table, newRow }
  const seen = new Map<Column, Column>()
  const take = (column: Column): Column => {
    const known = seen.get(column)
    if (known !== undefined) return known
    const taken: Column =
      column.type === 'text'
        ? { type: 'text', codes: column.codes.filter((_, row) => keep[row] === 1), dictionary: column.dictionary }
        : {
            type: 'number',
            values: column.values.filter((_, row) => keep[row] === 1),
            marks: column.marks?.filter((_, row) => keep[row] === 1) ?? null,
          }
    seen.set(column, taken)
    return taken
  }
  const columns = Object.fromEntries(
    Object.entries(table.columns as { [column: string]: Column }).map(([name, column]) => [name, take(column)]),
  )
  return {
    newRow,
    table: {
      ...table,
      rows,
      columns: columns as Table<N>['columns'],
      factors: new Map([...table.factors].map(([name, column]) => [name, take(column)])),
      sourceOf: table.sourceOf.filter((_, row) => keep[row] === 1),
      rowInSource: table.rowInSource.filter((_, row) => keep[row] === 1),
    },
  }
}
