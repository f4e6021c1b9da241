import { describe, expect, it } from 'vitest'
import { expectedAtOneRate, poissonDispersion, poissonInterval, poissonUpperLimit } from '../../src/count/poisson-interval.ts'
import { expectNear, kindOf, sixDecimals } from '../near.ts'

// Oracle: R 4.2.2 poisson.test and qchisq, six printed decimals.
const printed = [
  { count: 0, lower: 0, upper: 3.688879 },
  { count: 5, lower: 1.623486, upper: 11.668332 },
  { count: 10, lower: 4.795389, upper: 18.390356 },
]

describe('poissonInterval', () => {
  it.each(printed)('oracle: count $count', ({ count, lower, upper }) => {
    const got = poissonInterval(count)
    expectNear(got.lower, lower, sixDecimals)
    expectNear(got.upper, upper, sixDecimals)
  })

  it('oracle: one-sided, the rule of three', () => {
    expectNear(poissonUpperLimit(0), 2.995732, sixDecimals)
  })

  it.each([0.5, 0.95, 0.9995])('identity: the upper limit of 0 is -log of its tail, level %d', (level) => {
    expect(poissonInterval(0, level).upper).toBeCloseTo(-Math.log((1 - level) / 2), 11)
  })

  it.each([1, 7, 400, 250000])('identity: a one-sided limit at 97.5 %% is the upper end at 95 %%, count %i', (count) => {
    expect(poissonUpperLimit(count, 0.975)).toBeCloseTo(poissonInterval(count).upper, 8)
  })

  it('identity: a count of a million is nearly normal', () => {
    const { lower, upper } = poissonInterval(1e6)
    // Width 2 z sqrt(count), the skewness shifts both ends up by about 1.
    expectNear(upper - lower, 2 * 1.959964 * 1000, 2)
  })

  it.each([-1, 2.5, Number.NaN])('refuses a count of %d', (count) => {
    expect(() => poissonInterval(count)).toThrow(/count is/)
  })

  it.each([0, 1, Number.NaN])('refuses a level of %d', (level) => {
    expect(() => poissonInterval(3, level)).toThrow(/level is/)
  })
})

describe('poissonDispersion', () => {
  it('oracle: by hand, 9/8 + 1/8 + 4/8 over 2', () => {
    expect(kindOf(poissonDispersion([5, 9, 10], [8, 8, 8]), 'dispersion').dispersion).toBe(0.875)
  })

  it('oracle: 1 1 10 expected at one rate over efforts 1 1 2 (3, 3, 6): 4/3 + 4/3 + 16/6 over 2', () => {
    const counts = [1, 1, 10]
    const got = kindOf(poissonDispersion(counts, expectedAtOneRate(counts, [1, 1, 2])), 'dispersion')
    expect(got.dispersion).toBeCloseTo(16 / 6, 14)
    expect(got.df).toBe(2)
  })

  it('has nothing to say of one count, of none, and of counts that were all 0', () => {
    expect(poissonDispersion([4], [4]).kind).toBe('no-freedom')
    expect(poissonDispersion([], []).kind).toBe('no-freedom')
    expect(poissonDispersion([0, 0], expectedAtOneRate([0, 0], [1, 2])).kind).toBe('none-expected')
  })

  it('refuses lists of two lengths, and a negative expectation', () => {
    expect(() => poissonDispersion([1, 2], [1])).toThrow(/lengths differ/)
    expect(() => poissonDispersion([1, 2], [1, -1])).toThrow(/expected holds -1/)
  })
})
