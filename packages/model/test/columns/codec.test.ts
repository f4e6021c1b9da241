import fc from 'fast-check'
import { deflateSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { packColumns, unpackColumns } from '../../src/columns/codec.ts'
import { InputError, sha256Hex, ThrumError } from '../../src/ground/index.ts'
import type { Column, NamedColumn } from '../../src/index.ts'
import { isCounted, isWithoutNumber, mark, markName, numberColumn, rowsOf, textColumn } from '../../src/index.ts'

const roundTrip = (columns: readonly NamedColumn[]): readonly NamedColumn[] => unpackColumns(packColumns(columns))
const number = (values: readonly number[], marks: readonly number[] | null = null): Column => ({
  type: 'number',
  values: Float64Array.from(values),
  marks: marks === null ? null : Uint8Array.from(marks),
})

/** What a column says, cell by cell: numbers with their marks, texts as texts; -0 and NaN told apart. */
function told(column: Column): readonly string[] {
  return column.type === 'text'
    ? Array.from(column.codes, (code) => (code < 0 ? '-' : `"${column.dictionary[code]}"`))
    : Array.from(column.values, (value, row) => `${Object.is(value, -0) ? '-0' : value} ${column.marks?.[row] ?? 0}`)
}

const anyNumber = fc.oneof(
  fc.integer({ min: -200, max: 200 }),
  fc.integer({ min: -40_000, max: 40_000 }),
  fc.integer({ min: -(2 ** 31) - 5, max: 2 ** 31 + 5 }),
  fc.double(),
  fc.constantFrom(0, -0, Number.NaN, Infinity, -Infinity, 2 ** 53, -(2 ** 53), Number.MIN_VALUE),
)
const anyMark = fc.constantFrom(...Object.values(mark))
const anyColumn = (rows: number): fc.Arbitrary<Column> =>
  fc.oneof(
    fc.array(anyNumber, { minLength: rows, maxLength: rows }).map((values) => {
      // Without a mark every cell is as written, so it holds a number.
      return number(values.map((value) => (Number.isNaN(value) ? 0 : value)))
    }),
    fc.array(fc.tuple(anyNumber, anyMark), { minLength: rows, maxLength: rows }).map((cells) =>
      number(
        cells.map(([value, code]) => (isWithoutNumber(code) ? Number.NaN : Number.isNaN(value) ? 1 : value)),
        cells.map(([, code]) => code),
      ),
    ),
    fc.array(fc.option(fc.string({ unit: 'binary', maxLength: 8 })), { minLength: rows, maxLength: rows }).map(textColumn),
  )
const anyBatch = fc
  .integer({ min: 0, max: 40 })
  .chain((rows) => fc.array(anyColumn(rows), { minLength: 1, maxLength: 6 }))
  .map((columns) => columns.map((column, k): NamedColumn => ({ name: `column ${k}`, column })))

describe('the codec of batches', () => {
  it('identity: any columns come back cell by cell, with their names and marks', () => {
    fc.assert(
      fc.property(anyBatch, (batch) => {
        const back = roundTrip(batch)
        expect(back.map(({ name }) => name)).toEqual(batch.map(({ name }) => name))
        expect(back.map(({ column }) => told(column))).toEqual(batch.map(({ column }) => told(column)))
      }),
      { seed: 3, numRuns: 300 },
    )
  })

  it('identity: what was read back packs into the same bytes', () => {
    fc.assert(
      fc.property(anyBatch, (batch) => {
        const packed = packColumns(batch)
        const again = packColumns(unpackColumns(packed))
        expect(again).toEqual(packed)
      }),
      { seed: 4, numRuns: 100 },
    )
  })

  it.each([
    ['i8', [-128, 127]],
    ['i16', [-129, 0]],
    ['i16', [32_767, 0]],
    ['i32', [-32_769, 0]],
    ['i32', [2_147_483_647, -2_147_483_648]],
    ['f64', [2_147_483_648, 0]],
    ['f64', [0.5, 0]],
    ['f64', [-0, 0]],
    ['f64', [Infinity, 0]],
  ])('numbers take the narrowest width that holds them all: %s for %j', (width, values) => {
    const packed = packColumns([{ name: 'n', column: number(values) }])
    expect(packed.heads[0]?.width).toBe(width)
    expect(told(unpackColumns(packed)[0]?.column as Column)).toEqual(told(number(values)))
  })

  it('a cell without a number is told by its mark and takes no width', () => {
    const column = numberColumn([3, null, 0])
    const packed = packColumns([{ name: 'n', unit: '{individuals}', column }])
    expect(packed.heads).toEqual([{ name: 'n', type: 'number', width: 'i8', marks: true, unit: '{individuals}' }])
    const [back] = unpackColumns(packed)
    expect(back?.unit).toBe('{individuals}')
    expect(told(back?.column as Column)).toEqual(['3 0', `NaN ${mark.notLookedFor}`, '0 0'])
  })

  it('a batch of no rows, and of no columns, comes back', () => {
    expect(roundTrip([])).toEqual([])
    const [back] = roundTrip([{ name: 'kind', column: textColumn([]) }])
    expect(rowsOf(back?.column as Column)).toBe(0)
  })

  // Decision: bytes of version 1. Files hold them, and ids of facts are made of them; a change needs a new version.
  it('golden: a fixed batch has these bytes', () => {
    const packed = packColumns([
      { name: 'kind', column: textColumn(['honey bee', 'hover fly', null, 'honey bee']) },
      { name: 'number', unit: '{individuals}', column: numberColumn([12, 0, null, 300]) },
      { name: 'minutes', unit: 'min', column: numberColumn([10, 10, 7.5, 10]) },
    ])
    expect(packed.heads).toEqual([
      { name: 'kind', type: 'text', width: 'i8', dictionary: ['honey bee', 'hover fly'] },
      { name: 'number', type: 'number', width: 'i16', marks: true, unit: '{individuals}' },
      { name: 'minutes', type: 'number', width: 'f64', marks: false, unit: 'min' },
    ])
    const lying = [0, 1, 255, 0, 12, 0, 0, 0, 0, 0, 44, 1, 0, 0, 1, 0]
    const bytes = new Uint8Array(lying.length + 32)
    bytes.set(lying)
    ;[10, 10, 7.5, 10].forEach((value, row) => {
      new DataView(bytes.buffer).setFloat64(lying.length + 8 * row, value, true)
    })
    expect(packed.data).toEqual(deflateSync(bytes, { level: 3 }))
    expect(sha256Hex(packed.data)).toBe('c7edf102b432d05622770951fb7f90e445161e7cf9416c63cab06f40ba9e8e57')
  })

  it('a text column of more than 127 words, and of more than 32,767, is wide enough', () => {
    for (const words of [128, 129, 32_769]) {
      const texts = Array.from({ length: words }, (_, k) => `word ${k}`)
      const [back] = roundTrip([{ name: 'kind', column: textColumn(texts) }])
      expect(told(back?.column as Column).at(-1)).toBe(`"word ${words - 1}"`)
    }
  })

  it('columns of different lengths, or of one name, are a mistake of the program', () => {
    const one = { name: 'a', column: numberColumn([1]) }
    expect(() => packColumns([one, { name: 'b', column: numberColumn([1, 2]) }])).toThrow(InputError)
    expect(() => packColumns([one, one])).toThrow(InputError)
  })
})

describe('damaged bytes', () => {
  const packed = packColumns([
    { name: 'number', column: numberColumn([1, null, 300]) },
    { name: 'kind', column: textColumn(['bee', 'fly', 'bee']) },
  ])
  const refusal = (run: () => unknown): unknown => {
    try {
      return { accepted: run() }
    } catch (error) {
      return error
    }
  }

  it.each([
    ['no bytes', new Uint8Array()],
    ['bytes of something else', Uint8Array.of(80, 75, 3, 4, 255, 255, 255)],
    ['cut short', packed.data.subarray(0, packed.data.length - 4)],
    ['too few', deflateSync(new Uint8Array(3))],
    ['too many', deflateSync(new Uint8Array(5000))],
  ])('%s: refused, and told as damage', (_, data) => {
    const error = refusal(() => unpackColumns({ ...packed, data }))
    expect(error).toBeInstanceOf(ThrumError)
    expect((error as ThrumError).code).toBe('model/batch/damaged')
  })

  it('heads that promise gigabytes are refused before anything is inflated', () => {
    const error = refusal(() => unpackColumns({ ...packed, rows: 2 ** 31 }))
    expect((error as ThrumError).values).toEqual({ expected: 4 * 2 ** 31, found: 'too large' })
  })

  it('a flipped byte is damage, or other numbers of the same shape; never a crash', () => {
    for (let at = 0; at < packed.data.length; at++) {
      for (const bit of [1, 16, 128]) {
        const data = packed.data.slice()
        data[at] = (data[at] ?? 0) ^ bit
        const found = refusal(() => unpackColumns({ ...packed, data }))
        if (!(found instanceof ThrumError)) expect(found).toHaveProperty('accepted.length', 2)
      }
    }
  })
})

describe('marks', () => {
  it('golden: codes are written into files and never renumbered', () => {
    expect(mark).toEqual({ asWritten: 0, notLookedFor: 1, lost: 2, approximate: 3, atLeast: 4, atMost: 5, waiting: 6 })
    expect(Object.values(mark).map((code) => [markName(code), isWithoutNumber(code), isCounted(code)])).toEqual([
      ['asWritten', false, true],
      ['notLookedFor', true, false],
      ['lost', true, false],
      ['approximate', false, true],
      ['atLeast', false, false],
      ['atMost', false, false],
      ['waiting', true, false],
    ])
    expect(markName(99)).toBeUndefined()
  })
})
