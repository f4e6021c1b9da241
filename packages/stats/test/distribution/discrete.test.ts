import { describe, expect, it } from 'vitest'
import { binomialLogPmf, binomialPmf, binomialTails } from '../../src/distribution/binomial.ts'
import { negativeBinomialLogPmf, negativeBinomialPmf, negativeBinomialTails } from '../../src/distribution/negative-binomial.ts'
import { noncentralHypergeometric } from '../../src/distribution/noncentral-hypergeometric.ts'
import { poissonLogPmf, poissonPmf, poissonTails } from '../../src/distribution/poisson.ts'
import { expectNear, expectRelative } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

// What matters of a log probability is its absolute error: it is the relative error of the probability.
const goal = 1e-12
const logTolerance = (oracle: number): number => goal * Math.max(1, Math.abs(oracle) / 100)

describe('log probabilities (oracle: mpmath)', () => {
  it('Poisson', () => {
    for (const row of referenceTable('distributions/poisson')) {
      const oracle = cell(row, 'logProbability')
      expectNear(poissonLogPmf(cell(row, 'count'), cell(row, 'mean')), oracle, logTolerance(oracle))
    }
  })

  it('binomial', () => {
    for (const row of referenceTable('distributions/binomial')) {
      const oracle = cell(row, 'logProbability')
      expectNear(binomialLogPmf(cell(row, 'successes'), cell(row, 'trials'), cell(row, 'chance')), oracle, logTolerance(oracle))
    }
  })

  it('negative binomial', () => {
    for (const row of referenceTable('distributions/negative-binomial')) {
      const oracle = cell(row, 'logProbability')
      expectNear(negativeBinomialLogPmf(cell(row, 'count'), cell(row, 'mean'), cell(row, 'theta')), oracle, logTolerance(oracle))
    }
  })
})

describe('tails (oracle: R pbinom, ppois, pnbinom)', () => {
  const both = (got: { lower: number; upper: number }, row: Readonly<Record<string, number>>): void => {
    for (const side of ['lower', 'upper'] as const) {
      const oracle = cell(row, side)
      if (oracle === 0) expect(got[side]).toBe(0)
      else expectRelative(got[side], oracle, goal, JSON.stringify(row))
    }
  }

  it('binomial', () => {
    for (const row of referenceTable('distributions/r-binomial-tails'))
      both(binomialTails(cell(row, 'k'), cell(row, 'n'), cell(row, 'p')), row)
  })

  it('Poisson', () => {
    for (const row of referenceTable('distributions/r-poisson-tails')) both(poissonTails(cell(row, 'k'), cell(row, 'mean')), row)
  })

  it('negative binomial', () => {
    for (const row of referenceTable('distributions/r-negative-binomial-tails')) {
      both(negativeBinomialTails(cell(row, 'k'), cell(row, 'mean'), cell(row, 'theta')), row)
    }
  })
})

describe('identities', () => {
  it('chances of 0 and 1 are certain', () => {
    expect(binomialPmf(0, 5, 0)).toBe(1)
    expect(binomialPmf(5, 5, 1)).toBe(1)
    expect(binomialLogPmf(2, 5, 0)).toBe(Number.NEGATIVE_INFINITY)
    expect(binomialPmf(0, 0, 0.3)).toBe(1)
    expect(binomialTails(3, 5, 0)).toEqual({ lower: 1, upper: 0 })
    expect(binomialTails(3, 5, 1)).toEqual({ lower: 0, upper: 1 })
  })

  it('probabilities add to their tails', () => {
    const upTo = (probability: (k: number) => number, last: number): number =>
      Array.from({ length: last + 1 }, (_, k) => probability(k)).reduce((sum, p) => sum + p, 0)
    expectRelative(
      upTo((k) => binomialPmf(k, 40, 0.27), 12),
      binomialTails(12, 40, 0.27).lower,
      goal,
    )
    expectRelative(
      upTo((k) => poissonPmf(k, 11.3), 9),
      poissonTails(9, 11.3).lower,
      goal,
    )
    expectRelative(
      upTo((k) => negativeBinomialPmf(k, 6, 0.7), 15),
      negativeBinomialTails(15, 6, 0.7).lower,
      goal,
    )
  })

  it('NB2 with a huge theta is Poisson', () => {
    expectRelative(negativeBinomialPmf(4, 3, 1e12), poissonPmf(4, 3), 1e-10)
  })
})

describe("Fisher's noncentral hypergeometric law", () => {
  it('identity: central at log odds ratio 0', () => {
    const law = noncentralHypergeometric(46, 24, 49)
    const central = law.probabilities(0)
    expect(law.least).toBe(25)
    expect(law.most).toBe(46)
    // C(46, 34) C(24, 15) / C(70, 49), by binomial probabilities at one half.
    const byHand = (binomialPmf(34, 46, 0.5) * binomialPmf(15, 24, 0.5)) / binomialPmf(49, 70, 0.5)
    expectRelative(central[34 - 25] ?? 0, byHand, goal)
  })

  it('identity: adds to 1, and mirrors when the rows change places', () => {
    const one = noncentralHypergeometric(9, 14, 11).probabilities(1.3)
    const other = noncentralHypergeometric(14, 9, 11).probabilities(-1.3)
    expectRelative(
      one.reduce((sum, p) => sum + p, 0),
      1,
      goal,
    )
    one.forEach((p, k) => {
      expectRelative(p, other[other.length - 1 - k] ?? 0, goal)
    })
  })

  it('identity: an endless odds ratio puts all on one end', () => {
    const { probabilities } = noncentralHypergeometric(5, 5, 5)
    expect([...probabilities(800)]).toEqual([0, 0, 0, 0, 0, 1])
  })

  it('refuses a column sum beyond the whole, and NaN', () => {
    expect(() => noncentralHypergeometric(2, 2, 5)).toThrow(/firstColumn is 5/)
    expect(() => noncentralHypergeometric(2, 2, 2).probabilities(Number.NaN)).toThrow(/NaN/)
  })
})
