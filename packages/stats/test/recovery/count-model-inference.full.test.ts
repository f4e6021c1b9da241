import { createRng, unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import {
  bootstrapCountModel,
  type CountModel,
  fitCountModel,
  likelihoodRatio,
  percentileInterval,
  profileInterval,
  waldInterval,
} from '../../src/index.ts'
import { madeCounts } from '../count-model/made-counts.ts'

/** Four Monte Carlo standard errors of a share. */
const slack = (share: number, sets: number): number => 4 * Math.sqrt((share * (1 - share)) / sets)

describe('the likelihood ratio of a variance that is zero', () => {
  it('recovery: the mixture p is below 0.05 in one of twenty, below 0.2 in one of five, and 1 in about half', () => {
    const sets = 1000
    const p: number[] = []
    for (let set = 0; set < sets; set++) {
      const made = madeCounts({
        seed: `zero ${set}`,
        groups: 40,
        visits: 5,
        mean: 5,
        fieldSd: 0,
        theta: Number.POSITIVE_INFINITY,
      })
      const whole = fitCountModel({ family: 'poisson', ...made })
      const flat = fitCountModel({ family: 'poisson', ...made, groupings: [] })
      if (whole.kind === 'fitted' && flat.kind === 'fitted') p.push(likelihoodRatio(whole, flat, 'one-variance').p)
    }
    expect(p.length).toBeGreaterThan(0.99 * sets)
    const below = (limit: number): number => p.filter((own) => own <= limit).length / p.length
    // The half and half is that of many fields; with 40 a little less than half are above zero.
    for (const limit of [0.05, 0.1, 0.2, 0.4]) {
      expect(below(limit)).toBeLessThan(limit + slack(limit, sets))
      expect(below(limit)).toBeGreaterThan(0.8 * limit - slack(limit, sets))
    }
    const none = p.filter((own) => own > 0.49).length / p.length
    expect(none).toBeGreaterThan(0.45)
    expect(none).toBeLessThan(0.68)
  })
})

describe('intervals of a slope within fields, 15 fields of 6 visits', () => {
  it('recovery: Wald, profile and bootstrap percentile intervals hold the true slope in about 95 of 100', async () => {
    const sets = 250
    let asked = 0
    const covered = { wald: 0, profile: 0, bootstrap: 0 }
    const weights = [0, 0, 1]
    const rng = createRng('coverage')
    for (let set = 0; set < sets; set++) {
      const model: CountModel = { family: 'nb2', ...madeCounts({ seed: `slope ${set}`, groups: 15, visits: 6, theta: 3 }) }
      const fit = fitCountModel(model)
      if (fit.kind !== 'fitted') continue
      asked++
      // Dates say nothing in made counts: the true slope is 0.
      const holds = (interval: { readonly lower: number; readonly upper: number } | null): number =>
        Number(interval !== null && interval.lower <= 0 && interval.upper >= 0)
      covered.wald += holds(waldInterval(fit, weights, Number.POSITIVE_INFINITY))
      covered.profile += holds(profileInterval(model, fit, { kind: 'coefficients', weights }))
      const { sums } = await bootstrapCountModel(model, fit, [weights], 99, rng.fork(`${set}`), unwatched)
      covered.bootstrap += holds(percentileInterval(sums[0] ?? new Float64Array(0)))
    }
    expect(asked).toBeGreaterThan(0.98 * sets)
    // Large-sample intervals of 90 counts: two points short are granted beside the Monte Carlo error.
    for (const hits of Object.values(covered)) {
      expect(hits / asked).toBeGreaterThan(0.93 - slack(0.95, sets))
      expect(hits / asked).toBeLessThan(0.95 + slack(0.95, sets))
    }
  }, 300_000)
})
