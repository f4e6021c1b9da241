import { describe, expect, it } from 'vitest'
import { contrastInterval } from '../../src/least-squares/contrast-interval.ts'
import { leastSquares } from '../../src/least-squares/least-squares.ts'
import { matrixOfColumns, matrixOfRows, matrixOfValues } from '../../src/least-squares/matrix.ts'
import { expectNear, expectRelative, kindOf } from '../near.ts'
import { referenceValues } from '../reference-table.ts'

const oracle = referenceValues('least-squares/values')
const ones = (n: number): number[] => new Array<number>(n).fill(1)

// Longley (1967) J. Am. Stat. Assoc. 62, 819-841: published data, near collinear.
const longley = [
  [83, 234.289, 235.6, 159, 107.608, 1947, 60.323],
  [88.5, 259.426, 232.5, 145.6, 108.632, 1948, 61.122],
  [88.2, 258.054, 368.2, 161.6, 109.773, 1949, 60.171],
  [89.5, 284.599, 335.1, 165, 110.929, 1950, 61.187],
  [96.2, 328.975, 209.9, 309.9, 112.075, 1951, 63.221],
  [98.1, 346.999, 193.2, 359.4, 113.27, 1952, 63.639],
  [99, 365.385, 187, 354.7, 115.094, 1953, 64.989],
  [100, 363.112, 357.8, 335, 116.219, 1954, 63.761],
  [101.2, 397.469, 290.4, 304.8, 117.388, 1955, 66.019],
  [104.6, 419.18, 282.2, 285.7, 118.734, 1956, 67.857],
  [108.4, 442.769, 293.6, 279.8, 120.445, 1957, 68.169],
  [110.8, 444.546, 468.1, 263.7, 121.95, 1958, 66.513],
  [112.6, 482.704, 381.3, 255.2, 123.366, 1959, 68.655],
  [114.2, 502.601, 393.1, 251.4, 125.368, 1960, 69.564],
  [115.7, 518.173, 480.6, 257.2, 127.852, 1961, 69.331],
  [116.9, 554.894, 400.7, 282.7, 130.081, 1962, 70.551],
]

describe('leastSquares', () => {
  it("oracle: Longley's data (R lm)", () => {
    const design = matrixOfRows(longley.map((row) => [1, ...row.slice(0, 6)]))
    const fit = kindOf(leastSquares({ design, response: longley.map((row) => row[6] ?? 0) }), 'fitted')
    oracle('longley-coefficients').forEach((value, j) => {
      expectRelative(fit.coefficients[j] ?? 0, value, 1e-9, `coefficient ${j}`)
    })
    oracle('longley-se').forEach((value, j) => {
      expectRelative(fit.residualSd * Math.sqrt(fit.covariance[j * 7 + j] ?? 0), value, 1e-9, `se ${j}`)
    })
    expectRelative(fit.residualSd, oracle('longley-sd')[0] ?? 0, 1e-11)
    expect(fit.df).toBe(9)
  })

  it('oracle: day numbers near 20,000 beside levels and a block (R lm)', () => {
    const z = [0.1, 0.4, 0.35, 1.2, 0.9, 1.6, 1.1, 2.2, 1.7, 2.9]
    const day = [3, 1, 4, 1, 5, 9, 2, 6, 5, 3].map((d) => 20000 + d)
    const block = [0, 1, 0, 1, 0, 1, 0, 1, 0, 1]
    const level = [0, 0, 0, 1, 1, 1, 2, 2, 2, 2]
    const columns = [ones(10), block, day, level.map((v) => Number(v === 1)), level.map((v) => Number(v === 2))]
    const fit = kindOf(leastSquares({ design: matrixOfColumns(10, columns), response: z }), 'fitted')
    expectRelative(fit.residualSd, oracle('levels-sd')[0] ?? 0, 1e-11)
    ;[3, 4].forEach((j, k) => {
      const weights = columns.map((_, column) => Number(column === j))
      const got = kindOf(contrastInterval(fit, weights), 'contrast')
      expectRelative(got.estimate, oracle('levels-estimates')[k] ?? 0, 1e-10)
      expectRelative(got.se, oracle('levels-se')[k] ?? 0, 1e-10)
      expectRelative(got.t, oracle('levels-t')[k] ?? 0, 1e-10)
      expectRelative(got.p, oracle('levels-p')[k] ?? 0, 1e-10)
    })
    // The intercept is a reach of 20,000 days; lm itself keeps fewer digits there.
    const intercept = kindOf(contrastInterval(fit, [1, 0, 0, 0, 0]), 'contrast')
    expectRelative(intercept.estimate, oracle('levels-intercept')[0] ?? 0, 1e-8)
    expectRelative(intercept.se, oracle('levels-intercept')[1] ?? 0, 1e-8)
  })

  it('identity: residuals are orthogonal to every column, and moving a column moves the intercept alone', () => {
    const x = [0.3, 1.1, 2.7, 3.1, 5.9]
    const y = [1, 0.2, 3.3, 2.9, 7]
    const at = (shift: number) =>
      kindOf(leastSquares({ design: matrixOfColumns(5, [ones(5), x.map((v) => v + shift)]), response: y }), 'fitted')
    const near = at(0)
    const far = at(1e6)
    expectRelative(far.coefficients[1] ?? 0, near.coefficients[1] ?? 1, 1e-9)
    expectRelative(far.residualSd, near.residualSd, 1e-9)
    expectNear(
      near.residuals.reduce((sum, r) => sum + r, 0),
      0,
      1e-14,
    )
    expectNear(
      near.residuals.reduce((sum, r, i) => sum + r * (x[i] ?? 0), 0),
      0,
      1e-13,
    )
  })

  it('identity: a design without rows, of one row, and with all columns empty', () => {
    expect(() => leastSquares({ design: matrixOfValues(0, 0, new Float64Array(0)), response: [] })).toThrow(/no row/)
    expect(leastSquares({ design: matrixOfRows([[1]]), response: [3] })).toMatchObject({ kind: 'saturated', rank: 1 })
    const empty = kindOf(leastSquares({ design: matrixOfRows([[0], [0]]), response: [3, 4] }), 'fitted')
    expect(empty).toMatchObject({ rank: 0, df: 2, aliased: [{ column: 0, equals: [] }] })
    expect(empty.residualSd).toBeCloseTo(Math.sqrt(12.5), 14)
  })

  it('refuses a response of another length, NaN in the design, NaN in the response', () => {
    expect(() => leastSquares({ design: matrixOfRows([[1], [1]]), response: [1] })).toThrow(/response has 1/)
    expect(() => matrixOfRows([[1], [Number.NaN]])).toThrow(/NaN/)
    expect(() => matrixOfRows([[1], [1, 2]])).toThrow(/row 1 has 2/)
    expect(() => leastSquares({ design: matrixOfRows([[1], [1]]), response: [1, Number.NaN] })).toThrow(/NaN/)
  })
})

describe('aliased columns', () => {
  const hive = [0, 0, 0, 0, 1, 1, 1, 1]

  it('oracle: hive and year identical, year = hive (by hand)', () => {
    const fit = leastSquares({ design: matrixOfColumns(8, [ones(8), hive, hive]), response: [1, 2, 1, 2, 4, 3, 4, 3] })
    expect(fit.rank).toBe(2)
    const [year] = fit.aliased
    expect(year?.column).toBe(2)
    expect(year?.equals.map((term) => term.column)).toEqual([1])
    expectNear(year?.equals[0]?.weight ?? 0, 1, 1e-12)
  })

  it('oracle: calendar years, year = 2023 + hive (by hand)', () => {
    const fit = leastSquares({ design: matrixOfColumns(8, [ones(8), hive, hive.map((h) => 2023 + h)]), response: hive })
    const [year] = fit.aliased
    expect(year?.equals.map((term) => term.column)).toEqual([0, 1])
    expectNear(year?.equals[0]?.weight ?? 0, 2023, 1e-9)
    expectNear(year?.equals[1]?.weight ?? 0, 1, 1e-12)
  })

  it('identity: without a constant column first, the last of a full set of fields equals ones less the others', () => {
    const a = [1, 1, 0, 0, 0, 0]
    const b = [0, 0, 1, 1, 0, 0]
    const c = [0, 0, 0, 0, 1, 1]
    const fit = leastSquares({ design: matrixOfColumns(6, [a, b, ones(6), c]), response: [1, 2, 3, 4, 5, 7] })
    const [last] = fit.aliased
    expect(last?.column).toBe(3)
    const weights = [-1, -1, 1]
    last?.equals.forEach((term, k) => {
      expect(term.column).toBe(k)
      expectNear(term.weight, weights[k] ?? 0, 1e-12)
    })
  })

  it('a contrast that an aliased column has a part in is not estimable; one that it has no part in is', () => {
    const plot = [0, 1, 0, 1, 0, 1, 0, 1]
    const fit = leastSquares({ design: matrixOfColumns(8, [ones(8), hive, plot, hive]), response: [1, 2, 1, 2.5, 4, 3, 4, 3] })
    expect(contrastInterval(fit, [0, 1, 0, 0])).toEqual({ kind: 'not-estimable', aliased: [3] })
    expect(contrastInterval(fit, [0, 0, 0, 1])).toEqual({ kind: 'not-estimable', aliased: [3] })
    expect(contrastInterval(fit, [0, 0, 1, 0]).kind).toBe('contrast')
    // Both together are told: the fit gives the sum to the kept one.
    expect(contrastInterval(fit, [0, 1, 0, 1]).kind).toBe('contrast')
  })

  it('a constant measured column is the intercept again', () => {
    const fit = leastSquares({ design: matrixOfColumns(4, [ones(4), [7, 7, 7, 7]]), response: [1, 2, 3, 5] })
    expect(fit.aliased).toEqual([{ column: 1, equals: [{ column: 0, weight: 7 }] }])
  })

  it('identity: rank does not depend on the scale of a column', () => {
    const x = [1, 2, 4, 8, 9, 10]
    const y = [1, 2, 2, 4, 3, 5]
    for (const scale of [1e-12, 1, 1e12]) {
      const fit = kindOf(leastSquares({ design: matrixOfColumns(6, [ones(6), x.map((v) => v * scale)]), response: y }), 'fitted')
      expect(fit.rank).toBe(2)
      expectRelative((fit.coefficients[1] ?? 0) * scale, 25.666666666666668 / 73.33333333333333, 1e-9)
    }
  })

  it('no freedom and no scatter are said, not divided by', () => {
    const saturated = leastSquares({
      design: matrixOfRows([
        [1, 0],
        [1, 1],
      ]),
      response: [1, 2],
    })
    expect(contrastInterval(saturated, [0, 1])).toEqual({ kind: 'no-freedom' })
    const exact = leastSquares({ design: matrixOfColumns(4, [ones(4), [0, 0, 1, 1]]), response: [2, 2, 5, 5] })
    const got = kindOf(contrastInterval(exact, [0, 1]), 'no-scatter')
    expectNear(got.estimate, 3, 1e-14)
  })
})
