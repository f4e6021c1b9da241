import { type Verdict, verdicts } from '@thrum/model'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { combineVerdicts, type LimitsAt, readVerdict } from '../../src/index.ts'

// The rule of the product charter, "Verdicts of a contrast": alike, shown, leaning, unsettled, in this order.

/** A normal-like interval on the log scale: centre and half-width at 95 %, wider and narrower at other levels. */
const limitsOf =
  (centre: number, half95: number): LimitsAt =>
  (level) => {
    const multiplier: { readonly [level: string]: number } = { '0.9': 1.645, '0.95': 1.96, '0.999': 3.291 }
    const z = multiplier[level.toString()] ?? (level > 0.97 ? 2.394 : 2.128) // 0.98333 and 0.96667: three asked together
    const half = (half95 * z) / 1.96
    return { lower: Math.exp(centre - half), upper: Math.exp(centre + half) }
  }
const read = (centre: number, half: number, more: { worth?: number; contrasts?: number; early?: boolean } = {}) =>
  readVerdict({ limits: limitsOf(centre, half), worth: 2, contrasts: 1, early: false, ...more })

describe('the verdict rule', () => {
  it.each([
    ['wholly inside the band, 1 inside', 0, 0.3, 'alike', 'no-difference-seen'],
    ['wholly inside the band, 1 outside: too small to act on', 0.3, 0.2, 'alike', 'difference-too-small'],
    ['excludes 1, nearer limit beyond S', Math.log(4), 0.5, 'shown', 'worth-acting-on'],
    ['excludes 1, nearer limit inside S', Math.log(2), 0.5, 'shown', 'may-be-too-small'],
    ['the same for fewer', Math.log(0.25), 0.5, 'shown', 'worth-acting-on'],
    ['only the 90 % interval excludes 1', 0.9, 1, 'leaning', null],
    ['neither', 0.1, 1, 'unsettled', null],
  ] as const)('%s', (_, centre, half, verdict, size) => {
    expect(read(centre, half)).toMatchObject({ verdict, size })
  })

  it('limits exactly at S and 1/S are inside; a limit exactly at 1 does not exclude it', () => {
    const at = (lower: number, upper: number) =>
      readVerdict({ limits: () => ({ lower, upper }), worth: 2, contrasts: 1, early: false })
    expect(at(0.5, 2).verdict).toBe('alike')
    expect(at(0.5, 2.0000001).verdict).toBe('unsettled')
    expect(at(1, 3).verdict).toBe('unsettled')
    expect(at(1.0000001, 3).verdict).toBe('shown')
    expect(at(2, 3)).toMatchObject({ verdict: 'shown', size: 'may-be-too-small' })
  })

  it('an infinite limit is unsettled, or shown where the other one excludes 1', () => {
    const at = (lower: number, upper: number) =>
      readVerdict({ limits: () => ({ lower, upper }), worth: 2, contrasts: 1, early: false })
    expect(at(0.4, Number.POSITIVE_INFINITY).verdict).toBe('unsettled')
    expect(at(3, Number.POSITIVE_INFINITY)).toMatchObject({ verdict: 'shown', size: 'worth-acting-on' })
    expect(at(0, 0.9).verdict).toBe('shown')
  })

  it('asked together the levels are 1 - 0.05/m and 1 - 0.10/m', () => {
    expect(read(1.05, 1).verdict).toBe('shown')
    expect(read(1.05, 1, { contrasts: 3 })).toMatchObject({ verdict: 'unsettled', level: 1 - 0.05 / 3 })
    expect(read(1.15, 1, { contrasts: 3 })).toMatchObject({ verdict: 'leaning', level: 1 - 0.1 / 3 })
  })

  it('before the last planned visit 99.9 % decides, and what excludes 1 at 95 % only leans', () => {
    expect(read(1.2, 1, { early: true })).toMatchObject({ verdict: 'leaning', level: 0.95 })
    expect(read(1.8, 1, { early: true })).toMatchObject({ verdict: 'shown', level: 0.999 })
    expect(read(0, 0.5, { early: true }).verdict).toBe('unsettled')
    expect(read(0, 0.3, { early: true }).verdict).toBe('alike')
  })

  it('identity: every interval has exactly one verdict, and mirrored input the mirrored one', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 0.01, max: 3, noNaN: true }), (centre, half) => {
        const found = read(centre, half)
        expect(verdicts).toContain(found.verdict)
        expect(read(-centre, half)).toMatchObject({ verdict: found.verdict, size: found.size })
      }),
    )
  })
})

describe('several contrasts of one question', () => {
  it.each<[Verdict[], Verdict]>([
    [['shown', 'unsettled'], 'shown'],
    [['alike', 'alike'], 'alike'],
    [['alike', 'unsettled'], 'unsettled'],
    [['alike', 'leaning'], 'leaning'],
    [['design-blocks', 'alike'], 'unsettled'],
    [['design-blocks', 'design-blocks'], 'design-blocks'],
    [['design-blocks', 'shown'], 'shown'],
    [[], 'design-blocks'],
  ])('%j is %s', (each, verdict) => {
    expect(combineVerdicts(each)).toBe(verdict)
  })
})
