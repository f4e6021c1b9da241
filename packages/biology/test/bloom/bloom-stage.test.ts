import { describe, expect, it } from 'vitest'
import { areStagesFarApart, isFlowering, markBloomStage } from '../../src/bloom/bloom-stage.ts'

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

  it.each([-1, 100, 64.5, Number.NaN])('refuses %d', (code) => {
    expect(() => markBloomStage(code)).toThrow(/code is .*from 0 to 99/)
  })
})

describe('isFlowering', () => {
  it('is true for principal stage 6 alone', () => {
    expect([59, 60, 65, 69, 70].map(isFlowering)).toEqual([false, true, true, true, false])
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
