import { describe, expect, it } from 'vitest'
import { fieldShares, relativeCount } from '../../src/index.ts'
import { expectNear } from '../near.ts'

describe('shares, methods 2.9', () => {
  const part = [30, 12, 25, 8, 40, 18]
  const whole = [50, 30, 36, 20, 55, 39]
  const rest = whole.map((value, k) => value - (part[k] as number))

  it('oracle: logit-t over six fields (R)', () => {
    const [share, other] = fieldShares([
      { kind: 'honey bee', parts: part, wholes: whole },
      { kind: 'others', parts: rest, wholes: whole },
    ])
    expect(share?.fields).toBe(6)
    expectNear(share?.share ?? 0, 0.578261)
    expectNear(share?.limits.lower ?? 0, 0.426817)
    // R: 0.7162885 (the handbook's sixth decimal is rounded up).
    expectNear(share?.limits.upper ?? 0, 0.716288498392723)
    // Identity: the rest is the mirror image.
    expectNear(other?.limits.lower ?? 0, 1 - (share?.limits.upper ?? 0), 1e-12)
  })

  it('published: in one field Goodman (1965) simultaneous limits, visits taken as independent', () => {
    const shares = fieldShares([56, 25, 14, 5].map((number, k) => ({ kind: `kind ${k}`, parts: [number], wholes: [100] })))
    const printed = [
      [0.436138, 0.676816],
      [0.158728, 0.370633],
      [0.074439, 0.247841],
      [0.017369, 0.13548],
    ]
    shares.forEach((share, k) => {
      expect(share.fields).toBeNull()
      expectNear(share.limits.lower, printed[k]?.[0] as number)
      expectNear(share.limits.upper, printed[k]?.[1] as number)
    })
  })

  it('a share of all or of none falls back too, and keeps its end', () => {
    const [all, none] = fieldShares([
      { kind: 'all', parts: [9, 8, 7], wholes: [9, 8, 7] },
      { kind: 'none', parts: [0, 0, 0], wholes: [9, 8, 7] },
    ])
    expect([all?.share, all?.fields, none?.share, none?.fields]).toEqual([1, null, 0, null])
    expect(all?.limits.lower).toBeLessThan(1)
    expect(none?.limits.upper).toBeGreaterThan(0)
  })

  it('nothing counted, nothing shared', () => {
    expect(fieldShares([{ kind: 'bee', parts: [0, 0], wholes: [0, 0] }])).toEqual([])
  })
})

describe('relative counts, methods 2.9a', () => {
  const a = [40, 25, 31, 66, 90, 58]
  const b = [22, 30, 18, 15, 27, 20]

  it('oracle: six fields as one level (R)', () => {
    const found = relativeCount(a, b)
    const limits = found?.limits(0.95)
    expectNear(found?.odds ?? 0, 2.348485)
    expectNear(limits?.lower ?? 0, 1.312296)
    expectNear(limits?.upper ?? 0, 4.202849)
    expect(found?.fields).toBe(6)
  })

  it('oracle: one field has exact binomial limits (R binom.test)', () => {
    const found = relativeCount([34], [12])
    const limits = found?.limits(0.95)
    expectNear(found?.odds ?? 0, 2.833333)
    expectNear(limits?.lower ?? 0, 1.431204)
    expectNear(limits?.upper ?? 0, 6.009254)
    expect(found?.fields).toBeNull()
  })

  it('none of the other kind: endless odds, one finite limit', () => {
    const found = relativeCount([5, 6, 7], [0, 0, 0])
    expect(found?.odds).toBe(Number.POSITIVE_INFINITY)
    expect(found?.limits(0.95).lower).toBeGreaterThan(1)
    expect(found?.limits(0.95).upper).toBe(Number.POSITIVE_INFINITY)
  })

  it('neither counted: no odds', () => {
    expect(relativeCount([0, 0], [0, 0])).toBeNull()
  })
})
