import { deflateSync, inflateSync } from 'fflate'
import { z } from 'zod'
import { InputError, ThrumError } from '../ground/index.ts'
import { type Column, rowsOf } from './column.ts'
import { isWithoutNumber } from './mark.ts'

/**
 * How the columns of a batch lie in bytes, version 1: one after the other in the order of their heads, little-endian,
 * numbers in the narrowest width that holds them all, marks (a byte a row) behind the numbers they belong to;
 * then deflated. Cells without a number are written as 0 and told by their mark.
 */
const columnHead = z.discriminatedUnion('type', [
  z.object({
    name: z.string().min(1),
    type: z.literal('number'),
    width: z.enum(['i8', 'i16', 'i32', 'f64']),
    marks: z.boolean(),
    unit: z.string().optional(),
  }),
  z.object({
    name: z.string().min(1),
    type: z.literal('text'),
    width: z.enum(['i8', 'i16', 'i32']),
    dictionary: z.array(z.string()),
  }),
])

export const columnHeads = z.array(columnHead)
export type ColumnHead = z.infer<typeof columnHead>
type Width = ColumnHead['width']

export interface NamedColumn {
  readonly name: string
  readonly unit?: string
  readonly column: Column
}

export interface PackedColumns {
  readonly heads: readonly ColumnHead[]
  readonly rows: number
  readonly data: Uint8Array
}

const bytesOf: { readonly [W in Width]: number } = { i8: 1, i16: 2, i32: 4, f64: 8 }

/** Above this, inflating a batch is refused: 65,536 rows of 256 wide columns. */
const largestInflated = 65_536 * 256 * 9

function narrowestWidth(values: Float64Array | Int32Array): Width {
  let low = 0
  let high = 0
  for (let row = 0; row < values.length; row++) {
    const value = values[row] as number
    if (Number.isNaN(value)) continue
    if (!Number.isInteger(value) || (value === 0 && Object.is(value, -0))) return 'f64'
    if (value < low) low = value
    if (value > high) high = value
  }
  if (low >= -128 && high <= 127) return 'i8'
  if (low >= -32_768 && high <= 32_767) return 'i16'
  return low >= -2_147_483_648 && high <= 2_147_483_647 ? 'i32' : 'f64'
}

const written = (value: number): number => (Number.isNaN(value) ? 0 : value)

function write(view: DataView, offset: number, width: Width, values: Float64Array | Int32Array): number {
  const rows = values.length
  // A loop of its own for each width: a million cells are not asked for it one by one.
  if (width === 'i8') for (let row = 0; row < rows; row++) view.setInt8(offset + row, written(values[row] as number))
  else if (width === 'i16')
    for (let row = 0; row < rows; row++) view.setInt16(offset + 2 * row, written(values[row] as number), true)
  else if (width === 'i32')
    for (let row = 0; row < rows; row++) view.setInt32(offset + 4 * row, written(values[row] as number), true)
  else for (let row = 0; row < rows; row++) view.setFloat64(offset + 8 * row, written(values[row] as number), true)
  return offset + rows * bytesOf[width]
}

function read(view: DataView, offset: number, width: Width, into: Float64Array | Int32Array): number {
  const rows = into.length
  if (width === 'i8') for (let row = 0; row < rows; row++) into[row] = view.getInt8(offset + row)
  else if (width === 'i16') for (let row = 0; row < rows; row++) into[row] = view.getInt16(offset + 2 * row, true)
  else if (width === 'i32') for (let row = 0; row < rows; row++) into[row] = view.getInt32(offset + 4 * row, true)
  else for (let row = 0; row < rows; row++) into[row] = view.getFloat64(offset + 8 * row, true)
  return offset + rows * bytesOf[width]
}

/** @throws InputError when columns differ in length or share a name */
export function packColumns(columns: readonly NamedColumn[]): PackedColumns {
  const rows = columns[0] === undefined ? 0 : rowsOf(columns[0].column)
  if (columns.some(({ column }) => rowsOf(column) !== rows) || new Set(columns.map(({ name }) => name)).size !== columns.length) {
    throw new InputError('model/columns/uneven', 'columns of a batch need one length and a name of their own each')
  }
  const heads = columns.map(({ name, unit, column }): ColumnHead => {
    if (column.type === 'text') {
      const width = narrowestWidth(column.codes)
      return { name, type: 'text', width: width === 'f64' ? 'i32' : width, dictionary: [...column.dictionary] }
    }
    const head = { name, type: 'number' as const, width: narrowestWidth(column.values), marks: column.marks !== null }
    return unit === undefined ? head : { ...head, unit }
  })
  const size = heads.reduce((sum, head) => sum + rows * (bytesOf[head.width] + (head.type === 'number' && head.marks ? 1 : 0)), 0)
  const bytes = new Uint8Array(size)
  const view = new DataView(bytes.buffer)
  let at = 0
  columns.forEach(({ column }, k) => {
    const head = heads[k] as ColumnHead
    if (column.type === 'text') at = write(view, at, head.width, column.codes)
    else {
      at = write(view, at, head.width, column.values)
      if (column.marks !== null) {
        bytes.set(column.marks, at)
        at += rows
      }
    }
  })
  return { heads, rows, data: deflateSync(bytes, { level: 3 }) }
}

/** @throws ThrumError model/batch/damaged when the bytes are not what the heads promise */
export function unpackColumns(packed: PackedColumns): readonly NamedColumn[] {
  const { heads, rows } = packed
  const size = heads.reduce((sum, head) => sum + rows * (bytesOf[head.width] + (head.type === 'number' && head.marks ? 1 : 0)), 0)
  if (size > largestInflated) throw new ThrumError('model/batch/damaged', { expected: size, found: 'too large' })
  let bytes: Uint8Array
  try {
    // One byte of room more than promised: bytes that are too many, or none at all, then show by their number.
    bytes = inflateSync(packed.data, { out: new Uint8Array(size + 1) })
  } catch (cause) {
    throw new ThrumError('model/batch/damaged', { expected: size, found: 'unreadable' }, { cause })
  }
  if (bytes.length !== size) throw new ThrumError('model/batch/damaged', { expected: size, found: bytes.length })
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let at = 0
  return heads.map((head): NamedColumn => {
    if (head.type === 'text') {
      const codes = new Int32Array(rows)
      at = read(view, at, head.width, codes)
      return { name: head.name, column: { type: 'text', codes, dictionary: head.dictionary } }
    }
    const values = new Float64Array(rows)
    at = read(view, at, head.width, values)
    let marks: Uint8Array | null = null
    if (head.marks) {
      marks = bytes.slice(at, at + rows)
      at += rows
      for (let row = 0; row < rows; row++) if (isWithoutNumber(marks[row] ?? 0)) values[row] = Number.NaN
    }
    const column: Column = { type: 'number', values, marks }
    return head.unit === undefined ? { name: head.name, column } : { name: head.name, unit: head.unit, column }
  })
}
