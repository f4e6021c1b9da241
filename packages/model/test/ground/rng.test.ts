import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createRng, rngAlgorithm, xoshiro128pp } from '../../src/ground/index.ts'

describe('xoshiro128++', () => {
  it('published: state 1, 2, 3, 4 gives the numbers of the reference C code', () => {
    const next = xoshiro128pp([1, 2, 3, 4])
    expect(Array.from({ length: 10 }, next)).toEqual([
      641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295, 495546011, 621204420,
    ])
  })

  it('a state of one bit does not stay near zero', () => {
    const next = xoshiro128pp([1, 0, 0, 0])
    const late = Array.from({ length: 200 }, next).slice(100)
    expect(new Set(late).size).toBe(100)
    expect(Math.max(...late)).toBeGreaterThan(2 ** 31)
  })
})

describe('createRng', () => {
  // Golden: a change of a single draw changes answers that were given before, and needs a new name of the algorithm.
  it('golden: a seed gives the same draws for ever', () => {
    expect(rngAlgorithm).toBe('xoshiro128++/sha256-fork/1')
    const bits = createRng('ostrel vale')
    expect(Array.from({ length: 5 }, () => bits.uint32())).toEqual([2977994706, 341765781, 2955204552, 3524037187, 3639475828])
    const uniform = createRng('ostrel vale')
    expect(Array.from({ length: 3 }, () => uniform.uniform())).toEqual([
      0.693368421190583, 0.6880621883348205, 0.8473814908704694,
    ])
    const die = createRng('ostrel vale')
    expect(Array.from({ length: 12 }, () => die.below(6))).toEqual([0, 3, 0, 1, 4, 1, 5, 2, 1, 2, 4, 2])
    expect(createRng('').uint32()).toBe(30732054)
    expect(createRng('é').uint32()).toBe(3031589487)
  })

  it('golden: a fork is the generator of seed and label', () => {
    const fork = createRng('ostrel vale').fork('run/17')
    expect(fork.seed).toBe('ostrel vale/run/17')
    expect(Array.from({ length: 3 }, () => fork.uint32())).toEqual([2642805656, 3411256941, 231915501])
  })

  it('a fork is the same whatever was drawn before, and leaves its parent as it was', () => {
    const parent = createRng('seed')
    const before = parent.fork('a').uint32()
    const first = parent.uint32()
    expect(parent.fork('a').uint32()).toBe(before)
    const untouched = createRng('seed')
    expect(untouched.uint32()).toBe(first)
    expect(untouched.uint32()).toBe(parent.uint32())
    expect(parent.fork('b').uint32()).not.toBe(before)
  })

  it('identity: uniform is never 0 or 1, whatever the bits', () => {
    // The formula at its ends: all bits 0, and all bits 1.
    const at = (high: number, low: number): number => (high * 67108864 + low + 0.5) / 4503599627370496
    expect(at(0, 0)).toBeGreaterThan(0)
    expect(at(67108863, 67108863)).toBeLessThan(1)
    const rng = createRng('open interval')
    for (let draw = 0; draw < 50_000; draw++) {
      const value = rng.uniform()
      expect(value > 0 && value < 1).toBe(true)
    }
  })

  it('recovery: uniform has the mean and the spread of a uniform', () => {
    const rng = createRng('moments')
    const draws = 100_000
    let sum = 0
    let squares = 0
    for (let draw = 0; draw < draws; draw++) {
      const value = rng.uniform()
      sum += value
      squares += value * value
    }
    // Four standard errors of the mean (sd 1/sqrt 12) and of the mean square (variance 4/45).
    expect(Math.abs(sum / draws - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 12 / draws))
    expect(Math.abs(squares / draws - 1 / 3)).toBeLessThan(4 * Math.sqrt(4 / 45 / draws))
  })

  it.each([2, 3, 6, 7, 100])('recovery: below(%i) favours none', (n) => {
    const rng = createRng(`below ${n}`)
    const draws = 60_000
    const seen = new Array<number>(n).fill(0)
    for (let draw = 0; draw < draws; draw++) {
      const value = rng.below(n)
      seen[value] = (seen[value] ?? 0) + 1
    }
    const chi2 = seen.reduce((sum, count) => sum + (count - draws / n) ** 2 / (draws / n), 0)
    // Mean n - 1, variance 2 (n - 1); six standard deviations, since chi-squared of few cells has a long tail.
    expect(chi2).toBeLessThan(n - 1 + 6 * Math.sqrt(2 * (n - 1)))
  })

  it('below drops the draws that would favour small numbers', () => {
    // Of 2^32 values 2^31 + 1 leave 2^31 - 1 over, so nearly every second draw has to be dropped.
    const rng = createRng('reject')
    const raw = createRng('reject')
    const n = 2 ** 31 + 1
    for (let draw = 0; draw < 200; draw++) {
      let expected = raw.uint32()
      while (expected >= n) expected = raw.uint32()
      expect(rng.below(n)).toBe(expected)
    }
  })

  it('identity: below lies in its range for any n', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 32 - 1 }), fc.string(), (n, seed) => {
        const value = createRng(seed).below(n)
        return Number.isInteger(value) && value >= 0 && value < n
      }),
      { seed: 1, numRuns: 300 },
    )
  })
})
