import type { NamedColumn } from '../columns/codec.ts'
import type { Column } from '../columns/column.ts'
import { isWithoutNumber, mark } from '../columns/mark.ts'
import { type ColumnJoiner, joinDeclared, joinFactor, joinNumbers, joinTexts } from './column-joiner.ts'
import { type ColumnDeclaration, type TableName, tableDeclarations } from './declarations.ts'
import type { Table } from './table.ts'

/** One block of rows that came from one fact. */
export interface Block {
  readonly source: string
  readonly rows: number
  /** Asked for once. */
  readonly columns: readonly NamedColumn[]
}

/** Joins blocks, in the order given, into one table. Columns a block lacks are "not looked for" in its rows. */
export function buildTable<N extends TableName>(name: N, blocks: readonly Block[]): Table<N> {
  const rows = blocks.reduce((sum, block) => sum + block.rows, 0)
  const sourceOf = new Int32Array(rows)
  const rowInSource = new Int32Array(rows)
  const declarations = new Map<string, ColumnDeclaration>(Object.entries(tableDeclarations[name]))
  const declared = new Map<string, ColumnJoiner>()
  const joinedFactors = new Map<string, ColumnJoiner>()
  let at = 0
  blocks.forEach((block, k) => {
    sourceOf.fill(k, at, at + block.rows)
    for (let row = 0; row < block.rows; row++) rowInSource[at + row] = row
    for (const { name: column, column: piece } of block.columns) {
      const type = declarations.get(column)?.type
      if (type !== undefined && type !== piece.type) continue
      const among = type === undefined ? joinedFactors : declared
      const joiner = among.get(column) ?? (type === undefined ? joinFactor(rows) : joinDeclared(rows, type))
      among.set(column, joiner)
      joiner.take(at, piece)
    }
    at += block.rows
  })
  // Columns that no block has are one column of each type.
  const none = { number: joinNumbers(rows).finish(), text: joinTexts(rows).finish() }
  const columns = Object.fromEntries(
    [...declarations].map(([column, { type }]): [string, Column] => [column, declared.get(column)?.finish() ?? none[type]]),
  )
  return {
    name,
    rows,
    columns: columns as Table<N>['columns'],
    factors: new Map([...joinedFactors].map(([column, joiner]) => [column, joiner.finish()])),
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
  return (isText ? joinTexts(rows) : joinNumbers(rows)).finish()
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
