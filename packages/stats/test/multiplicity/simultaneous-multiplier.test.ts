import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { type Law, normalMultiplier, simultaneousMultiplier, studentMultiplier } from '../../src/index.ts'
import { expectNear, expectRelative } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

const rng = createRng('multipliers')

/** Correlation of differences between means of groups of these sizes: all pairs, or each against the first. */
function differences(
  sizes: readonly number[],
  pairs: 'all' | 'against',
): { readonly correlation: Float64Array; readonly m: number } {
  const places = sizes.flatMap((_, of) => Array.from({ length: of }, (_, against) => [of, against] as const))
  const weights = places
    .filter(([, against]) => pairs === 'all' || against === 0)
    .map(([of, against]) => sizes.map((_, k) => Number(k === of) - Number(k === against)))
  const covariance = (a: readonly number[], b: readonly number[]): number =>
    sizes.reduce((sum, size, k) => sum + ((a[k] ?? 0) * (b[k] ?? 0)) / size, 0)
  const correlation = weights.flatMap((a) =>
    weights.map((b) => covariance(a, b) / Math.sqrt(covariance(a, a) * covariance(b, b))),
  )
  return { correlation: Float64Array.from(correlation), m: weights.length }
}

const independent = (m: number): Float64Array => Float64Array.from({ length: m * m }, (_, k) => Number(k % (m + 1) === 0))

describe('simultaneousMultiplier', () => {
  it.each(
    referenceTable('marginal-means/multipliers').map((row) => ({
      pairs: cell(row, 'against') === 1 ? ('against' as const) : ('all' as const),
      sizes: [1, 2, 3, 4].map((k) => cell(row, `n${k}`)),
      df: cell(row, 'df'),
      level: cell(row, 'level'),
      printed: cell(row, 'multiplier'),
    })),
  )('oracle: R qtukey or mvtnorm, $pairs of $sizes, df $df, level $level', ({ pairs, sizes, df, level, printed }) => {
    const law: Law = df === Number.POSITIVE_INFINITY ? 'normal' : { df }
    const { value, error } = simultaneousMultiplier({ ...differences(sizes, pairs), law, level, rng })
    expect(error).toBeLessThan(1e-3 * value)
    // The multiplier within the error it tells of itself, the printed one within 2e-5.
    expectNear(value, printed, error + 2e-5)
  })

  it('identity: estimates with nothing in common have the level of one, to the power of 1 / m', () => {
    for (const m of [2, 3, 6]) {
      const { value, error } = simultaneousMultiplier({ correlation: independent(m), m, law: 'normal', level: 0.95, rng })
      expectNear(value, normalMultiplier(0.95 ** (1 / m)), error)
    }
  })

  it('identity: one estimate, and several that are the same but for signs, have the multiplier of one, exactly', () => {
    const asked = { level: 0.95, rng } as const
    const one = { value: normalMultiplier(0.95), error: 0, directions: 0 }
    expect(simultaneousMultiplier({ ...asked, correlation: Float64Array.of(1), m: 1, law: 'normal' })).toEqual(one)
    const signs = Float64Array.of(1, -1, 1, -1, 1, -1, 1, -1, 1)
    expect(simultaneousMultiplier({ ...asked, correlation: signs, m: 3, law: { df: 5 } }).value).toBe(studentMultiplier(0.95, 5))
  })

  it('identity: between one and as many with nothing in common; signs and order of estimates change nothing but the draw', () => {
    const { correlation, m } = differences([3, 10, 20, 5], 'all')
    const asked = { m, law: { df: 9 }, level: 0.95, rng } as const
    const { value, error } = simultaneousMultiplier({ ...asked, correlation })
    expect(value).toBeGreaterThan(studentMultiplier(0.95, 9))
    expect(value).toBeLessThan(studentMultiplier(1 - 0.05 / m, 9))
    const turned = correlation.map((entry, k) => ([1, 4].includes(k % m) === [1, 4].includes(Math.floor(k / m)) ? entry : -entry))
    const same = simultaneousMultiplier({ ...asked, correlation: turned })
    expectNear(same.value, value, same.error + error)
  })

  it('identity: the same seed gives the same number, whatever was drawn before; t with endless df is normal', () => {
    const asked = { ...differences([4, 4, 4, 4], 'all'), level: 0.95 }
    const used = createRng('multipliers')
    used.uniform()
    const normal = simultaneousMultiplier({ ...asked, law: 'normal', rng })
    expect(simultaneousMultiplier({ ...asked, law: 'normal', rng: used })).toEqual(normal)
    expectRelative(simultaneousMultiplier({ ...asked, law: { df: 1e7 }, rng }).value, normal.value, 1e-6)
  })

  it('keeps its promise of a small error in twenty dimensions', () => {
    const { value, error } = simultaneousMultiplier({ correlation: independent(20), m: 20, law: 'normal', level: 0.95, rng })
    expect(error).toBeLessThan(1e-3 * value)
    expectNear(value, normalMultiplier(0.95 ** (1 / 20)), error)
  })

  it('refuses what is no correlation', () => {
    const asked = { m: 3, law: 'normal', level: 0.95, rng } as const
    const of =
      (...correlation: number[]) =>
      () =>
        simultaneousMultiplier({ ...asked, correlation: Float64Array.from(correlation) })
    expect(of(1, 0, 0, 1)).toThrow(/4 entries; expected 3 by 3/)
    expect(of(1, 0, 0, 0, 2, 0, 0, 0, 1)).toThrow(/holds 2 in row 1, column 1/)
    expect(of(1, 0.5, 0, 0, 1, 0, 0, 0, 1)).toThrow(/expected a correlation/)
    expect(of(1, Number.NaN, 0, Number.NaN, 1, 0, 0, 0, 1)).toThrow(/NaN/)
    expect(of(1, -0.9, -0.9, -0.9, 1, -0.9, -0.9, -0.9, 1)).toThrow(/negative variance/)
    expect(() => simultaneousMultiplier({ ...asked, m: 0, correlation: new Float64Array(0) })).toThrow(/m is 0/)
  })
})
