import { describe, expect, it } from 'vitest'
import { holm, verdictLevels } from '../../src/multiplicity/holm.ts'

describe('holm', () => {
  it('oracle: R 4.2.2 p.adjust', () => {
    const got = holm([0.01, 0.04, 0.03, 0.005])
    expect(got.map((p) => Number(p.toFixed(12)))).toEqual([0.03, 0.06, 0.06, 0.02])
  })

  it('identity: one p stays, none stay none, equal ones stay equal, none goes above 1', () => {
    expect(holm([0.2])).toEqual([0.2])
    expect(holm([])).toEqual([])
    expect(holm([0.02, 0.02])).toEqual([0.04, 0.04])
    expect(holm([0.9, 0.8, 1])).toEqual([1, 1, 1])
    expect(holm([0, 0.5])).toEqual([0, 0.5])
  })

  it('refuses what is no probability', () => {
    expect(() => holm([0.1, 1.1])).toThrow(/1.1/)
    expect(() => holm([Number.NaN])).toThrow(/NaN/)
  })
})

describe('verdictLevels', () => {
  it('identity: one contrast, and four', () => {
    expect(verdictLevels(1)).toEqual({ deciding: 0.95, leaning: 0.9, early: 0.999 })
    expect(verdictLevels(4)).toEqual({ deciding: 0.9875, leaning: 0.975, early: 0.99975 })
  })

  it('refuses no contrast', () => {
    expect(() => verdictLevels(0)).toThrow(/m is 0/)
  })
})
