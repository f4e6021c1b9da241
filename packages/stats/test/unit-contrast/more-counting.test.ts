import { describe, expect, it } from 'vitest'
import { studentMultiplier } from '../../src/distribution/student.ts'
import { contrastLimits } from '../../src/unit-contrast/contrast-limits.ts'
import { floorWithEndlessMinutes, halfWidthAt, unitsNeeded, withMoreMinutes } from '../../src/unit-contrast/more-counting.ts'
import { withinUnits } from '../../src/unit-contrast/within-units.ts'
import { expectRelative, kindOf } from '../near.ts'

// Check values of the handbook stand in methods-checks.test.ts; here are the ends.
const pairs = { layout: 'within', units: 5, columns: 1, residualSd: 0.2 } as const
const arms = { layout: 'between', units: 8, columns: 3, residualSd: 0.2 } as const

describe('halfWidthAt', () => {
  it('identity: pairs, the half-width of the fit', () => {
    const first = [1, 2, 3, 4, 5]
    const second = [1.2, 2.9, 3.1, 4.8, 5.3]
    const { contrast, residualSd } = kindOf(withinUnits({ first, second }), 'fitted')
    const { lower, upper } = contrastLimits(contrast, 0.99)
    expectRelative(halfWidthAt({ ...pairs, residualSd, level: 0.99 }), (upper - lower) / 2, 1e-12)
  })

  it('no freedom is infinitely wide; no scatter has no width', () => {
    expect(halfWidthAt({ ...arms, units: 3 })).toBe(Number.POSITIVE_INFINITY)
    expect(halfWidthAt({ ...arms, residualSd: 0 })).toBe(0)
  })

  it('refuses no unit and a negative SD', () => {
    expect(() => halfWidthAt({ ...arms, units: 0 })).toThrow(/units is 0/)
    expect(() => halfWidthAt({ ...arms, residualSd: -1 })).toThrow(/residualSd is -1/)
    expect(() => halfWidthAt({ ...arms, residualSd: Number.NaN })).toThrow(/residualSd is NaN/)
  })
})

describe('unitsNeeded', () => {
  it('identity: the one found is short enough and the step before it is not', () => {
    for (const [size, blocks, step] of [
      [arms, 2, 4],
      [arms, 1, 2],
      [pairs, 1, 1],
    ] as const) {
      const got = kindOf(unitsNeeded(size, 0.15, blocks), 'more-units')
      expect((got.units - size.units) % step).toBe(0)
      expect(got.more).toBe(got.units - size.units)
      expect(got.halfWidth).toBeLessThanOrEqual(0.15)
      expect(halfWidthAt({ ...size, units: got.units - step })).toBeGreaterThan(0.15)
    }
  })

  it('a sharper level asks for more', () => {
    const usual = kindOf(unitsNeeded(pairs, 0.15), 'more-units').units
    expect(kindOf(unitsNeeded({ ...pairs, level: 0.9875 }, 0.15), 'more-units').units).toBeGreaterThan(usual)
  })

  it('beyond the cap it names none; from no freedom it still counts up', () => {
    expect(unitsNeeded({ ...arms, residualSd: 2 }, 0.1)).toEqual({ kind: 'beyond-cap', cap: 60 })
    expect(kindOf(unitsNeeded({ ...arms, units: 3 }, 0.4), 'more-units').units).toBeGreaterThan(3)
    expect(() => unitsNeeded(arms, 0)).toThrow(/target is 0/)
  })
})

describe('more minutes', () => {
  const totals = [4, 9, 3, 7, 12, 5, 8, 6, 2, 9]

  it('oracle: pairs lose the counting noise of both levels (by hand)', () => {
    const noise = totals.reduce((sum, total) => sum + 1 / (total + 0.5), 0) / 5
    const got = withMoreMinutes({ ...pairs, residualSd: 0.8, totals }, 4)
    expectRelative(got.residualSd ** 2, 0.64 - 0.75 * noise, 1e-13)
    expectRelative(got.halfWidth, (studentMultiplier(0.95, 4) * got.residualSd) / Math.sqrt(5), 1e-13)
  })

  it('identity: no more minutes change nothing, more never widen, endless ones are the floor, at least 0', () => {
    const size = { ...pairs, residualSd: 0.8, totals }
    expectRelative(withMoreMinutes(size, 1).residualSd, 0.8, 1e-15)
    expect(withMoreMinutes(size, 3).halfWidth).toBeLessThan(withMoreMinutes(size, 2).halfWidth)
    expect(floorWithEndlessMinutes(size)).toEqual(withMoreMinutes(size, Number.POSITIVE_INFINITY))
    expect(floorWithEndlessMinutes({ ...pairs, residualSd: 0.1, totals })).toEqual({ residualSd: 0, halfWidth: 0 })
  })

  it('refuses fewer minutes and totals that do not fit the layout', () => {
    expect(() => withMoreMinutes({ ...pairs, totals }, 0.5)).toThrow(/times is 0.5/)
    expect(() => withMoreMinutes({ ...arms, totals }, 2)).toThrow(/10 totals; expected 8/)
    expect(() => withMoreMinutes({ ...pairs, totals: totals.map(() => -1) }, 2)).toThrow(/totals is -1/)
  })
})
