import { describe, expect, it } from 'vitest'
import { incompleteBeta } from '../../src/distribution/incomplete-beta.ts'
import { incompleteGamma } from '../../src/distribution/incomplete-gamma.ts'
import { logGamma } from '../../src/distribution/log-gamma.ts'
import { expectRelative } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

// Oracle: mpmath with 60 digits (reference/distributions/make.py). The goal everywhere is 1e-12, tails included.
const goal = 1e-12

describe('logGamma', () => {
  it('oracle: from 1e-300 to 1e15, beside its zeros at 1 and 2', () => {
    for (const row of referenceTable('distributions/log-gamma')) {
      expectRelative(logGamma(cell(row, 'x')), cell(row, 'logGamma'), 2e-15 * 5, `x ${row.x}`)
    }
  })

  it('identity: exactly 0 at 1 and 2', () => {
    expect(logGamma(1)).toBe(0)
    expect(logGamma(2)).toBe(0)
  })

  it.each([0.3, 1.2, 2.4999, 2.5001, 9.9999, 10.0001, 75])('identity: log gamma(x + 1) is log gamma(x) + log x, at %d', (x) => {
    // A few ulp of the larger term.
    expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x))).toBeLessThanOrEqual(1e-15 * Math.max(8, 8 * logGamma(x + 1)))
  })

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d', (x) => {
    expect(() => logGamma(x)).toThrow(/x is/)
  })
})

describe('incompleteGamma', () => {
  it('oracle: both tails, shapes 0.001 to 20000', () => {
    for (const row of referenceTable('distributions/incomplete-gamma')) {
      const what = `a ${row.a} x ${row.x}`
      const got = incompleteGamma(cell(row, 'a'), cell(row, 'x'))
      expectRelative(got.lower, cell(row, 'lower'), goal, `${what} lower`)
      expectRelative(got.upper, cell(row, 'upper'), goal, `${what} upper`)
    }
  })

  it('identity: ends are exact', () => {
    expect(incompleteGamma(3, 0)).toEqual({ lower: 0, upper: 1 })
    expect(incompleteGamma(3, Number.POSITIVE_INFINITY)).toEqual({ lower: 1, upper: 0 })
  })

  it.each([0.2, 3, 700])('identity: shape 1 is exponential, at %d', (x) => {
    expectRelative(incompleteGamma(1, x).upper, Math.exp(-x), goal)
  })

  it('refuses a negative x, NaN and a shape of 0', () => {
    expect(() => incompleteGamma(1, -1)).toThrow(/x is -1/)
    expect(() => incompleteGamma(1, Number.NaN)).toThrow(/x is NaN/)
    expect(() => incompleteGamma(0, 1)).toThrow(/a is 0/)
  })
})

describe('incompleteBeta', () => {
  it('oracle: both tails, shapes 0.5 to 7000', () => {
    for (const row of referenceTable('distributions/incomplete-beta')) {
      const what = `a ${row.a} b ${row.b} x ${row.x}`
      const got = incompleteBeta(cell(row, 'a'), cell(row, 'b'), cell(row, 'x'))
      expectRelative(got.lower, cell(row, 'lower'), goal, `${what} lower`)
      expectRelative(got.upper, cell(row, 'upper'), goal, `${what} upper`)
    }
  })

  it.each([
    [0.5, 2, 0.3],
    [4, 9, 0.62],
    [300, 20, 0.95],
  ])('identity: mirrored arguments swap the tails, %d %d %d', (a, b, x) => {
    const one = incompleteBeta(a, b, x, 1 - x)
    const other = incompleteBeta(b, a, 1 - x, x)
    expectRelative(one.lower, other.upper, goal)
    expectRelative(one.upper, other.lower, goal)
  })

  it('identity: ends are exact, and 11/16 by hand', () => {
    expect(incompleteBeta(2, 3, 0)).toEqual({ lower: 0, upper: 1 })
    expect(incompleteBeta(2, 3, 1)).toEqual({ lower: 1, upper: 0 })
    expectRelative(incompleteBeta(2, 3, 0.5).lower, 11 / 16, goal)
  })

  it('refuses x outside 0 to 1 and a complement that is none', () => {
    expect(() => incompleteBeta(1, 1, 1.2)).toThrow(/1.2/)
    expect(() => incompleteBeta(1, 1, 0.2, 0.5)).toThrow(/add to 1/)
    expect(() => incompleteBeta(1, 1, Number.NaN)).toThrow(/NaN/)
  })
})
