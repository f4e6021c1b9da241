import { describe, expect, it } from 'vitest'
import { betaQuantile } from '../../src/distribution/beta.ts'
import { chiSquareQuantile, chiSquareTails } from '../../src/distribution/chi-square.ts'
import { gammaQuantile } from '../../src/distribution/gamma.ts'
import { incompleteBeta } from '../../src/distribution/incomplete-beta.ts'
import { incompleteGamma } from '../../src/distribution/incomplete-gamma.ts'
import { normalCdf, normalMultiplier, normalQuantile, normalTails } from '../../src/distribution/normal.ts'
import { studentMultiplier, studentQuantile, studentTails, studentTwoSidedP } from '../../src/distribution/student.ts'
import { expectNear, expectRelative, sixDecimals } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

const goal = 1e-12

describe('normal', () => {
  it('oracle: both tails out to 37 standard deviations (mpmath)', () => {
    for (const row of referenceTable('distributions/normal')) {
      const got = normalTails(cell(row, 'z'))
      expectRelative(got.lower, cell(row, 'lower'), goal, `z ${row.z}`)
      expectRelative(got.upper, cell(row, 'upper'), goal, `z ${row.z}`)
    }
  })

  it('oracle: quantiles (R qnorm)', () => {
    for (const row of referenceTable('distributions/r-normal-quantile')) {
      // Where the quantile is 0 the error is absolute.
      expectNear(normalQuantile(cell(row, 'p')), cell(row, 'quantile'), goal * Math.max(1, Math.abs(cell(row, 'quantile'))))
    }
  })

  it.each([1e-300, 1e-20, 0.001, 0.2499, 0.2501, 0.49999999])('identity: quantile and tail undo each other, at %d', (p) => {
    expectRelative(normalCdf(normalQuantile(p)), p, 1e-11)
  })

  it('identity: ends, the middle and the sign', () => {
    expect(normalTails(Number.POSITIVE_INFINITY)).toEqual({ lower: 1, upper: 0 })
    expect(normalTails(Number.NEGATIVE_INFINITY)).toEqual({ lower: 0, upper: 1 })
    expect(normalQuantile(0.5)).toBe(0)
    expect(normalMultiplier(0.9)).toBe(-normalQuantile((1 - 0.9) / 2))
  })

  it('refuses NaN, 0 and 1', () => {
    expect(() => normalCdf(Number.NaN)).toThrow(/NaN/)
    expect(() => normalQuantile(0)).toThrow(/p is 0/)
    expect(() => normalQuantile(1)).toThrow(/p is 1/)
  })
})

describe('Student', () => {
  it('oracle: upper tail and mass within, 1 to 5000 df, t from 1e-6 to 1e40 (mpmath)', () => {
    for (const row of referenceTable('distributions/student')) {
      const df = cell(row, 'df')
      const t = cell(row, 't')
      expectRelative(studentTails(t, df).upper, cell(row, 'upper'), goal, `t ${t} df ${df}`)
      expectRelative(studentTails(-t, df).lower, cell(row, 'upper'), goal, `t ${t} df ${df}`)
      expectRelative(studentTails(t, df).lower, 0.5 + cell(row, 'within') / 2, goal, `t ${t} df ${df}`)
    }
  })

  it('oracle: quantiles (R qt)', () => {
    for (const row of referenceTable('distributions/r-student-quantile')) {
      // R's own qt is off by up to 1e-10 beyond p = 1e-9; see ORIGIN.md.
      const tolerance = cell(row, 'p') < 1e-9 ? 1e-8 : 2e-11
      expectRelative(
        studentQuantile(cell(row, 'p'), cell(row, 'df')),
        cell(row, 'quantile'),
        tolerance,
        `p ${row.p} df ${row.df}`,
      )
    }
  })

  it.each([0.5, 0.9, 0.95, 0.9995, 1 - 1e-9])('identity: closed forms at 1 and 2 df, level %d', (level) => {
    // 1 df: tan(pi level / 2), taken from the far end so that the tail is exact; 2 df: level sqrt(2 / (1 - level^2)).
    const beyond = 1 - level
    expectRelative(studentMultiplier(level, 1), 1 / Math.tan((Math.PI * beyond) / 2), goal)
    expectRelative(studentMultiplier(level, 2), level * Math.sqrt(2 / (beyond * (1 + level))), goal)
  })

  it.each([1, 1.7, 3, 12, 4000])('identity: quantile and p undo each other at %d df, levels to 1 - 1e-12', (df) => {
    for (const level of [1e-6, 0.3, 0.499, 0.501, 0.95, 0.9995, 1 - 2 ** -40]) {
      expectRelative(studentTwoSidedP(studentMultiplier(level, df), df), 1 - level, goal, `level ${level}`)
    }
  })

  it('identity: many df are normal', () => {
    expectRelative(studentMultiplier(0.95, 1e9), normalMultiplier(0.95), 1e-8)
  })

  it('identity: ends and the middle', () => {
    expect(studentTails(Number.POSITIVE_INFINITY, 3)).toEqual({ lower: 1, upper: 0 })
    expect(studentTails(0, 3)).toEqual({ lower: 0.5, upper: 0.5 })
    expect(studentQuantile(0.5, 3)).toBe(0)
    // 1 df: the tail beyond a huge t is 2 / (pi t), here past the square of t.
    expectRelative(studentTwoSidedP(1e200, 1), 2 / Math.PI / 1e200, goal)
  })

  it('refuses NaN, no df and levels at the ends', () => {
    expect(() => studentTails(Number.NaN, 1)).toThrow(/t is NaN/)
    expect(() => studentTwoSidedP(Number.NaN, 1)).toThrow(/t is NaN/)
    expect(() => studentMultiplier(0.95, 0)).toThrow(/df is 0/)
    expect(() => studentMultiplier(1, 5)).toThrow(/level is 1/)
  })
})

describe('chi-square and gamma', () => {
  it('oracle: quantiles (R qchisq)', () => {
    for (const row of referenceTable('distributions/r-chi-square-quantile')) {
      expectRelative(chiSquareQuantile(cell(row, 'p'), cell(row, 'df')), cell(row, 'quantile'), goal, `p ${row.p} df ${row.df}`)
    }
  })

  it.each([0.003, 0.5, 1, 40, 1e5])('identity: gamma quantile and tail undo each other, shape %d', (shape) => {
    for (const p of [1e-12, 0.001, 0.3, 0.5, 0.7]) {
      expectRelative(incompleteGamma(shape, gammaQuantile(p, shape, 'upper')).upper, p, 1e-11, `p ${p}`)
      const low = gammaQuantile(p, shape)
      // At the smallest shapes the lower quantile of a small p is below the smallest double.
      if (low > 1e-300) expectRelative(incompleteGamma(shape, low).lower, p, 1e-11, `p ${p}`)
    }
  })

  it('published: 3.841 at 5 %, 1 df (Fisher 1925, Table III)', () => {
    expectNear(chiSquareQuantile(0.05, 1, 'upper'), 3.841, 0.0005)
    expectRelative(chiSquareTails(3.841458820694124, 1).upper, 0.05, goal)
  })

  it('refuses a negative x and no df', () => {
    expect(() => chiSquareTails(-1, 1)).toThrow(/x is -1/)
    expect(() => chiSquareQuantile(0.5, 0)).toThrow(/df is 0/)
  })
})

describe('beta quantile', () => {
  it('oracle: quantiles (R qbeta)', () => {
    for (const row of referenceTable('distributions/r-beta-quantile')) {
      expectRelative(
        betaQuantile(cell(row, 'p'), cell(row, 'a'), cell(row, 'b')).x,
        cell(row, 'quantile'),
        1e-11,
        `p ${row.p} a ${row.a} b ${row.b}`,
      )
    }
  })

  it('identity: odds and complement belong to x; swapped shapes swap them', () => {
    const one = betaQuantile(0.025, 34, 13)
    const other = betaQuantile(0.025, 13, 34, 'upper')
    expectNear(one.odds, 1.431204, sixDecimals)
    expectRelative(one.x, other.complement, goal)
    expectRelative(one.odds * other.odds, 1, goal)
  })

  it('identity: a quantile next to 1 keeps its complement', () => {
    const { complement } = betaQuantile(1e-6, 1e6, 1, 'upper')
    // Beta(a, 1): upper tail 1 - x^a = p, so complement is about p / a.
    expectRelative(complement, 1e-12, 1e-6)
    expectRelative(incompleteBeta(1e6, 1, 1 - complement, complement).upper, 1e-6, 1e-10)
  })
})
