import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { binomialPmf } from '../../src/distribution/binomial.ts'
import { chiSquareTails } from '../../src/distribution/chi-square.ts'
import { gammaQuantile } from '../../src/distribution/gamma.ts'
import { negativeBinomialPmf } from '../../src/distribution/negative-binomial.ts'
import { normalQuantile } from '../../src/distribution/normal.ts'
import { poissonPmf } from '../../src/distribution/poisson.ts'
import { drawBinomial } from '../../src/random/binomial.ts'
import { drawGamma } from '../../src/random/gamma.ts'
import { drawNegativeBinomial } from '../../src/random/negative-binomial.ts'
import { drawNormal } from '../../src/random/normal.ts'
import { drawPoisson } from '../../src/random/poisson.ts'
import { shuffled } from '../../src/random/shuffle.ts'

// Recovery: chi-square of seeded draws against exact cell probabilities. 39 seeded tests: at 1e-4 each, a right sampler
// fails one of them about once in 250 changes of seed, and a wrong constant fails at once with 40,000 draws.
const least = 1e-4
const draws = 40_000

/** p value of counts against expectations, cells of fewer than five pooled into their neighbours. */
function goodness(observed: readonly number[], expected: readonly number[]): number {
  let chiSquare = 0
  let cells = 0
  let seen = 0
  let mean = 0
  expected.forEach((part, k) => {
    seen += observed[k] ?? 0
    mean += part
    const rest = expected.slice(k + 1).reduce((sum, e) => sum + e, 0)
    if (mean < 5 || (rest < 5 && k < expected.length - 1)) return
    chiSquare += (seen - mean) ** 2 / mean
    cells += 1
    seen = 0
    mean = 0
  })
  return chiSquareTails(chiSquare, cells - 1).upper
}

/** Goodness of a count sampler: cells 0, 1, ... up to where the law has ended, the last holding all beyond. */
function goodnessOfCounts(draw: () => number, probability: (count: number) => number, last: number): number {
  const observed = new Array<number>(last + 2).fill(0)
  for (let k = 0; k < draws; k++) {
    const place = Math.min(draw(), last + 1)
    observed[place] = (observed[place] ?? 0) + 1
  }
  const expected = Array.from({ length: last + 1 }, (_, count) => draws * probability(count))
  expected.push(Math.max(0, draws - expected.reduce((sum, e) => sum + e, 0)))
  return goodness(observed, expected)
}

/** Goodness of a continuous sampler on 50 cells of equal probability. */
function goodnessOfCells(draw: () => number, quantile: (p: number) => number): number {
  const cells = 50
  const edges = Array.from({ length: cells - 1 }, (_, k) => quantile((k + 1) / cells))
  const observed = new Array<number>(cells).fill(0)
  for (let k = 0; k < draws; k++) {
    const value = draw()
    let place = 0
    while (place < edges.length && value > (edges[place] ?? 0)) place += 1
    observed[place] = (observed[place] ?? 0) + 1
  }
  return goodness(observed, new Array<number>(cells).fill(draws / cells))
}

describe('samplers against exact probabilities', () => {
  it('normal', () => {
    const rng = createRng('normal')
    expect(goodnessOfCells(() => (drawNormal(rng, 3, 2) - 3) / 2, normalQuantile)).toBeGreaterThan(least)
  })

  // Both sides of the switch at shape 1.
  it.each([0.05, 0.3, 0.99, 1, 1.01, 5, 200])('gamma, shape %d', (shape) => {
    const rng = createRng(`gamma ${shape}`)
    expect(
      goodnessOfCells(
        () => drawGamma(rng, shape, 7) / 7,
        (p) => gammaQuantile(p, shape),
      ),
    ).toBeGreaterThan(least)
  })

  // Both sides of the switch at 10.
  it.each([0.01, 0.5, 3, 9.99, 10, 10.5, 14, 30, 120, 1000])('Poisson, mean %d', (mean) => {
    const rng = createRng(`poisson ${mean}`)
    const last = Math.ceil(mean + 12 * Math.sqrt(mean) + 10)
    expect(
      goodnessOfCounts(
        () => drawPoisson(rng, mean),
        (count) => poissonPmf(count, mean),
        last,
      ),
    ).toBeGreaterThan(least)
  })

  // Both sides of the switch at trials * chance = 10, and of the mirror at 1/2.
  it.each([
    [1, 0.3],
    [12, 0.5],
    [20, 0.499],
    [20, 0.5],
    [20, 0.51],
    [21, 0.5],
    [100, 0.099],
    [100, 0.1],
    [100, 0.101],
    [1000, 0.25],
    [1000, 0.97],
    [5000, 0.5],
    [100000, 0.00009],
    [100000, 0.0002],
  ])('binomial, %i trials, chance %d', (trials, chance) => {
    const rng = createRng(`binomial ${trials} ${chance}`)
    const found = goodnessOfCounts(
      () => drawBinomial(rng, trials, chance),
      (count) => binomialPmf(count, trials, chance),
      Math.min(trials, Math.ceil(trials * chance + 12 * Math.sqrt(trials * chance) + 10)),
    )
    expect(found).toBeGreaterThan(least)
  })

  it.each([
    [0.2, 0.3],
    [4, 0.5],
    [4, 1],
    [9, 40],
    [12, 2],
    [60, 5],
  ])('negative binomial, mean %d, theta %d', (mean, theta) => {
    const rng = createRng(`nb ${mean} ${theta}`)
    const last = Math.ceil(mean + 15 * Math.sqrt(mean + (mean * mean) / theta) + 20)
    expect(
      goodnessOfCounts(
        () => drawNegativeBinomial(rng, mean, theta),
        (count) => negativeBinomialPmf(count, mean, theta),
        last,
      ),
    ).toBeGreaterThan(least)
  })

  it('shuffle: all 24 orders of four', () => {
    const rng = createRng('shuffle')
    const counts = new Map<string, number>()
    for (let k = 0; k < draws; k++) {
      const order = shuffled(rng, ['a', 'b', 'c', 'd']).join('')
      counts.set(order, (counts.get(order) ?? 0) + 1)
    }
    expect(counts.size).toBe(24)
    expect(goodness([...counts.values()], new Array<number>(24).fill(draws / 24))).toBeGreaterThan(least)
  })
})

describe('ends and refusals', () => {
  it('identity: laws without scatter are their mean', () => {
    const rng = createRng('ends')
    expect(drawNormal(rng, 4, 0)).toBe(4)
    expect(drawPoisson(rng, 0)).toBe(0)
    expect(drawNegativeBinomial(rng, 0, 2)).toBe(0)
    expect(drawBinomial(rng, 9, 0)).toBe(0)
    expect(drawBinomial(rng, 9, 1)).toBe(9)
    expect(drawBinomial(rng, 0, 0.5)).toBe(0)
  })

  it('identity: the same seed gives the same draws, and a list is left as it was', () => {
    const list = [1, 2, 3, 4, 5]
    expect(shuffled(createRng('again'), list)).toEqual(shuffled(createRng('again'), list))
    expect(list).toEqual([1, 2, 3, 4, 5])
    expect(shuffled(createRng('none'), [])).toEqual([])
  })

  it('refuses what no law has', () => {
    const rng = createRng('refuse')
    expect(() => drawNormal(rng, 0, -1)).toThrow(/sd is -1/)
    expect(() => drawGamma(rng, 0)).toThrow(/shape is 0/)
    expect(() => drawPoisson(rng, Number.NaN)).toThrow(/mean is NaN/)
    expect(() => drawPoisson(rng, Number.POSITIVE_INFINITY)).toThrow(/mean is Infinity/)
    expect(() => drawBinomial(rng, 2.5, 0.5)).toThrow(/trials is 2.5/)
    expect(() => drawBinomial(rng, 2, 1.5)).toThrow(/chance is 1.5/)
    expect(() => drawNegativeBinomial(rng, 2, 0)).toThrow(/theta is 0/)
  })
})
