import { describe, expect, it } from 'vitest'
import { clopperPearsonInterval, goodmanIntervals, oddsExact, wilsonInterval } from '../../src/proportion/binomial-intervals.ts'
import { binomialTwoSidedP } from '../../src/proportion/binomial-test.ts'
import { expectNear, expectRelative, sixDecimals } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

const shares = referenceTable('classical-tests/proportion')

describe('wilsonInterval', () => {
  it('oracle: eight shares at three levels (R prop.test without correction)', () => {
    for (const row of shares) {
      const got = wilsonInterval(cell(row, 'x'), cell(row, 'n'), cell(row, 'level'))
      expectNear(got.lower, cell(row, 'scoreLower'), 1e-12)
      expectNear(got.upper, cell(row, 'scoreUpper'), 1e-12)
    }
  })

  it.each([0, 1, 7, 20])('identity: successes and failures mirror each other, %i of 20', (set) => {
    expect(wilsonInterval(20 - set, 20).lower).toBeCloseTo(1 - wilsonInterval(set, 20).upper, 14)
  })

  it('refuses more successes than trials, and says which number is wrong', () => {
    expect(() => wilsonInterval(21, 20)).toThrow(/successes.*21.*0 to 20/)
    expect(() => wilsonInterval(0, 0)).toThrow(/trials is 0/)
  })
})

describe('clopperPearsonInterval and oddsExact', () => {
  it('oracle: eight shares at three levels (R binom.test)', () => {
    for (const row of shares) {
      const x = cell(row, 'x')
      const n = cell(row, 'n')
      const got = clopperPearsonInterval(x, n, cell(row, 'level'))
      expectNear(got.lower, cell(row, 'exactLower'), 1e-12)
      expectNear(got.upper, cell(row, 'exactUpper'), 1e-12)
      const odds = oddsExact(x, n - x, cell(row, 'level'))
      if (x > 0) expectRelative(odds.lower, got.lower / (1 - got.lower), 1e-12)
      if (x < n) expectRelative(odds.upper, got.upper / (1 - got.upper), 1e-12)
    }
  })

  it('oracle: 34 to 12 (R 4.2.2 binom.test)', () => {
    const { estimate, lower, upper } = oddsExact(34, 12)
    expectNear(estimate, 2.833333, sixDecimals)
    expectNear(lower, 1.431204, sixDecimals)
    expectNear(upper, 6.009254, sixDecimals)
  })

  it('identity: ends are exactly 0, 1 and infinite', () => {
    expect(clopperPearsonInterval(0, 9).lower).toBe(0)
    expect(clopperPearsonInterval(9, 9).upper).toBe(1)
    expect(oddsExact(9, 0)).toMatchObject({ estimate: Number.POSITIVE_INFINITY, upper: Number.POSITIVE_INFINITY })
    expect(oddsExact(0, 9)).toMatchObject({ estimate: 0, lower: 0 })
    expect(() => oddsExact(0, 0)).toThrow(/trials is 0/)
  })
})

describe('goodmanIntervals', () => {
  it('oracle: 56, 25, 14, 5 (R 4.2.2)', () => {
    const printed = [
      [0.436138, 0.676816],
      [0.158728, 0.370633],
      [0.074439, 0.247841],
      [0.017369, 0.13548],
    ]
    goodmanIntervals([56, 25, 14, 5]).forEach((got, k) => {
      expectNear(got.lower, printed[k]?.[0] ?? 0, sixDecimals)
      expectNear(got.upper, printed[k]?.[1] ?? 0, sixDecimals)
    })
  })

  it('identity: with two classes at 1 - 2a it is Wilson at 1 - a', () => {
    const [first] = goodmanIntervals([7, 13], 0.9)
    const wilson = wilsonInterval(7, 20, 0.95)
    expectNear(first?.lower ?? 0, wilson.lower, 1e-13)
    expectNear(first?.upper ?? 0, wilson.upper, 1e-13)
  })

  it('identity: empty and full classes end at exactly 0 and 1', () => {
    const [all, none] = goodmanIntervals([12, 0])
    expect(all?.upper).toBe(1)
    expect(none?.lower).toBe(0)
  })

  it('refuses one class and no trial', () => {
    expect(() => goodmanIntervals([3])).toThrow(/1 classes/)
    expect(() => goodmanIntervals([0, 0])).toThrow(/sum of counts is 0/)
  })
})

describe('binomialTwoSidedP', () => {
  it('oracle: eight counts against four chances (R binom.test)', () => {
    for (const row of referenceTable('classical-tests/binomial-test')) {
      const got = binomialTwoSidedP(cell(row, 'x'), cell(row, 'n'), cell(row, 'chance'))
      // 500 of 1,234 at 0.02 is below the smallest double.
      if (row.p === 0) expect(got).toBe(0)
      else expectRelative(got, cell(row, 'p'), 1e-11, JSON.stringify(row))
    }
  })

  it('identity: a tie on the other side counts', () => {
    expectRelative(binomialTwoSidedP(2, 10, 0.5), (2 * (1 + 10 + 45)) / 1024, 1e-13)
  })
})
