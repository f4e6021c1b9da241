import { InputError, requireFinite } from '@thrum/model/ground'

/** A measured column: one finite number a row. */
export interface NumberColumn {
  readonly kind: 'number'
  readonly values: ArrayLike<number>
}

/** A column of levels, the first of which is the reference; `of` gives each row its level, by place from 0. */
export interface LevelColumn {
  readonly kind: 'levels'
  readonly levels: readonly string[]
  readonly of: Int32Array
}

export type ModelColumn = NumberColumn | LevelColumn

/** Columns by name, all of one length. */
export interface ModelColumns {
  readonly [name: string]: ModelColumn
}

/** A value for each column: a level by its name, or a number. */
export interface ColumnValues {
  readonly [name: string]: string | number
}

const refuse = (found: string): never => {
  throw new InputError('ground/input/out-of-range', found)
}

export const lengthOf = (column: ModelColumn): number => (column.kind === 'number' ? column.values : column.of).length

/** The column of that name. @throws InputError where there is none */
export function columnNamed(columns: ModelColumns, name: string): ModelColumn {
  const column = Object.hasOwn(columns, name) ? columns[name] : undefined
  return column ?? refuse(`there is no column ${name}; expected one of ${Object.keys(columns).join(', ')}`)
}

/** @throws InputError on a length that differs, a number that is not finite, a level that is not there or there twice */
export function requireColumn(name: string, column: ModelColumn, rows: number): void {
  if (lengthOf(column) !== rows)
    throw new InputError('ground/input/lengths-differ', `column ${name} has ${lengthOf(column)} rows; expected ${rows}`)
  if (column.kind === 'number') {
    for (let i = 0; i < rows; i++) requireFinite(name, column.values[i] as number)
    return
  }
  const { levels, of } = column
  if (new Set(levels).size !== levels.length) refuse(`column ${name} has a level twice: ${levels.join(', ')}`)
  for (const place of of)
    if (!(place >= 0 && place < levels.length)) refuse(`column ${name} holds level ${place} of ${levels.length}`)
}

/** For each level, in how many rows it is. */
export function rowsByLevel({ levels, of }: LevelColumn): readonly number[] {
  const rows = levels.map(() => 0)
  for (const place of of) rows[place] = (rows[place] ?? 0) + 1
  return rows
}

/** Mean over the rows. */
export function meanOf({ values }: NumberColumn): number {
  let mean = 0
  for (let i = 0; i < values.length; i++) mean += ((values[i] as number) - mean) / (i + 1)
  return mean
}
