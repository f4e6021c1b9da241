import { describe, expect, it } from 'vitest'
import { betweenUnits } from '../../src/unit-contrast/between-units.ts'
import { contrastLimits, ratioOfContrast } from '../../src/unit-contrast/contrast-limits.ts'
import { logOdds, logRate } from '../../src/unit-contrast/log-rate.ts'
import { unitSlope } from '../../src/unit-contrast/unit-slope.ts'
import { unitDifferences, withinSlopes, withinUnits } from '../../src/unit-contrast/within-units.ts'
import { expectNear, expectRelative, kindOf } from '../near.ts'
import { referenceValues } from '../reference-table.ts'

const oracle = referenceValues('least-squares/values')

describe('several levels against a reference', () => {
  const z = [0.1, 0.4, 0.35, 1.2, 0.9, 1.6, 1.1, 2.2, 1.7, 2.9]
  const level = [0, 0, 0, 1, 1, 1, 2, 2, 2, 2]
  const block = [0, 1, 0, 1, 0, 1, 0, 1, 0, 1]
  const nuisance = [[3, 1, 4, 1, 5, 9, 2, 6, 5, 3].map((d) => 20000 + d)]
  const fit = kindOf(betweenUnits({ z, level, block, nuisance }), 'fitted')

  it('oracle: both contrasts from one residual variance (R lm)', () => {
    expect(fit).toMatchObject({ df: 5, units: 10, columns: 5, nuisanceLeftOut: [] })
    expectRelative(fit.residualSd, oracle('levels-sd')[0] ?? 0, 1e-10)
    fit.contrasts.forEach((contrast, k) => {
      expect(contrast.level).toBe(k + 1)
      expectRelative(contrast.estimate, oracle('levels-estimates')[k] ?? 0, 1e-10)
      expectRelative(contrast.se, oracle('levels-se')[k] ?? 0, 1e-10)
      expectRelative(contrast.p, oracle('levels-p')[k] ?? 0, 1e-10)
    })
  })

  it('oracle: level 2 against level 1, from the same fit and from one with 1 as reference (R relevel)', () => {
    const [estimate = 0, se = 0, t = 0, p = 0] = oracle('levels-2-against-1')
    const again = kindOf(betweenUnits({ z, level, block, nuisance, reference: 1 }), 'fitted')
    for (const got of [fit.between(2, 1), again.between(2, 1)]) {
      expectRelative(got.estimate, estimate, 1e-10)
      expectRelative(got.se, se, 1e-10)
      expectRelative(got.t, t, 1e-10)
      expectRelative(got.p, p, 1e-10)
    }
    expectRelative(fit.between(1, 2).estimate, -estimate, 1e-10)
    expectRelative(again.between(0, 1).estimate, -(oracle('levels-estimates')[0] ?? 0), 1e-10)
  })

  it('a level against itself, and a level that no unit has, are refused', () => {
    expect(() => fit.between(2, 2)).toThrow(/against itself/)
    expect(() => fit.between(3, 0)).toThrow(/level 3/)
    expect(() => betweenUnits({ z, level, reference: 9 })).toThrow(/reference is 9/)
  })
})

describe('two arms', () => {
  const z = [1, 1.4, 0.7, 2.9, 2.2, 2.6, 3.1]
  const level = [0, 0, 0, 1, 1, 1, 1]

  it('identity: without blocks it is the two-sample t with pooled variance, unequal arms', () => {
    const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length
    const squares = (values: readonly number[]): number => values.reduce((sum, v) => sum + (v - mean(values)) ** 2, 0)
    const a = z.slice(0, 3)
    const b = z.slice(3)
    const pooled = Math.sqrt((squares(a) + squares(b)) / 5)
    const got = kindOf(betweenUnits({ z, level }), 'fitted').between(1, 0)
    expectRelative(got.estimate, mean(b) - mean(a), 1e-13)
    expectRelative(got.se, pooled * Math.sqrt(1 / 3 + 1 / 4), 1e-13)
  })

  it('identity: level codes are names: 5 and 3 do what 0 and 1 do', () => {
    const plain = kindOf(betweenUnits({ z, level }), 'fitted').between(1, 0)
    const named = kindOf(betweenUnits({ z, level: level.map((v) => (v === 1 ? 3 : 5)), reference: 5 }), 'fitted').between(3, 5)
    expect(named).toEqual(plain)
  })

  it('identity: a block effect cancels, whatever its size', () => {
    const block = [0, 1, 0, 1, 0, 1, 0]
    const plain = kindOf(betweenUnits({ z, level, block }), 'fitted').between(1, 0)
    const lifted = kindOf(betweenUnits({ z: z.map((v, f) => v + 50 * (block[f] ?? 0)), level, block }), 'fitted').between(1, 0)
    expectRelative(lifted.estimate, plain.estimate, 1e-12)
    expectRelative(lifted.se, plain.se, 1e-12)
  })

  it('a nuisance that blocks already hold is left out and named', () => {
    const block = [0, 1, 0, 1, 0, 1, 0]
    const got = kindOf(betweenUnits({ z, level, block, nuisance: [block.map((b) => 3 + b), [4, 6, 5, 7, 8, 6, 5]] }), 'fitted')
    expect(got).toMatchObject({ nuisanceLeftOut: [0], df: 3, columns: 4 })
  })

  it('refusals: one level, level lost in blocks or nuisance, too few df, no scatter, no unit', () => {
    expect(betweenUnits({ z: [1, 2, 3], level: [4, 4, 4] })).toEqual({ kind: 'one-level', level: 4 })
    expect(betweenUnits({ z: [], level: [] })).toEqual({ kind: 'one-level', level: undefined })
    expect(betweenUnits({ z, level, block: level })).toEqual({ kind: 'aliased', contrasts: [0] })
    expect(betweenUnits({ z, level, nuisance: [level.map((v) => 7 - v)] })).toEqual({ kind: 'aliased', contrasts: [0] })
    expect(betweenUnits({ z: [1, 2, 4], level: [0, 1, 1] })).toEqual({ kind: 'no-freedom', df: 1, units: 3 })
    expect(betweenUnits({ z: [1, 2], level: [0, 1] })).toEqual({ kind: 'no-freedom', df: 0, units: 2 })
    const same = kindOf(betweenUnits({ z: [2, 2, 5, 5], level: [0, 0, 1, 1] }), 'no-scatter')
    expectNear(same.estimates[0] ?? 0, 3, 1e-14)
    expect(betweenUnits({ z: [0, 0, 0, 0], level: [0, 0, 1, 1] })).toMatchObject({ kind: 'no-scatter' })
  })

  it('refuses NaN, half codes and lengths that differ', () => {
    expect(() => betweenUnits({ z: [1, Number.NaN, 2, 3], level: [0, 0, 1, 1] })).toThrow(/NaN/)
    expect(() => betweenUnits({ z: [1, 2, 3], level: [0, 0.5, 1] })).toThrow(/code is 0.5/)
    expect(() => betweenUnits({ z: [1, 2, 3], level: [0, 1] })).toThrow(/lengths differ/)
    expect(() => betweenUnits({ z: [1, 2, 3, 4], level: [0, 0, 1, 1], nuisance: [[1, 2]] })).toThrow(/lengths differ/)
  })
})

describe('pairs', () => {
  const differences = [0.5, 0.1, 0.7, 0.4, 0.9, 0.3]
  const first = [1, 2, 3, 4, 5, 6]
  const second = first.map((z, f) => z + (differences[f] ?? 0))

  it('oracle: with a nuisance entered as differences (R lm)', () => {
    const { contrast, df } = kindOf(withinUnits({ first, second, nuisance: [[1, -1, 2, 0, 3, 1]] }), 'fitted')
    const [estimate = 0, se = 0, t = 0, p = 0] = oracle('pairs-nuisance')
    expect(df).toBe(4)
    expectRelative(contrast.estimate, estimate, 1e-12)
    expectRelative(contrast.se, se, 1e-12)
    expectRelative(contrast.t, t, 1e-12)
    expectRelative(contrast.p, p, 1e-12)
  })

  it('identity: before and after between arms equals the interaction fitted on all cells', () => {
    const before = [0.2, 0.9, 0.4, 1.1, 0.6, 0.8]
    const after = [0.7, 1, 0.9, 2.1, 1.9, 1.6]
    const arm = [0, 0, 0, 1, 1, 1]
    const difference = kindOf(betweenUnits({ z: unitDifferences(before, after), level: arm }), 'fitted').between(1, 0)
    // 12 cells: a block per field, period as nuisance, treated-and-after as the level.
    const cells = kindOf(
      betweenUnits({
        z: [...before, ...after],
        level: [...arm.map(() => 0), ...arm],
        block: [0, 1, 2, 3, 4, 5, 0, 1, 2, 3, 4, 5],
        nuisance: [[...arm.map(() => 0), ...arm.map(() => 1)]],
      }),
      'fitted',
    ).between(1, 0)
    expectRelative(cells.estimate, difference.estimate, 1e-12)
    expectRelative(cells.se, difference.se, 1e-12)
    expect(cells.df).toBe(difference.df)
  })

  it('identity: exchanging the levels turns the sign', () => {
    const one = kindOf(withinUnits({ first, second }), 'fitted').contrast
    const other = kindOf(withinUnits({ first: second, second: first }), 'fitted').contrast
    expectRelative(other.t, -one.t, 1e-12)
    expectRelative(other.p, one.p, 1e-12)
  })

  it('refusals: two pairs, none, and pairs that all say the same', () => {
    expect(withinUnits({ first: [1, 2], second: [2, 4] })).toEqual({ kind: 'no-freedom', df: 1, units: 2 })
    expect(withinUnits({ first: [], second: [] })).toEqual({ kind: 'no-freedom', df: 0, units: 0 })
    expect(withinUnits({ first: [1, 2, 3], second: [2, 3, 4] }).kind).toBe('no-scatter')
    expect(withinUnits({ first: [1, 2, 3, 4], second: [2, 4, 4, 7], nuisance: [[5, 5, 5, 5]] })).toEqual({
      kind: 'aliased',
      contrasts: [0],
    })
  })
})

describe('measured levels', () => {
  it('oracle: slope of four units (R lm)', () => {
    const { contrast } = kindOf(unitSlope({ z: [1, 2, 4, 4], value: [0, 1, 2, 3] }), 'fitted')
    const [estimate = 0, se = 0, t = 0, p = 0] = oracle('slope')
    expectRelative(contrast.estimate, estimate, 1e-12)
    expectRelative(contrast.se, se, 1e-12)
    expectRelative(contrast.t, t, 1e-12)
    expectRelative(contrast.p, p, 1e-12)
  })

  it('identity: a level of 0 and 1 is the contrast of two arms, in blocks too', () => {
    const z = [1, 1.4, 0.7, 2.9, 2.2, 2.6]
    const value = [0, 1, 0, 1, 0, 1]
    const block = [0, 0, 1, 1, 2, 2]
    const slope = kindOf(unitSlope({ z, value, block }), 'fitted').contrast
    const arms = kindOf(betweenUnits({ z, level: value, block }), 'fitted').between(1, 0)
    expectRelative(slope.estimate, arms.estimate, 1e-12)
    expectRelative(slope.se, arms.se, 1e-12)
  })

  it('refusals: a level that does not vary, too few df', () => {
    expect(unitSlope({ z: [1, 2, 3, 4], value: [2, 2, 2, 2] })).toEqual({ kind: 'aliased', contrasts: [0] })
    expect(unitSlope({ z: [1, 2, 4], value: [0, 1, 2] })).toEqual({ kind: 'no-freedom', df: 1, units: 3 })
  })

  it('oracle: slopes 1, 2, 3 within three units; a unit whose level stays is named (by hand)', () => {
    const got = withinSlopes({
      z: [0, 1, 5, 7, 9, 2, 5, 4],
      value: [3, 4, 1, 2, 3, 0, 1, 2],
      unit: [0, 0, 1, 1, 1, 2, 2, 5],
    })
    const fit = kindOf(got, 'fitted')
    expectRelative(fit.contrast.estimate, 2, 1e-13)
    expectRelative(fit.contrast.se, 1 / Math.sqrt(3), 1e-13)
    expect(fit).toMatchObject({ df: 2, units: 3, withoutSlope: [5] })
  })

  it('no unit with a slope is no freedom', () => {
    expect(withinSlopes({ z: [1, 2], value: [3, 3], unit: [0, 1] })).toMatchObject({ kind: 'no-freedom', withoutSlope: [0, 1] })
  })
})

describe('limits and log rates', () => {
  it('identity: a ratio is the limit on the other scale; wider levels hold narrower ones', () => {
    const contrast = { estimate: 0.4, se: 0.2, df: 3 }
    const { ratio, lower, upper } = ratioOfContrast(contrast, 0.9)
    const plain = contrastLimits(contrast, 0.9)
    expectRelative(ratio, Math.exp(0.4), 1e-15)
    expectRelative(lower * upper, ratio * ratio, 1e-14)
    expectRelative(upper, Math.exp(plain.upper), 1e-15)
    expect(contrastLimits(contrast, 0.9995).lower).toBeLessThan(plain.lower)
  })

  it('identity: log rates of 0 stand, log odds turn their sign', () => {
    expect(logRate(0, 10)).toBe(Math.log(0.05))
    expect(logOdds(3, 8)).toBeCloseTo(-logOdds(8, 3), 15)
    expect(logOdds(0, 0)).toBe(0)
    expect(() => logRate(2, 0)).toThrow(/effort is 0/)
    expect(() => logRate(0.5, 1)).toThrow(/count is 0.5/)
  })
})
