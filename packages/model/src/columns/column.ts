import { mark } from './mark.ts'

/** Numbers with a mark each. Where a mark says there is no number, the value is NaN. */
export interface NumberColumn {
  readonly type: 'number'
  readonly values: Float64Array
  /** null: every cell is as written. */
  readonly marks: Uint8Array | null
}

/** Texts as codes into a dictionary; -1 where nothing was written. */
export interface TextColumn {
  readonly type: 'text'
  readonly codes: Int32Array
  readonly dictionary: readonly string[]
}

export type Column = NumberColumn | TextColumn

export function numberColumn(values: readonly (number | null)[]): NumberColumn {
  const marks = values.some((value) => value === null)
    ? Uint8Array.from(values, (value) => (value === null ? mark.notLookedFor : mark.asWritten))
    : null
  return { type: 'number', values: Float64Array.from(values, (value) => value ?? Number.NaN), marks }
}

export function textColumn(values: readonly (string | null)[]): TextColumn {
  const dictionary: string[] = []
  const codeOf = new Map<string, number>()
  const codes = Int32Array.from(values, (value) => {
    if (value === null) return -1
    const known = codeOf.get(value)
    if (known !== undefined) return known
    dictionary.push(value)
    codeOf.set(value, dictionary.length - 1)
    return dictionary.length - 1
  })
  return { type: 'text', codes, dictionary }
}

export function rowsOf(column: Column): number {
  return column.type === 'number' ? column.values.length : column.codes.length
}

/** The text of a row, or null where nothing was written. */
export function textAt(column: TextColumn, row: number): string | null {
  const code = column.codes[row] ?? -1
  return code < 0 ? null : (column.dictionary[code] ?? null)
}

/** The number of a row, or null where there is none. */
export function numberAt(column: NumberColumn, row: number): number | null {
  const value = column.values[row]
  return value === undefined || Number.isNaN(value) ? null : value
}

export function markAt(column: NumberColumn, row: number): number {
  return column.marks?.[row] ?? mark.asWritten
}
