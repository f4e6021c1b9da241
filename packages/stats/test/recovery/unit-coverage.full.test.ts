import { createRng, type Rng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { ratioOfSums } from '../../src/count/ratio-of-sums.ts'
import { inverseLogit } from '../../src/distribution/beta.ts'
import { shareOfSums } from '../../src/proportion/share-of-sums.ts'
import { drawBinomial } from '../../src/random/binomial.ts'
import { drawNegativeBinomial } from '../../src/random/negative-binomial.ts'
import { drawNormal } from '../../src/random/normal.ts'
import { drawPoisson } from '../../src/random/poisson.ts'
import { betweenUnits } from '../../src/unit-contrast/between-units.ts'
import { contrastLimits } from '../../src/unit-contrast/contrast-limits.ts'
import { logRate } from '../../src/unit-contrast/log-rate.ts'

// Recovery: 4,000 seeded sets a cell. The handbook's own simulations (in R) give the bands; four Monte Carlo standard errors
// (1.4 points at 95 %) are added on either side.
const sets = 4000
const slack = 4 * Math.sqrt((0.95 * 0.05) / sets)
const field = (rng: Rng, sd: number): number => Math.exp(drawNormal(rng, 0, sd) - (sd * sd) / 2)

const covered = (one: (rng: Rng) => boolean | undefined, seed: string): number => {
  const rng = createRng(seed)
  let hits = 0
  let asked = 0
  for (let set = 0; set < sets; set++) {
    const hit = one(rng.fork(`${set}`))
    if (hit === undefined) continue
    asked += 1
    if (hit) hits += 1
  }
  expect(asked).toBeGreaterThan(0.75 * sets)
  return hits / asked
}

describe('ratioOfSums covers the rate of the population of fields', () => {
  it.each([
    [3, 0.3],
    [6, 0.7],
    [20, 0.7],
  ])('%i fields, SD between them %d: 92 to 95 %%', (fields, sd) => {
    const found = covered((rng) => {
      const efforts = Array.from({ length: fields }, () => 60)
      const totals = efforts.map((minutes) => drawPoisson(rng, 0.2 * minutes * field(rng, sd)))
      const got = ratioOfSums({ totals, efforts })
      return got.kind === 'rate' ? got.limits.lower <= 0.2 && 0.2 <= got.limits.upper : undefined
    }, `rate ${fields} ${sd}`)
    expect(found).toBeGreaterThan(0.92 - slack)
    expect(found).toBeLessThan(0.96 + slack)
  })
})

describe('shareOfSums covers the share', () => {
  it.each([4, 8, 20])('%i fields, SD 0.6 on the logit: 93 to 95 %%', (fields) => {
    // The population share, by numerical mean over the field effect.
    const grid = Array.from({ length: 2001 }, (_, k) => (k - 1000) / 200)
    const weight = grid.map((z) => Math.exp((-z * z) / 2))
    const total = weight.reduce((sum, w) => sum + w, 0)
    const truth = grid.reduce((sum, z, k) => sum + ((weight[k] ?? 0) / total) * inverseLogit(-0.4 + 0.6 * z), 0)
    const found = covered((rng) => {
      const wholes = Array.from({ length: fields }, () => 1 + drawPoisson(rng, 40))
      const parts = wholes.map((n) => drawBinomial(rng, n, inverseLogit(drawNormal(rng, -0.4, 0.6))))
      const got = shareOfSums({ parts, wholes })
      return got.kind === 'share' ? got.limits.lower <= truth && truth <= got.limits.upper : undefined
    }, `share ${fields}`)
    expect(found).toBeGreaterThan(0.93 - slack)
    expect(found).toBeLessThan(0.96 + slack)
  })
})

describe('betweenUnits on log rates covers the ratio', () => {
  it.each([
    [3, 20, 1],
    [6, 20, 3],
    [10, 8, 3],
  ])('%i fields per arm, mean total %i, ratio %i: 93.5 to 96.2 %%', (arm, mean, ratio) => {
    const found = covered((rng) => {
      const level = Array.from({ length: 2 * arm }, (_, f) => Number(f >= arm))
      const z = level.map((l) => logRate(drawNegativeBinomial(rng, mean * (l === 1 ? ratio : 1) * field(rng, 0.5), 4), 40))
      const got = betweenUnits({ z, level })
      if (got.kind !== 'fitted') return undefined
      const { lower, upper } = contrastLimits(got.between(1, 0))
      return lower <= Math.log(ratio) && Math.log(ratio) <= upper
    }, `contrast ${arm} ${mean} ${ratio}`)
    expect(found).toBeGreaterThan(0.935 - slack)
    expect(found).toBeLessThan(0.962 + slack)
  })
})
