import { InputError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { designOf } from '../../src/index.ts'
import { columnsOf, designed } from './strips.ts'

const small = {
  strip: { kind: 'levels', levels: ['none', 'sown'], of: Int32Array.of(0, 1, 1, 0) },
  edge: { kind: 'levels', levels: ['centre', 'edge'], of: Int32Array.of(0, 0, 1, 1) },
  'bloom stage': { kind: 'number', values: [61, 63, 65, 67] },
} as const

describe('designOf', () => {
  it('identity: ones, levels against the first, products; what was not asked for is told', () => {
    const design = designed(designOf(small, [['strip', 'bloom stage'], ['edge']]))
    expect(design.names).toEqual(['all at reference', 'edge: edge', 'strip: sown', 'bloom stage', 'strip: sown, and bloom stage'])
    expect(design.matrix).toMatchObject({ rows: 4, columns: 5 })
    expect([...design.matrix.values.subarray(10, 15)]).toEqual([1, 1, 1, 65, 65])
    expect(design.terms).toEqual([
      { of: ['edge'], isAsked: true, columns: [1] },
      { of: ['strip'], isAsked: false, columns: [2] },
      { of: ['bloom stage'], isAsked: false, columns: [3] },
      { of: ['strip', 'bloom stage'], isAsked: true, columns: [4] },
    ])
  })

  it('identity: three columns together contain each pair, and all are named', () => {
    const design = designed(designOf(small, [['strip', 'edge', 'bloom stage']]))
    expect(design.terms.map(({ of }) => of.length)).toEqual([1, 1, 1, 2, 2, 2, 3])
    expect(design.names.at(-1)).toBe('strip: sown, edge: edge, and bloom stage')
    expect(design.parts.at(-1)).toEqual([
      { column: 'strip', level: 'sown' },
      { column: 'edge', level: 'edge' },
      { column: 'bloom stage', level: null },
    ])
  })

  it('identity: the row of what a row holds is that row of the matrix', () => {
    const columns = columnsOf()
    const design = designed(designOf(columns, [['strip', 'stage', 'day'], ['minutes']]))
    for (let i = 0; i < design.matrix.rows; i++) {
      const values = Object.entries(columns).map(([name, column]) => [
        name,
        column.kind === 'number' ? (column.values[i] ?? 0) : (column.levels[column.of[i] ?? 0] ?? ''),
      ])
      const p = design.matrix.columns
      expect([...design.rowAt(Object.fromEntries(values))]).toEqual([...design.matrix.values.subarray(i * p, (i + 1) * p)])
    }
  })

  it('of no term there is the column of ones, as long as the first column', () => {
    const design = designed(designOf(small, []))
    expect([...design.matrix.values]).toEqual([1, 1, 1, 1])
    expect([...design.rowAt({})]).toEqual([1])
  })

  it('names the column of which all rows have one level, also where more were declared', () => {
    const one = { strip: { ...small.strip, of: Int32Array.of(1, 1, 1, 1) } }
    expect(designOf(one, [['strip']])).toEqual({ kind: 'one-level', column: 'strip', level: 'sown' })
  })

  it.each([
    ['an unknown column', [['hives']], /no column hives; expected one of strip, edge, bloom stage/],
    ['an inherited name', [['toString']], /no column toString/],
    [
      'a term twice, turned round',
      [
        ['strip', 'edge'],
        ['edge', 'strip'],
      ],
      /term \[edge, strip\]/,
    ],
    ['a column twice in a term', [['strip', 'strip']], /term \[strip, strip\]/],
    ['an empty term', [[]], /term \[\]/],
  ])('refuses %s', (_, terms, message) => {
    expect(() => designOf(small, terms)).toThrow(InputError)
    expect(() => designOf(small, terms)).toThrow(message)
  })

  it('refuses columns that are none', () => {
    const of = (column: object) => () => designOf({ ...small, x: column as (typeof small)['strip'] }, [['strip'], ['x']])
    expect(of({ kind: 'number', values: [1, 2, Number.NaN, 4] })).toThrow(/x is NaN/)
    expect(of({ kind: 'number', values: [1, 2] })).toThrow(/x has 2 rows; expected 4/)
    expect(of({ kind: 'levels', levels: ['a', 'a'], of: Int32Array.of(0, 1, 0, 1) })).toThrow(/x has a level twice/)
    expect(of({ kind: 'levels', levels: ['a', 'b'], of: Int32Array.of(0, 1, 2, 1) })).toThrow(/x holds level 2 of 2/)
    expect(() => designOf({}, [])).toThrow(/no row/)
    expect(() => designOf({ x: { kind: 'number', values: [] } }, [['x']])).toThrow(/no row/)
  })

  it('refuses a combination that is none', () => {
    const { rowAt } = designed(designOf(small, [['strip'], ['bloom stage']]))
    expect(() => rowAt({ strip: 'sown' })).toThrow(/bloom stage is undefined; expected a number/)
    expect(() => rowAt({ strip: 'mown', 'bloom stage': 61 })).toThrow(/strip is mown; expected one of none, sown/)
    expect(() => rowAt({ strip: 'sown', 'bloom stage': Number.NaN })).toThrow(/NaN/)
    expect(() => rowAt({ strip: 'sown', 'bloom stage': 61, edge: 'edge' })).toThrow(/no column edge/)
  })

  it('takes names that mean something to the language', () => {
    const columns = Object.fromEntries([['__proto__', small.strip]])
    const design = designed(designOf(columns, [['__proto__']]))
    expect(design.names).toEqual(['all at reference', '__proto__: sown'])
    expect([...design.rowAt(Object.fromEntries([['__proto__', 'sown']]))]).toEqual([1, 1])
  })
})
