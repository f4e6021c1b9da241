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
  for (const value of values) {
    if (Number.isNaN(value)) continue
    if (!Number.isInteger(value) || Object.is(value, -0)) return 'f64'
    if (value < low) low = value
    if (value > high) high = value
  }
  if (low >= -128 && high <= 127) return 'i8'
  if (low >= -32_768 && high <= 32_767) return 'i16'
  return low >= -2_147_483_648 && high <= 2_147_483_647 ? 'i32' : 'f64'
}

function write(view: DataView, offset: number, width: Width, values: Float64Array | Int32Array): number {
  const step = bytesOf[width]
  let at = offset
  for (const value of values) {
    const number = Number.isNaN(value) ? 0 : value
    if (width === 'i8') view.setInt8(at, number)
    else if (width === 'i16') view.setInt16(at, number, true)
    else if (width === 'i32') view.setInt32(at, number, true)
    else view.setFloat64(at, number, true)
    at += step
  }
  return at
}

function read(view: DataView, offset: number, width: Width, into: Float64Array | Int32Array): number {
  const step = bytesOf[width]
  let at = offset
  for (let row = 0; row < into.length; row++) {
    if (width === 'i8') into[row] = view.getInt8(at)
    else if (width === 'i16') into[row] = view.getInt16(at, true)
    else if (width === 'i32') into[row] = view.getInt32(at, true)
    else into[row] = view.getFloat64(at, true)
    at += step
  }
  return at
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
