import { readFileSync } from 'node:fs'
import { type CountsRead, type Mapping, parseMapping, readCounts, readSheet, type Sheet } from '@thrum/exchange'
import { isoDate, type NamedColumn } from '@thrum/model'
import { unwatched } from '@thrum/model/ground'

const here = new URL('.', import.meta.url)

export function bytesOf(path: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(path, here)))
}

/** A file of the invented sheets. */
export const sheetBytes = (name: string): Uint8Array => bytesOf(`sheets/${name}`)

/** A file of the open-data extracts. */
export const extractBytes = (path: string): Uint8Array => bytesOf(`../../host/test/extracts/${path}`)

export function extractMapping(path: string): Mapping {
  return parseMapping(JSON.parse(new TextDecoder().decode(extractBytes(path))))
}

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)

export async function readBoth(bytes: Uint8Array, mapping: Mapping): Promise<{ sheet: Sheet; read: CountsRead }> {
  const sheet = readSheet(bytes, mapping.file)
  return { sheet, read: await readCounts(sheet, mapping, unwatched) }
}

function columnOf(columns: readonly NamedColumn[], name: string): NamedColumn['column'] {
  const found = columns.find((column) => column.name === name)
  if (found === undefined) throw new Error(`no column ${name} among ${columns.map((column) => column.name).join(', ')}`)
  return found.column
}

/** Numbers of a column; null where there is none. */
export function numbersOf(columns: readonly NamedColumn[], name: string): (number | null)[] {
  const column = columnOf(columns, name)
  if (column.type !== 'number') throw new Error(`${name} is no number column`)
  return Array.from(column.values, (value) => (Number.isNaN(value) ? null : value))
}

export function marksOf(columns: readonly NamedColumn[], name: string): number[] {
  const column = columnOf(columns, name)
  if (column.type !== 'number') throw new Error(`${name} is no number column`)
  return Array.from(column.values, (_, row) => column.marks?.[row] ?? 0)
}

export function textsOf(columns: readonly NamedColumn[], name: string): (string | null)[] {
  const column = columnOf(columns, name)
  if (column.type !== 'text') throw new Error(`${name} is no text column`)
  return Array.from(column.codes, (code) => column.dictionary[code] ?? null)
}

export function datesOf(read: CountsRead): (string | null)[] {
  return numbersOf(read.tables.count, 'date').map((day) => (day === null ? null : isoDate(day)))
}

export const total = (values: readonly (number | null)[]): number => values.reduce<number>((sum, value) => sum + (value ?? 0), 0)

/** Numbers of one kind, in the order of the counts. */
export function numbersOfKind(read: CountsRead, kind: string): (number | null)[] {
  const kinds = textsOf(read.tables.tally, 'kind')
  return numbersOf(read.tables.tally, 'number').filter((_, row) => kinds[row] === kind)
}

export function totals(read: CountsRead): { [kind: string]: number } {
  return Object.fromEntries(read.kinds.map(({ kind, total }) => [kind, total]))
}
