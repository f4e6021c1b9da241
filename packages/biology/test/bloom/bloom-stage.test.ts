import { describe, expect, it } from 'vitest'
import { areStagesFarApart, isOnScale, markBloomStage } from '../../src/bloom/bloom-stage.ts'

describe('markBloomStage', () => {
  it.each([
    [0, 'outside'],
    [59, 'outside'],
    [60, 'marginal'],
    [61, 'in'],
    [65, 'in'],
    [67, 'in'],
    [68, 'marginal'],
    [69, 'marginal'],
    [70, 'outside'],
    [99, 'outside'],
  ] as const)('code %i: %s', (code, mark) => {
    expect(markBloomStage(code)).toBe(mark)
  })

  it('marks a mean of codes as a code', () => {
    expect([60.5, 64.5, 67.2, 69.5].map(markBloomStage)).toEqual(['marginal', 'in', 'marginal', 'outside'])
  })

  it.each([-1, 100, Number.NaN])('refuses %d, which is not on the scale', (code) => {
    expect(isOnScale(code)).toBe(false)
    expect(() => markBloomStage(code)).toThrow(/code is .*expected 0 to 99/)
  })
})

describe('areStagesFarApart', () => {
  it.each([
    [61, 65, false],
    [61, 65.5, true],
    [66, 61, true],
    [63, 63, false],
  ] as const)('%d and %d: %s', (one, other, far) => {
    expect(areStagesFarApart(one, other)).toBe(far)
    expect(areStagesFarApart(other, one)).toBe(far)
  })
})
