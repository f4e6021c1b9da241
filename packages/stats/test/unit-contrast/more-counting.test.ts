import { describe, expect, it } from 'vitest'
import { studentMultiplier } from '../../src/distribution/student.ts'
import { betweenUnits } from '../../src/unit-contrast/between-units.ts'
import { contrastLimits } from '../../src/unit-contrast/contrast-limits.ts'
import { floorWithEndlessMinutes, halfWidthAt, unitsNeeded, withMoreMinutes } from '../../src/unit-contrast/more-counting.ts'
import { withinUnits } from '../../src/unit-contrast/within-units.ts'
import { expectRelative, kindOf } from '../near.ts'

// Check values of the handbook stand in methods-checks.test.ts; here are the ends.
const pairs = { units: 5, columns: 1, residualSd: 0.2, se: 0.2 / Math.sqrt(5) }
const arms = { units: 8, columns: 3, residualSd: 0.2, se: (2 * 0.2) / Math.sqrt(8) }

describe('halfWidthAt', () => {
  it('identity: pairs, the half-width of the fit', () => {
    const first = [1, 2, 3, 4, 5]
    const second = [1.2, 2.9, 3.1, 4.8, 5.3]
    const { contrast, residualSd } = kindOf(withinUnits({ first, second }), 'fitted')
    const { lower, upper } = contrastLimits(contrast, 0.99)
    expectRelative(halfWidthAt({ ...pairs, residualSd, se: residualSd / Math.sqrt(5), level: 0.99 }), (upper - lower) / 2, 1e-12)
  })

  it('identity: two arms of three in a fit of unequal arms, the half-width of the fit', () => {
    const z = [1, 1.4, 0.8, 2.2, 2.9, 1.6, 1.8, 2.1, 1.1, 0.9]
    const level = [0, 0, 0, 1, 1, 2, 2, 2, 2, 2]
    const fit = kindOf(betweenUnits({ z, level, block: level.map(() => 0) }), 'fitted')
    const { se } = fit.between(1, 0)
    const { lower, upper } = contrastLimits(fit.between(1, 0))
    expectRelative(halfWidthAt({ units: 10, columns: 3, residualSd: fit.residualSd, se }), (upper - lower) / 2, 1e-12)
  })

  it('no freedom is infinitely wide; no scatter has no width', () => {
    expect(halfWidthAt({ ...arms, units: 3 })).toBe(Number.POSITIVE_INFINITY)
    expect(halfWidthAt({ ...arms, se: 0 })).toBe(0)
  })

  it('refuses no unit and a negative SD', () => {
    expect(() => halfWidthAt({ ...arms, units: 0 })).toThrow(/units is 0/)
    expect(() => halfWidthAt({ ...arms, se: -1 })).toThrow(/se is -1/)
    expect(() => halfWidthAt({ ...arms, se: Number.NaN })).toThrow(/se is NaN/)
  })
})

describe('unitsNeeded', () => {
  it('identity: the one found is short enough and the step before it is not', () => {
    for (const [size, step] of [
      [arms, 4],
      [arms, 2],
      [pairs, 1],
    ] as const) {
      const got = kindOf(unitsNeeded(size, 0.15, step), 'more-units')
      expect((got.units - size.units) % step).toBe(0)
      expect(got.more).toBe(got.units - size.units)
      expect(got.halfWidth).toBeLessThanOrEqual(0.15)
      expect(halfWidthAt(size, got.units - step)).toBeGreaterThan(0.15)
    }
  })

  it('a sharper level asks for more', () => {
    const usual = kindOf(unitsNeeded(pairs, 0.15), 'more-units').units
    expect(kindOf(unitsNeeded({ ...pairs, level: 0.9875 }, 0.15), 'more-units').units).toBeGreaterThan(usual)
  })

  it('beyond the cap it names none; from no freedom it still counts up', () => {
    expect(unitsNeeded({ ...arms, se: 2 }, 0.1)).toEqual({ kind: 'beyond-cap', cap: 60 })
    expect(kindOf(unitsNeeded({ ...arms, units: 3 }, 0.4), 'more-units').units).toBeGreaterThan(3)
    expect(() => unitsNeeded(arms, 0)).toThrow(/target is 0/)
  })
})

describe('more minutes', () => {
  const totals = [4, 9, 3, 7, 12, 5, 8, 6, 2, 9]

  it('oracle: pairs lose the counting noise of both levels (by hand)', () => {
    const noise = totals.reduce((sum, total) => sum + 1 / (total + 0.5), 0) / 5
    const got = withMoreMinutes({ ...pairs, residualSd: 0.8, se: 0.8 / Math.sqrt(5), totals }, 4)
    expectRelative(got.residualSd ** 2, 0.64 - 0.75 * noise, 1e-13)
    expectRelative(got.halfWidth, (studentMultiplier(0.95, 4) * got.residualSd) / Math.sqrt(5), 1e-13)
  })

  it('identity: no more minutes change nothing, more never widen, endless ones are the floor, at least 0', () => {
    const size = { ...pairs, residualSd: 0.8, se: 0.8 / Math.sqrt(5), totals }
    expectRelative(withMoreMinutes(size, 1).residualSd, 0.8, 1e-15)
    expect(withMoreMinutes(size, 3).halfWidth).toBeLessThan(withMoreMinutes(size, 2).halfWidth)
    expect(floorWithEndlessMinutes(size)).toEqual(withMoreMinutes(size, Number.POSITIVE_INFINITY))
    expect(floorWithEndlessMinutes({ ...pairs, residualSd: 0.1, totals })).toEqual({ residualSd: 0, halfWidth: 0 })
  })

  it('refuses fewer minutes and totals that are not equally many for each unit', () => {
    expect(() => withMoreMinutes({ ...pairs, totals }, 0.5)).toThrow(/times is 0.5/)
    expect(() => withMoreMinutes({ ...arms, totals }, 2)).toThrow(/10 totals; .* 8 units/)
    expect(() => withMoreMinutes({ ...pairs, totals: totals.map(() => -1) }, 2)).toThrow(/totals is -1/)
  })
})
