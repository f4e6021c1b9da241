import { describe, expect, it } from 'vitest'
import { oddsOfShare, shareOfSums } from '../../src/proportion/share-of-sums.ts'
import { expectNear, expectRelative, kindOf, sixDecimals } from '../near.ts'

// Oracle: R 4.2.2, script in the handbook.
const printed = [
  {
    parts: [30, 12, 25, 8, 40, 18],
    wholes: [50, 30, 36, 20, 55, 39],
    share: 0.578261,
    se: 0.057918,
    lower: 0.426817,
    upper: 0.716289,
  },
  {
    parts: [14, 3, 22, 9, 5, 17],
    wholes: [61, 40, 58, 52, 33, 70],
    share: 0.22293,
    se: 0.04003,
    lower: 0.136735,
    upper: 0.341939,
  },
]

describe('shareOfSums', () => {
  it.each(printed)('oracle: share $share', ({ parts, wholes, share, se, lower, upper }) => {
    const got = kindOf(shareOfSums({ parts, wholes }), 'share')
    expectNear(got.share, share, sixDecimals)
    expectNear(got.se, se, sixDecimals)
    expectNear(got.limits.lower, lower, sixDecimals)
    // The first upper limit is 0.7162884984: printed 0.716289, a digit that hangs on the last bit. Tolerance 1e-6 as the handbook says.
    expectRelative(got.limits.upper, upper, 1e-6)
    expect(got.df).toBe(5)
  })

  it('oracle: A per B over six units, as odds of a share (R 4.2.2)', () => {
    const a = [40, 25, 31, 66, 90, 58]
    const b = [22, 30, 18, 15, 27, 20]
    const got = kindOf(shareOfSums({ parts: a, wholes: a.map((count, f) => count + (b[f] ?? 0)) }), 'share')
    expectNear(oddsOfShare(got.share), 2.348485, sixDecimals)
    expectNear(oddsOfShare(got.limits.lower), 1.312296, sixDecimals)
    expectNear(oddsOfShare(got.limits.upper), 4.202849, sixDecimals)
  })

  it('identity: the share of the rest mirrors it', () => {
    const { parts, wholes } = { parts: [3, 9, 4, 11], wholes: [10, 10, 8, 30] }
    const one = kindOf(shareOfSums({ parts, wholes }), 'share')
    const rest = kindOf(shareOfSums({ parts: parts.map((a, f) => (wholes[f] ?? 0) - a), wholes }), 'share')
    expectRelative(rest.limits.lower, 1 - one.limits.upper, 1e-12)
    expectRelative(rest.se, one.se, 1e-12)
  })

  it('a unit with nothing in it says nothing', () => {
    const without = shareOfSums({ parts: [3, 9, 4], wholes: [10, 10, 8] })
    expect(shareOfSums({ parts: [3, 0, 9, 4], wholes: [10, 0, 10, 8] })).toEqual(without)
    expect(shareOfSums({ parts: [3, 0, 9], wholes: [10, 0, 10] })).toMatchObject({ kind: 'too-few-units', units: 2 })
  })

  it('shares at an end and empty counts have no limits', () => {
    expect(shareOfSums({ parts: [0, 0, 0], wholes: [5, 6, 7] })).toMatchObject({
      kind: 'at-an-end',
      share: 0,
      whole: 18,
      units: 3,
    })
    expect(shareOfSums({ parts: [5, 6, 7], wholes: [5, 6, 7] })).toMatchObject({ kind: 'at-an-end', share: 1, part: 18 })
    expect(shareOfSums({ parts: [0, 0], wholes: [0, 0] })).toEqual({ kind: 'nothing-counted' })
    expect(shareOfSums({ parts: [], wholes: [] })).toEqual({ kind: 'nothing-counted' })
  })

  it('refuses a part beyond its whole and what is not a number', () => {
    expect(() => shareOfSums({ parts: [6], wholes: [5] })).toThrow(/part 6 of 5/)
    expect(() => shareOfSums({ parts: [Number.NaN], wholes: [5] })).toThrow(/part NaN of 5/)
    expect(() => oddsOfShare(1.1)).toThrow(/share is 1.1/)
  })

  it('identity: odds at the ends', () => {
    expect(oddsOfShare(0)).toBe(0)
    expect(oddsOfShare(1)).toBe(Number.POSITIVE_INFINITY)
    expect(oddsOfShare(0.75)).toBe(3)
  })
})
