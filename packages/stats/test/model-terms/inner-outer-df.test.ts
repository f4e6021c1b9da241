import { describe, expect, it } from 'vitest'
import { type ColumnDf, dfOfSum, type Grouping, innerOuterDf, type ModelColumns, matrixOfColumns } from '../../src/index.ts'
import { designOf } from '../../src/model-terms/design.ts'
import { independentColumns } from '../../src/model-terms/independent-columns.ts'
import { referenceValues } from '../reference-table.ts'
import { designed, levelsOf, numbersOf, type Row, tableOf } from './strips.ts'

const oracle = referenceValues('inner-outer-df/values')
const namesOf = (rows: readonly Row[], name: string): readonly string[] => [...new Set(rows.map((row) => row[name] ?? ''))].sort()
const grouped = (rows: readonly Row[], name: string): Grouping => {
  const levels = namesOf(rows, name)
  return { name, levels: levels.length, of: Int32Array.from(rows, (row) => levels.indexOf(row[name] ?? '')) }
}
const columnsIn = (rows: readonly Row[], levels: readonly string[], numbers: readonly string[]): ModelColumns => ({
  ...Object.fromEntries(levels.map((name) => [name, levelsOf(rows, name, namesOf(rows, name))])),
  ...Object.fromEntries(numbers.map((name) => [name, { kind: 'number' as const, values: numbersOf(rows, name) }])),
})

const oats = tableOf('inner-outer-df/oats')
const growth = tableOf('inner-outer-df/growth')
const pixel = tableOf('inner-outer-df/pixel')
const lost = [3, 4, 8, 17, 18, 19, 20, 41, 55, 90, 91, 92]
const holes = growth.filter((_, i) => !lost.includes(i + 1))

describe('innerOuterDf against nlme', () => {
  it.each([
    ['split-plot', oats, ['variety', 'dose'], [], [['variety', 'dose']], ['block', 'plot']],
    ['between-and-within', growth, ['sex'], ['age'], [['sex', 'age']], ['child']],
    ['unbalanced', holes, ['sex'], ['age'], [['sex', 'age']], ['child']],
    ['no-slope-fixed', holes, ['sex'], [], [['sex']], ['child']],
    ['nested-side', pixel, ['side'], ['day'], [['side'], ['day']], ['dog', 'lobe']],
  ] as const)('oracle: %s', (name, rows, levels, numbers, terms, groupings) => {
    const design = designed(designOf(columnsIn(rows, levels, numbers), terms))
    const found = innerOuterDf(
      design.matrix,
      groupings.map((own) => grouped(rows, own)),
    )
    expect(found.slice(1).map(({ df }) => df)).toEqual(oracle(name))
  })
})

describe('innerOuterDf', () => {
  it('identity: a balanced split plot, whole plots less what they tell', () => {
    // 4 blocks of 3 whole plots of 2 halves.
    const rows = Array.from({ length: 24 }, (_, i) => ({
      block: `b${i % 4}`,
      whole: `w${Math.floor(i / 4) % 3}`,
      half: `h${Math.floor(i / 12)}`,
      plot: `b${i % 4} w${Math.floor(i / 4) % 3}`,
    }))
    const design = designed(designOf(columnsIn(rows, ['whole', 'half'], []), [['whole', 'half']]))
    const found = innerOuterDf(design.matrix, [grouped(rows, 'block'), grouped(rows, 'plot')])
    const whole = (4 - 1) * (3 - 1)
    const half = 3 * (4 - 1) * (2 - 1)
    expect(found.map(({ df }) => df)).toEqual([3, whole, whole, half, half, half])
    expect(found.map(({ by }) => by)).toEqual(['block', 'plot', 'plot', null, null, null])
  })

  it('identity: without groupings, rows less rank; an aliased column counts once', () => {
    const ones = new Float64Array(9).fill(1)
    const x = Float64Array.from(ones, (_, i) => 2031 + (i % 4))
    const design = matrixOfColumns(9, [ones, x, x.map((value) => 3 - 2 * value)])
    expect(innerOuterDf(design, [])).toEqual([7, 7, 7].map((df) => ({ df, units: 'rows', by: null })))
    expect(independentColumns([ones, x, x.map((value) => value + 1)])).toBe(2)
    expect(independentColumns([])).toBe(0)
  })

  it('of crossed groupings the one that leaves fewest; levels without rows are not counted', () => {
    const rows = Array.from({ length: 40 }, (_, i) => ({ field: `f${i % 8}`, observer: `o${Math.floor(i / 8)}` }))
    const ones = new Float64Array(40).fill(1)
    const field = { ...grouped(rows, 'field'), levels: 30 }
    const design = matrixOfColumns(40, [ones, ones.map((_, i) => Math.floor(i / 3) % 2)])
    const [first, second] = innerOuterDf(design, [field, grouped(rows, 'observer')])
    expect(first).toEqual({ df: 4, units: 'levels', by: 'observer' })
    expect(second).toEqual({ df: 40 - (8 + 4) - 1, units: 'rows', by: null })
  })

  it('a slope drawn at random is told by its levels: that of days by 18 persons with 17', () => {
    const days = tableOf('linear-mixed/sleepstudy')
    const design = designed(designOf(columnsIn(days, [], ['Days']), [['Days']]))
    const subject = { ...grouped(days, 'Subject'), slope: { name: 'Days', values: numbersOf(days, 'Days') } }
    expect(innerOuterDf(design.matrix, [subject])).toEqual([
      { df: 17, units: 'levels', by: 'Subject' },
      { df: 17, units: 'slopes', by: 'Subject' },
    ])
    expect(
      innerOuterDf(design.matrix, [{ ...subject, slope: { name: 'Days', values: new Float64Array(days.length) } }])[1],
    ).toEqual({
      df: days.length - 18 - 1,
      units: 'rows',
      by: null,
    })
  })

  it('is never below 1, and a sum has the least of its columns', () => {
    const ones = new Float64Array(4).fill(1)
    const strip = Float64Array.of(0, 0, 1, 1)
    const found = innerOuterDf(matrixOfColumns(4, [ones, strip]), [{ name: 'field', of: Int32Array.of(0, 0, 1, 1), levels: 2 }])
    expect(found).toEqual([1, 1].map((df) => ({ df, units: 'levels', by: 'field' })))
    const columns: readonly ColumnDf[] = [
      { df: 4, units: 'levels', by: 'field' },
      { df: 60, units: 'rows', by: null },
    ]
    expect(dfOfSum(columns, [0, 1])).toEqual({ df: 60, units: 'rows', by: null })
    expect(dfOfSum(columns, [1, 1])).toEqual({ df: 4, units: 'levels', by: 'field' })
    expect(dfOfSum(columns, [0, 0])).toEqual({ df: 4, units: 'levels', by: 'field' })
  })
})
