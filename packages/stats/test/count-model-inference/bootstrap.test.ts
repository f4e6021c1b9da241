import { createRng, InputError, type LongWork, unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import {
  basicInterval,
  bootstrapCountModel,
  bootstrapLikelihoodRatio,
  type CountModel,
  likelihoodRatio,
  matrixOfColumns,
  percentileInterval,
  waldInterval,
} from '../../src/index.ts'
import { madeCounts } from '../count-model/made-counts.ts'
import { expectNear } from '../near.ts'
import { cbpp, fitted } from './published-models.ts'

const ofCbpp = fitted(cbpp)
const second = [0, 1, 0, 0]

/** Work that is called off after so many breaths, and what it was told. */
function calledOffAfter(breaths: number): { readonly work: LongWork; readonly told: number[] } {
  const signal = { aborted: false }
  const told: number[] = []
  let taken = 0
  return {
    told,
    work: {
      signal,
      onProgress: ({ done }) => void told.push(done),
      breathe: () => {
        taken++
        if (taken === breaths) signal.aborted = true
        return Promise.resolve()
      },
    },
  }
}

describe('the parametric bootstrap', () => {
  it('identity: the same seed gives the same numbers, and fewer replicates are the first of more', async () => {
    const one = await bootstrapCountModel(cbpp, ofCbpp, [second], 60, createRng('a'), unwatched)
    const other = await bootstrapCountModel(cbpp, ofCbpp, [second], 60, createRng('a'), unwatched)
    const fewer = await bootstrapCountModel(cbpp, ofCbpp, [second], 30, createRng('a'), unwatched)
    const another = await bootstrapCountModel(cbpp, ofCbpp, [second], 60, createRng('b'), unwatched)
    expect(other).toEqual(one)
    expect(one).toMatchObject({ kind: 'finished', asked: 60, done: 60 })
    expect(fewer.sums[0]).toEqual(one.sums[0]?.subarray(0, fewer.sums[0]?.length))
    expect(another.sums[0]).not.toEqual(one.sums[0])
  })

  it('identity: a sum of weights is the sum of what its parts are', async () => {
    const { sums } = await bootstrapCountModel(
      cbpp,
      ofCbpp,
      [second, [0, 0, 1, 0], [0, 2, -1, 0]],
      40,
      createRng('sums'),
      unwatched,
    )
    const [one = [], two = [], both = []] = sums
    expect(both.length).toBeGreaterThan(35)
    both.forEach((value, r) => {
      expectNear(value, 2 * (one[r] as number) - (two[r] as number), 1e-12)
    })
  })

  it('identity: called off, it tells what was done', async () => {
    const { work, told } = calledOffAfter(2)
    const found = await bootstrapCountModel(cbpp, ofCbpp, [second], 200, createRng('off'), work)
    expect(found).toMatchObject({ kind: 'stopped', asked: 200, done: 50 })
    expect(told).toEqual([25, 50])
    const failed = Object.values(found.failed).reduce((sum, count) => sum + count, 0)
    expect((found.sums[0]?.length ?? 0) + failed).toBe(50)
    const never = await bootstrapCountModel(cbpp, ofCbpp, [second], 9, createRng('off'), {
      ...unwatched,
      signal: { aborted: true },
    })
    expect(never).toMatchObject({ kind: 'stopped', done: 0 })
  })

  it('identity: on a large sample the percentile interval is about the Wald interval', async () => {
    const model: CountModel = {
      family: 'poisson',
      ...madeCounts({ seed: 'large', groups: 30, visits: 10, mean: 8, theta: Infinity }),
    }
    const fit = fitted(model)
    // Date within fields.
    const weights = [0, 0, 1]
    const wald = waldInterval(fit, weights, Number.POSITIVE_INFINITY)
    const found = await bootstrapCountModel(model, fit, [weights], 800, createRng('large'), unwatched)
    const values = found.sums[0] ?? new Float64Array(0)
    expect(values.length).toBe(800)
    // A quantile at 2.5 % of 800 is known to some 0.09 standard errors.
    for (const interval of [percentileInterval(values), basicInterval(values, wald.estimate)]) {
      expectNear(interval?.lower ?? Number.NaN, wald.lower, 0.35 * wald.standardError)
      expectNear(interval?.upper ?? Number.NaN, wald.upper, 0.35 * wald.standardError)
    }
  })

  it('identity: refits that fail are told by name, and none is lost', async () => {
    // A level with two insects: many a draw has none there.
    const counts = [5, 7, 4, 6, 1, 0, 1, 0]
    const model: CountModel = {
      family: 'poisson',
      counts,
      design: matrixOfColumns(8, [counts.map(() => 1), counts.map((_, i) => Number(i > 3))]),
    }
    const found = await bootstrapCountModel(model, fitted(model), [[0, 1]], 300, createRng('few'), unwatched)
    // exp(-2) of them, 0.135, give or take four standard errors.
    expect(Math.abs(found.failed.separated / 300 - Math.exp(-2))).toBeLessThan(4 * Math.sqrt((0.135 * 0.865) / 300))
    expect((found.sums[0]?.length ?? 0) + found.failed.separated).toBe(300)
  })

  it('refuses weights of another number', async () => {
    await expect(bootstrapCountModel(cbpp, ofCbpp, [[1]], 5, createRng('x'), unwatched)).rejects.toThrow(InputError)
  })
})

describe('intervals of bootstrap values', () => {
  it('identity: of 1 to 999 the percentile interval is 25 to 975', () => {
    const values = Float64Array.from({ length: 999 }, (_, i) => ((i * 500) % 999) + 1)
    expect(new Set(values).size).toBe(999)
    const found = percentileInterval(values)
    expectNear(found?.lower ?? 0, 25, 1e-9)
    expectNear(found?.upper ?? 0, 975, 1e-9)
    expectNear(percentileInterval(values, 0.9)?.lower ?? 0, 50, 1e-9)
  })

  it('identity: the basic interval is the other turned over at the estimate', () => {
    const values = Float64Array.from({ length: 200 }, (_, i) => i ** 2)
    const own = percentileInterval(values)
    const basic = basicInterval(values, 12_000)
    expectNear((basic?.lower ?? 0) + (own?.upper ?? 0), 24_000, 1e-9)
    expectNear((basic?.upper ?? 0) + (own?.lower ?? 0), 24_000, 1e-9)
  })

  it('fewer than 40 values have no tails', () => {
    expect(percentileInterval(new Float64Array(39))).toBeNull()
    expect(basicInterval(new Float64Array(39), 0)).toBeNull()
    expect(percentileInterval(new Float64Array(40).fill(3))).toEqual({ lower: 3, upper: 3 })
  })
})

describe('the likelihood ratio by bootstrap', () => {
  const many = madeCounts({ seed: 'ratio 1', groups: 40, visits: 4, mean: 5, theta: Number.POSITIVE_INFINITY, ratio: 1.25 })
  const { rows, values } = many.design
  const column = (j: number): number[] => Array.from({ length: rows }, (_, i) => values[i * 3 + j] as number)
  const whole: CountModel = { family: 'poisson', ...many }
  const part: CountModel = { ...whole, design: matrixOfColumns(rows, [column(0), column(2)]) }
  const larger = { model: whole, fit: fitted(whole) }
  const smaller = { model: part, fit: fitted(part) }

  it('identity: with 40 fields its p is about that of the chi-square', async () => {
    const plain = likelihoodRatio(larger.fit, smaller.fit, 'inner')
    const found = await bootstrapLikelihoodRatio(larger, smaller, 399, createRng('many'), unwatched)
    expect(found).toMatchObject({ kind: 'finished', done: 399, failed: 0 })
    expectNear(found.statistic, plain.statistic, 1e-9)
    // Four Monte Carlo standard errors, and a fifth of p for what fields cost.
    expectNear(found.p, plain.p, 4 * Math.sqrt((plain.p * (1 - plain.p)) / 399) + 0.2 * plain.p + 1 / 400)
    expect(await bootstrapLikelihoodRatio(larger, smaller, 399, createRng('many'), unwatched)).toEqual(found)
  })

  it('identity: a statistic of nothing has p 1', async () => {
    const alike = madeCounts({ seed: 'alike 3', fieldSd: 0, theta: Number.POSITIVE_INFINITY, groups: 10 })
    const model: CountModel = { family: 'poisson', ...alike }
    const flat: CountModel = { ...model, groupings: [] }
    const found = await bootstrapLikelihoodRatio(
      { model, fit: fitted(model) },
      { model: flat, fit: fitted(flat) },
      60,
      createRng('none'),
      unwatched,
    )
    expect(found.statistic).toBeLessThan(1e-3)
    expect(found.p).toBeGreaterThan(0.95)
  })

  it('identity: a failed refit counts as above, and is told', async () => {
    const counts = [5, 7, 4, 6, 1, 0, 1, 0]
    const levels = counts.map((_, i) => Number(i > 3))
    const own: CountModel = { family: 'poisson', counts, design: matrixOfColumns(8, [counts.map(() => 1), levels]) }
    const less: CountModel = {
      ...own,
      design: matrixOfColumns(8, [counts.map(() => 1)]),
      // The offset says what the level would have said: counts are drawn with as few insects there.
      offset: levels.map((level) => level * -2.4),
    }
    const found = await bootstrapLikelihoodRatio(
      {
        model: { ...own, offset: levels.map((level) => level * -2.4) },
        fit: fitted({ ...own, offset: levels.map((level) => level * -2.4) }),
      },
      { model: less, fit: fitted(less) },
      200,
      createRng('failed'),
      unwatched,
    )
    expect(found.failed).toBeGreaterThan(5)
    expect(found.p).toBeGreaterThanOrEqual((1 + found.failed) / 201)
  })

  it('identity: called off, its p is of what was done', async () => {
    const { work } = calledOffAfter(1)
    const found = await bootstrapLikelihoodRatio(larger, smaller, 399, createRng('many'), work)
    expect(found).toMatchObject({ kind: 'stopped', done: 25 })
    expect(Math.round(found.p * 26)).toBeCloseTo(found.p * 26, 9)
    expect(found.p).toBeGreaterThan(0)
  })
})
