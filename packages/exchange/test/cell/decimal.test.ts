import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalHabit, noHabit, parseDecimal, readMeasure } from '../../src/cell/decimal.ts'

const comma = decimalHabit(['212,5'])
const point = decimalHabit(['212.5'])

describe('decimalHabit', () => {
  it.each([
    [['1', '20'], null, false],
    [['212,5', '1.150'], ',', false],
    [['0.244', '1.244'], '.', false],
    [['1.080,5'], ',', false],
    [['1,080.5'], '.', false],
    [['1.234.567'], ',', false],
    [['1,5', '1.5'], null, true],
    [['1.150', '2.250'], null, false],
  ])('%j proves %s', (cells, decimal, mixed) => {
    expect(decimalHabit(cells)).toEqual({ decimal, mixed })
  })
})

describe('parseDecimal', () => {
  it.each([
    ['212,5', comma, 212.5],
    ['1.080,5', comma, 1080.5],
    ['1.150', comma, 1150],
    ['1,150', comma, 1.15],
    ['1.150', point, 1.15],
    ['1,150', point, 1150],
    ["1'234.5", point, 1234.5],
    ['1 234,5', comma, 1234.5],
    ['−3.5', point, -3.5],
    ['4e-04', point, 0.0004],
    ['.5', point, 0.5],
  ])('"%s" under %j is %d', (written, habit, value) => {
    expect(parseDecimal(written, habit)).toMatchObject({ kind: 'value', value })
  })

  it.each(['1,2,3', '1.2.3', '12..5', '1,2.3,4', 'abc', '', '1-2', '0x10'])('"%s" is no number', (written) => {
    expect(parseDecimal(written, noHabit)).toBeNull()
  })

  it('identity: numbers written either way are read back', () => {
    const written = (value: number, decimal: '.' | ',', group: string): string => {
      const [whole = '', rest] = value.toFixed(2).split('.')
      return `${whole.replace(/\B(?=(\d{3})+$)/gu, group)}${decimal}${rest}`
    }
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999_999 }), (hundredths) => {
        const value = hundredths / 100
        for (const [decimal, group] of [
          ['.', ','],
          [',', '.'],
          [',', ' '],
          ['.', ''],
        ] as const) {
          const text = written(value, decimal, group)
          expect(parseDecimal(text, decimalHabit([text]))).toMatchObject({ kind: 'value', value: Number(value.toFixed(2)) })
        }
      }),
    )
  })
})

describe('readMeasure', () => {
  it.each([
    ['ca. 400', 'approximate', 400],
    ['~350', 'approximate', 350],
    ['>30', 'at-least', 30],
    ['60 %', 'number', 60],
    ['18,5 °C', 'number', 18.5],
    ['-3,5', 'number', -3.5],
  ])('"%s" is %s %d', (written, kind, value) => {
    expect(readMeasure(written, comma)).toMatchObject({ kind, value })
  })

  it('a range waits with its midpoint', () => {
    expect(readMeasure('200-250', noHabit)).toMatchObject({ kind: 'waiting', because: 'exchange/cell/range', proposed: '225' })
  })

  it.each([
    ['64 °F', 'Cel'],
    ['18 °C', 'degF'],
    ['50 %', '/10'],
    ['12 m', '{hives}'],
    ['3 m2', 'm'],
  ])('"%s" waits in a column of %s: it names another unit', (written, unit) => {
    expect(readMeasure(written, comma, unit)).toMatchObject({ kind: 'waiting', because: 'exchange/cell/other-unit' })
  })

  it.each([
    ['18,5 °C', 'Cel', 18.5],
    ['60 %', '%', 60],
    ['3 m²', 'm2', 3],
  ])('"%s" in a column of %s is %d', (written, unit, value) => {
    expect(readMeasure(written, comma, unit)).toEqual({ kind: 'number', written, value })
  })

  it.each([
    ['007', 7],
    ['+5', 5],
    ['.5', 0.5],
    ['1e3', 1000],
    ['−3', -3],
    ['20000000000000000001', 2e19],
  ])('"%s" is read as %d, and shown', (written, value) => {
    expect(readMeasure(written, point)).toMatchObject({ kind: 'number', value, because: 'exchange/cell/read-as' })
  })

  it('a number beyond the largest is none', () => {
    expect(readMeasure('1e999', point)).toMatchObject({ kind: 'waiting', because: 'exchange/cell/not-a-number' })
  })
})

it('a degree sign without its scale is read by its column, and told', () => {
  expect(readMeasure('18°', noHabit, 'Cel')).toEqual({
    kind: 'number',
    written: '18°',
    value: 18,
    because: 'exchange/cell/bare-degree',
  })
})
