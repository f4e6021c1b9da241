import { describe, expect, it } from 'vitest'
import { poissonInterval } from '../../src/count/poisson-interval.ts'
import { meanOfRates, ratioOfSums } from '../../src/count/ratio-of-sums.ts'
import { expectNear, expectRelative, kindOf, sixDecimals } from '../near.ts'

const totals = [30, 12, 25, 8, 40, 18]
const efforts = [100, 100, 100, 80, 120, 100]

describe('ratioOfSums', () => {
  it('oracle: six units, per hour (R 4.2.2, script in the handbook)', () => {
    const got = kindOf(ratioOfSums({ totals, efforts }), 'rate')
    expectNear(60 * got.rate, 13.3, 1e-12)
    expectNear(60 * got.limits.lower, 8.427459, sixDecimals)
    expectNear(60 * got.limits.upper, 20.989719, sixDecimals)
    expect(got).toMatchObject({ df: 5, units: 6 })
  })

  it('identity: the order of units and the unit of effort change nothing but the scale', () => {
    const base = kindOf(ratioOfSums({ totals, efforts, level: 0.9 }), 'rate')
    const turned = kindOf(ratioOfSums({ totals: totals.toReversed(), efforts: efforts.toReversed(), level: 0.9 }), 'rate')
    const hours = kindOf(ratioOfSums({ totals, efforts: efforts.map((e) => e / 60), level: 0.9 }), 'rate')
    expectRelative(turned.limits.lower, base.limits.lower, 1e-13)
    expectRelative(hours.limits.upper, 60 * base.limits.upper, 1e-13)
    expectRelative(base.rate ** 2, base.limits.lower * base.limits.upper, 1e-13)
  })

  it('identity: units of one and the same rate have no scatter', () => {
    const got = kindOf(ratioOfSums({ totals: [2, 4, 6], efforts: [1, 2, 3] }), 'rate')
    expect(got.se).toBe(0)
    expect(got.limits).toEqual({ lower: 2, upper: 2 })
  })

  it('one and two units have a rate and no limits', () => {
    expect(ratioOfSums({ totals: [5], efforts: [10] })).toEqual({ kind: 'too-few-units', units: 1, rate: 0.5 })
    expect(ratioOfSums({ totals: [5, 0], efforts: [10, 10] })).toEqual({ kind: 'too-few-units', units: 2, rate: 0.25 })
  })

  it('none at all: the two-sided upper limit of a count of 0 over the whole effort', () => {
    const got = kindOf(ratioOfSums({ totals: [0, 0, 0, 0], efforts: [10, 10, 10, 10] }), 'none')
    expectRelative(got.upper, poissonInterval(0).upper / 40, 1e-12)
    expect(got.effort).toBe(40)
  })

  it('refuses no unit, no effort, negative and missing totals', () => {
    expect(() => ratioOfSums({ totals: [], efforts: [] })).toThrow(/empty/)
    expect(() => ratioOfSums({ totals: [1], efforts: [0] })).toThrow(/efforts is 0/)
    expect(() => ratioOfSums({ totals: [-1], efforts: [1] })).toThrow(/totals holds -1/)
    expect(() => ratioOfSums({ totals: [Number.NaN], efforts: [1] })).toThrow(/totals holds NaN/)
    expect(() => ratioOfSums({ totals: [1, 2], efforts: [1] })).toThrow(/lengths differ/)
  })
})

describe('meanOfRates', () => {
  it('oracle: the same units, per hour (R 4.2.2 t.test)', () => {
    const got = kindOf(meanOfRates({ totals, efforts }), 'mean')
    expectNear(60 * got.mean, 12.833333, sixDecimals)
    expectNear(60 * got.limits.lower, 6.799063, sixDecimals)
    expectNear(60 * got.limits.upper, 18.867603, sixDecimals)
  })

  it('two units have a mean and no limits', () => {
    expect(meanOfRates({ totals: [1, 3], efforts: [1, 1] })).toEqual({ kind: 'too-few-units', units: 2, mean: 2 })
  })
})
