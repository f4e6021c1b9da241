import { type Column, mark, type NamedColumn } from '@thrum/model'

export type ColumnHeads = readonly NamedColumn[]

/** Columns that say where something exactly is, by the names people give them; common practice, no source. */
const placeColumns: ReadonlySet<string> = new Set([
  'latitude',
  'longitude',
  'polygon',
  'lat',
  'lon',
  'lng',
  'long',
  'easting',
  'northing',
  'coordinates',
])

export function isPlaceColumn(name: string): boolean {
  return placeColumns.has(name.toLowerCase())
}

/** The column with nothing left in these rows: numbers are lost, and a text that no other row holds leaves the dictionary. */
export function withoutRows(column: Column, rows: readonly number[]): Column {
  if (column.type === 'number') {
    const values = column.values.slice()
    const marks = column.marks?.slice() ?? new Uint8Array(values.length).fill(mark.asWritten)
    for (const row of rows) {
      values[row] = Number.NaN
      marks[row] = mark.lost
    }
    return { type: 'number', values, marks }
  }
  const codes = column.codes.slice()
  for (const row of rows) codes[row] = -1
  // A text that no other row holds must leave the dictionary too.
  const used = new Set(codes)
  const newCode = new Map<number, number>()
  const dictionary = column.dictionary.filter((_, code) => {
    if (used.has(code)) newCode.set(code, newCode.size)
    return used.has(code)
  })
  return { type: 'text', codes: codes.map((code) => newCode.get(code) ?? -1), dictionary }
}

/** Columns of a batch without the coordinates of these fields; null where there are none. */
export function withoutPlace(columns: ColumnHeads, places: ReadonlySet<string>): ColumnHeads | null {
  const field = columns.find(({ name }) => name === 'field')?.column
  if (field?.type !== 'text') return null
  const forgotten = new Set(field.dictionary.flatMap((name, code) => (places.has(name) ? [code] : [])))
  const rows = [...field.codes].flatMap((code, row) => (forgotten.has(code) ? [row] : []))
  if (rows.length === 0) return null
  return columns.map((named) => (isPlaceColumn(named.name) ? { ...named, column: withoutRows(named.column, rows) } : named))
}
