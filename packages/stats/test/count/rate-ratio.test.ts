import { describe, expect, it } from 'vitest'
import { rateRatioExact, type TwoCounts } from '../../src/count/rate-ratio.ts'
import { rateRatioMidP } from '../../src/count/rate-ratio-mid-p.ts'
import { expectNear, expectRelative, kindOf, sixDecimals } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

const screening = { count1: 41, effort1: 28010, count2: 15, effort2: 19017 }

const countsOf = (row: Readonly<Record<string, number>>): TwoCounts => ({
  count1: cell(row, 'x1'),
  effort1: cell(row, 'e1'),
  count2: cell(row, 'x2'),
  effort2: cell(row, 'e2'),
  level: cell(row, 'level'),
})

const expectLimit = (found: number, oracle: number, tolerance: number, what: string): void => {
  if (oracle === 0 || oracle === Number.POSITIVE_INFINITY) expect(found, what).toBe(oracle)
  else expectRelative(found, oracle, tolerance, what)
}

describe('rateRatioExact', () => {
  it('oracle: the two printed cases (R 4.2.2 poisson.test)', () => {
    const first = kindOf(rateRatioExact(screening), 'ratio')
    expectNear(first.ratio, 1.855759, sixDecimals)
    expectNear(first.limits.lower, 1.005684, sixDecimals)
    expectNear(first.limits.upper, 3.6093, sixDecimals)
    expectNear(first.p, 0.040852, sixDecimals)
    const second = kindOf(rateRatioExact({ count1: 34, effort1: 120, count2: 15, effort2: 120 }), 'ratio')
    expectNear(second.ratio, 2.266667, sixDecimals)
    expectNear(second.limits.lower, 1.201904, sixDecimals)
    expectNear(second.limits.upper, 4.478868, sixDecimals)
    expectNear(second.p, 0.009399, sixDecimals)
  })

  it('oracle: nine pairs at three levels, counts of 0 among them (R poisson.test, qbeta)', () => {
    for (const row of referenceTable('classical-tests/rate-ratio')) {
      const what = JSON.stringify(row)
      const got = kindOf(rateRatioExact(countsOf(row)), 'ratio')
      expectLimit(got.limits.lower, cell(row, 'lower'), 1e-10, what)
      expectLimit(got.limits.upper, cell(row, 'upper'), 1e-10, what)
      expectRelative(got.p, cell(row, 'p'), 1e-10, what)
    }
  })

  it('identity: changing places inverts the ratio and leaves p', () => {
    const one = kindOf(rateRatioExact(screening), 'ratio')
    const other = kindOf(rateRatioExact({ count1: 15, effort1: 19017, count2: 41, effort2: 28010 }), 'ratio')
    expectRelative(one.ratio * other.ratio, 1, 1e-14)
    expectRelative(one.limits.lower * other.limits.upper, 1, 1e-12)
    expectRelative(one.limits.upper * other.limits.lower, 1, 1e-12)
    expectRelative(one.p, other.p, 1e-12)
  })

  it('a count of 0 gives a ratio of 0 or infinity with one finite limit', () => {
    const none = kindOf(rateRatioExact({ count1: 0, effort1: 60, count2: 4, effort2: 60 }), 'ratio')
    expect(none.ratio).toBe(0)
    expect(none.limits.lower).toBe(0)
    expect(none.limits.upper).toBeGreaterThan(0)
    const all = kindOf(rateRatioExact({ count1: 4, effort1: 60, count2: 0, effort2: 60 }), 'ratio')
    expect(all.ratio).toBe(Number.POSITIVE_INFINITY)
    expect(all.limits.upper).toBe(Number.POSITIVE_INFINITY)
    expect(Number.isFinite(all.limits.lower)).toBe(true)
  })

  it('says that nothing was counted', () => {
    expect(rateRatioExact({ count1: 0, effort1: 1, count2: 0, effort2: 1 })).toEqual({ kind: 'nothing-counted' })
    expect(rateRatioMidP({ count1: 0, effort1: 1, count2: 0, effort2: 1 })).toEqual({ kind: 'nothing-counted' })
  })

  it('refuses half insects, no effort, a level of 1', () => {
    expect(() => rateRatioExact({ ...screening, count1: 1.5 })).toThrow(/count1 is 1.5/)
    expect(() => rateRatioExact({ ...screening, effort2: 0 })).toThrow(/effort2 is 0/)
    expect(() => rateRatioMidP({ ...screening, level: 1 })).toThrow(/level is 1/)
  })
})

describe('rateRatioMidP', () => {
  it('oracle: the printed case (R 4.2.2 uniroot)', () => {
    const { limits } = kindOf(rateRatioMidP(screening), 'ratio')
    // The handbook prints 1.041073 to 3.449424, roots found with a looser stop; at 1e-15 R gives these.
    expectNear(limits.lower, 1.041075, sixDecimals)
    expectNear(limits.upper, 3.449423, sixDecimals)
    expectNear(limits.lower, 1.041073, 3e-6)
    expectNear(limits.upper, 3.449424, 3e-6)
  })

  it('oracle: nine pairs at three levels (R uniroot at 1e-15)', () => {
    for (const row of referenceTable('classical-tests/rate-ratio')) {
      const what = JSON.stringify(row)
      const got = kindOf(rateRatioMidP(countsOf(row)), 'ratio')
      // uniroot's root is good to about 1e-15 of a share, which near 0 or 1 is much of its odds.
      expectLimit(got.limits.lower, cell(row, 'midLower'), 1e-8, what)
      expectLimit(got.limits.upper, cell(row, 'midUpper'), 1e-8, what)
      expectRelative(got.p, cell(row, 'midP'), 1e-10, what)
    }
  })

  it('identity: lies within the exact limits', () => {
    const exact = kindOf(rateRatioExact(screening), 'ratio').limits
    const mid = kindOf(rateRatioMidP(screening), 'ratio').limits
    expect(mid.lower).toBeGreaterThan(exact.lower)
    expect(mid.upper).toBeLessThan(exact.upper)
  })
})
