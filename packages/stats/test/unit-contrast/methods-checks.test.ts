import { describe, expect, it } from 'vitest'
import { inflation } from '../../src/least-squares/inflation.ts'
import { betweenUnits } from '../../src/unit-contrast/between-units.ts'
import { contrastLimits, ratioOfContrast } from '../../src/unit-contrast/contrast-limits.ts'
import { logOdds, logRate } from '../../src/unit-contrast/log-rate.ts'
import { floorWithEndlessMinutes, halfWidthAt, unitsNeeded } from '../../src/unit-contrast/more-counting.ts'
import { unitDifferences, withinUnits } from '../../src/unit-contrast/within-units.ts'
import { expectNear, kindOf, sixDecimals } from '../near.ts'

// Oracle throughout: R 4.2.2 lm, confint and t.test on the same numbers, six printed decimals.
const counts = [62, 88, 171, 140, 35, 51, 90, 122]
const minutes = [200, 200, 200, 180, 160, 200, 200, 200]
const z = counts.map((count, f) => logRate(count, minutes[f] ?? 0))
const block = [0, 0, 0, 0, 1, 1, 1, 1]
const level = [0, 0, 1, 1, 0, 0, 1, 1]

describe('two blocks of fields', () => {
  it('oracle: log rates', () => {
    const printed = [-1.163151, -0.815315, -0.153734, -0.247749, -1.505641, -1.356736, -0.792968, -0.490206]
    printed.forEach((value, f) => {
      expectNear(z[f] ?? 0, value, sixDecimals)
    })
  })

  const fit = kindOf(betweenUnits({ z, level, block }), 'fitted')
  const contrast = fit.between(1, 0)

  it('oracle: estimate, se, df, t, p, residual SD', () => {
    expectNear(contrast.estimate, 0.789046, sixDecimals)
    expectNear(contrast.se, 0.110378, sixDecimals)
    expect(contrast.df).toBe(5)
    expectNear(contrast.t, 7.148566, sixDecimals)
    expectNear(contrast.p, 0.000832, sixDecimals)
    expectNear(fit.residualSd, 0.156098, sixDecimals)
    expect(fit.columns).toBe(3)
  })

  it('oracle: ratio with limits at 95 and 90 %', () => {
    const wide = ratioOfContrast(contrast)
    expectNear(wide.ratio, 2.201296, sixDecimals)
    expectNear(wide.lower, 1.657499, sixDecimals)
    expectNear(wide.upper, 2.923503, sixDecimals)
    const narrow = ratioOfContrast(contrast, 0.9)
    expectNear(narrow.lower, 1.762316, sixDecimals)
    expectNear(narrow.upper, 2.749623, sixDecimals)
  })

  it('oracle: with mean bloom stage as nuisance', () => {
    const stage = [64.2, 65, 64.8, 65.6, 65.1, 64.6, 65.5, 65.9]
    const adjusted = kindOf(betweenUnits({ z, level, block, nuisance: [stage] }), 'fitted').between(1, 0)
    const base = [z.map(() => 1), block, level]
    expectNear(inflation({ base, contrast: 2, nuisance: [stage] }), 2.199715, sixDecimals)
    expectNear(adjusted.estimate, 0.685628, sixDecimals)
    expectNear(adjusted.se, 0.169108, sixDecimals)
    expect(adjusted.df).toBe(4)
    const ratio = ratioOfContrast(adjusted)
    expectNear(ratio.ratio, 1.985019, sixDecimals)
    expectNear(ratio.lower, 1.24124, sixDecimals)
    expectNear(ratio.upper, 3.174488, sixDecimals)
  })
})

describe('pairs, and before against after', () => {
  it('oracle: five fields with both levels', () => {
    const first = [52, 38, 61, 44, 30].map((count, f) => logRate(count, [100, 100, 100, 90, 100][f] ?? 0))
    const second = [40, 31, 49, 42, 16].map((count, f) => logRate(count, [100, 100, 90, 100, 100][f] ?? 0))
    const { contrast } = kindOf(withinUnits({ first, second }), 'fitted')
    expectNear(contrast.t, -2.966855, sixDecimals)
    expect(contrast.df).toBe(4)
    expectNear(contrast.p, 0.041273, sixDecimals)
    const ratio = ratioOfContrast(contrast)
    expectNear(ratio.ratio, 0.765275, sixDecimals)
    expectNear(ratio.lower, 0.595788, sixDecimals)
    expectNear(ratio.upper, 0.982977, sixDecimals)
  })

  it('oracle: three control and three treated fields, before and after', () => {
    const before = [24, 19, 31, 23, 45, 29].map((count) => logRate(count, 35))
    const after = [45, 25, 37, 60, 91, 61].map((count) => logRate(count, 35))
    const fit = kindOf(betweenUnits({ z: unitDifferences(before, after), level: [0, 0, 0, 1, 1, 1] }), 'fitted')
    const contrast = fit.between(1, 0)
    expectNear(contrast.t, 2.819833, sixDecimals)
    expect(contrast.df).toBe(4)
    expectNear(contrast.p, 0.047836, sixDecimals)
    const ratio = ratioOfContrast(contrast)
    expectNear(ratio.ratio, 1.55129, sixDecimals)
    expectNear(ratio.lower, 1.006779, sixDecimals)
    expectNear(ratio.upper, 2.390296, sixDecimals)
  })

  it('oracle: one kind against another, three fields against three', () => {
    const other = [22, 30, 18, 15, 27, 20]
    const odds = [40, 25, 31, 66, 90, 58].map((count, f) => logOdds(count, other[f] ?? 0))
    const contrast = kindOf(betweenUnits({ z: odds, level: [0, 0, 0, 1, 1, 1] }), 'fitted').between(1, 0)
    expectNear(contrast.estimate, 0.918391, sixDecimals)
    expectNear(contrast.se, 0.274261, sixDecimals)
    expectNear(contrast.t, 3.348601, sixDecimals)
    expectNear(contrast.p, 0.028606, sixDecimals)
    const ratio = ratioOfContrast(contrast)
    expectNear(ratio.ratio, 2.505256, sixDecimals)
    expectNear(ratio.lower, 1.169902, sixDecimals)
    expectNear(ratio.upper, 5.364813, sixDecimals)
  })
})

describe('how much more counting', () => {
  const fit = kindOf(betweenUnits({ z, level, block }), 'fitted')
  const size = { units: 8, columns: 3, residualSd: fit.residualSd, se: fit.between(1, 0).se }
  const target = Math.log(1.5) / 2

  it('oracle: target, width now, width of 16 fields, width of endless minutes', () => {
    expectNear(target, 0.202733, sixDecimals)
    expectNear(halfWidthAt(size), 0.283736, sixDecimals)
    const more = kindOf(unitsNeeded(size, target, 4), 'more-units')
    expect(more).toMatchObject({ units: 16, more: 8 })
    expectNear(more.halfWidth, 0.168615, sixDecimals)
    expectNear(floorWithEndlessMinutes({ ...size, totals: counts }).halfWidth, 0.190516, sixDecimals)
  })

  it('oracle: a ratio of 2 would be settled now', () => {
    expect(unitsNeeded(size, Math.log(2) / 2, 4).kind).toBe('enough-now')
  })

  it('identity: the width now is the half-width of the fit', () => {
    const { lower, upper } = contrastLimits(fit.between(1, 0))
    expectNear(halfWidthAt(size), (upper - lower) / 2, 1e-12)
  })
})
