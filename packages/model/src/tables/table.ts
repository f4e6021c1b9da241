import type { Column, NumberColumn, TextColumn } from '../columns/column.ts'
import { addressOf, type RowAddress } from '../facts/fact.ts'
import { type ColumnDeclaration, type TableName, tableDeclarations } from './declarations.ts'

type ColumnOf<D> = D extends { readonly type: 'number' } ? NumberColumn : TextColumn

/** A table in memory: every declared column is there, absent ones shared and empty; factors stand apart. */
export interface Table<N extends TableName = TableName> {
  readonly name: N
  readonly rows: number
  readonly columns: { readonly [C in keyof (typeof tableDeclarations)[N]]: ColumnOf<(typeof tableDeclarations)[N][C]> }
  /** Columns that no declaration names, by the name their file gave them. */
  readonly factors: ReadonlyMap<string, Column>
  /** Facts that rows came from, and for each row which of them and the row inside it (-1: the fact itself). */
  readonly sources: readonly string[]
  readonly sourceOf: Int32Array
  readonly rowInSource: Int32Array
}

export function rowAddress(table: Pick<Table, 'sources' | 'sourceOf' | 'rowInSource'>, row: number): RowAddress {
  return addressOf(table.sources[table.sourceOf[row] ?? -1] ?? '', table.rowInSource[row] ?? -1)
}

/** The table's column of that name, declared or a factor; undefined where there is none. */
export function findColumn(table: Table, name: string): Column | undefined {
  const declared = table.columns as { readonly [column: string]: Column | undefined }
  return Object.hasOwn(tableDeclarations[table.name], name) ? declared[name] : table.factors.get(name)
}

export function declarationOf(table: TableName, column: string): ColumnDeclaration | undefined {
  const declared = tableDeclarations[table] as { readonly [column: string]: ColumnDeclaration }
  return Object.hasOwn(declared, column) ? declared[column] : undefined
}
