import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { poissonInterval } from '../../src/count/poisson-interval.ts'
import { rateRatioExact } from '../../src/count/rate-ratio.ts'
import { binomialPmf } from '../../src/distribution/binomial.ts'
import { poissonPmf } from '../../src/distribution/poisson.ts'
import { testByReassignment } from '../../src/permutation/permutation-test.ts'
import { clopperPearsonInterval, wilsonInterval } from '../../src/proportion/binomial-intervals.ts'
import { drawNormal } from '../../src/random/normal.ts'
import { betweenUnits } from '../../src/unit-contrast/between-units.ts'
import { contrastLimits } from '../../src/unit-contrast/contrast-limits.ts'
import { kindOf } from '../near.ts'

// Recovery without simulation where it can be had: coverage summed over every count there is.
const coverage = (last: number, probability: (count: number) => number, covers: (count: number) => boolean): number => {
  let sum = 0
  for (let count = 0; count <= last; count++) if (covers(count)) sum += probability(count)
  return sum
}

describe('coverage of exact intervals', () => {
  it.each([0.05, 0.7, 1.9, 3.689, 3.68, 10, 33.3, 150])('a Poisson mean of %d is covered at least as often as said', (mean) => {
    const holds = (count: number): boolean => {
      const { lower, upper } = poissonInterval(count, 0.9)
      return lower <= mean && mean <= upper
    }
    const found = coverage(Math.ceil(mean + 15 * Math.sqrt(mean) + 15), (count) => poissonPmf(count, mean), holds)
    expect(found).toBeGreaterThanOrEqual(0.9)
    // Exact is not lavish: at a mean of 10 and more it stays below 95.
    if (mean >= 10) expect(found).toBeLessThan(0.95)
  })

  it.each([0.01, 0.13, 0.5, 0.77, 0.99])(
    'a share of %d in 25 is covered by the exact interval, about by the score interval',
    (chance) => {
      const of = (interval: (x: number, n: number, level: number) => { lower: number; upper: number }) =>
        coverage(
          25,
          (x) => binomialPmf(x, 25, chance),
          (x) => interval(x, 25, 0.95).lower <= chance && chance <= interval(x, 25, 0.95).upper,
        )
      expect(of(clopperPearsonInterval)).toBeGreaterThanOrEqual(0.95)
      // The score interval dips below its level for shares near 0 and 1; Newcombe (1998) found no less than about 0.83.
      expect(of(wilsonInterval)).toBeGreaterThan(0.83)
    },
  )

  it('a ratio of rates of 2 with efforts 3 and 5 is covered, given any sum', () => {
    for (const total of [1, 6, 25]) {
      const chance = 6 / 11
      const holds = (count1: number): boolean => {
        const { limits } = kindOf(rateRatioExact({ count1, effort1: 3, count2: total - count1, effort2: 5 }), 'ratio')
        return limits.lower <= 2 && 2 <= limits.upper
      }
      expect(coverage(total, (x) => binomialPmf(x, total, chance), holds)).toBeGreaterThanOrEqual(0.95)
    }
  })
})

describe('coverage of contrasts, normal scatter', () => {
  it('4 against 7 units in two blocks: 95 and 80 % intervals, 2,000 seeded sets', () => {
    const rng = createRng('contrast coverage')
    const level = [0, 0, 1, 1, 1, 1, 0, 0, 1, 1, 1]
    const block = [0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1]
    const sets = 2000
    const hits = { 0.95: 0, 0.8: 0 }
    for (let set = 0; set < sets; set++) {
      const z = level.map((l, f) => drawNormal(rng, 0.7 * l + 3 * (block[f] ?? 0), 0.4))
      const contrast = kindOf(betweenUnits({ z, level, block }), 'fitted').between(1, 0)
      for (const key of [0.95, 0.8] as const) {
        const { lower, upper } = contrastLimits(contrast, key)
        if (lower <= 0.7 && 0.7 <= upper) hits[key] += 1
      }
    }
    for (const key of [0.95, 0.8] as const) {
      // Four Monte Carlo standard errors.
      expect(Math.abs(hits[key] / sets - key)).toBeLessThan(4 * Math.sqrt((key * (1 - key)) / sets))
    }
  })
})

describe('size of the permutation test', () => {
  it('without an effect, p <= a in no more than a of the arrangements, whatever the outcomes', () => {
    const z = [0.3, 5.1, 0.2, 0.9, 14, 0.35, 0.8]
    const level = [1, 1, 0, 0, 0, 0, 0]
    const rng = createRng('size')
    const ps: number[] = []
    for (let i = 0; i < 7; i++) {
      for (let j = i + 1; j < 7; j++) {
        const dealt = level.map((_, f) => Number(f === i || f === j))
        ps.push(kindOf(testByReassignment({ z, level: dealt, rng }), 'tested').p)
      }
    }
    for (const a of [0.05, 0.1, 0.2, 0.5]) expect(ps.filter((p) => p <= a + 1e-12).length / ps.length).toBeLessThanOrEqual(a)
    expect(Math.min(...ps)).toBeCloseTo(1 / 21, 14)
  })
})
