import { createRng, InputError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import {
  type CountModel,
  countSimulator,
  drawNegativeBinomial,
  drawPoisson,
  type FittedCountModel,
  inverseLogit,
  matrixOfColumns,
} from '../../src/index.ts'
import { madeCounts } from '../count-model/made-counts.ts'
import { cbpp, fitted, withoutSites } from './published-models.ts'

const draws = 4000

/** Mean, variance and share of zeros of row i over many draws. */
function momentsOf(model: CountModel, fit: FittedCountModel, kind: 'anew' | 'at-modes', row: number) {
  const simulator = countSimulator(model, fit)
  const rng = createRng(`moments ${model.family} ${kind} ${row}`)
  let sum = 0
  let square = 0
  let fourth = 0
  let zeros = 0
  const values: number[] = []
  for (let r = 0; r < draws; r++) values.push(simulator.draw(rng.fork(`${r}`), kind)[row] as number)
  for (const value of values) {
    sum += value
    if (value === 0) zeros++
  }
  const mean = sum / draws
  for (const value of values) {
    square += (value - mean) ** 2
    fourth += (value - mean) ** 4
  }
  const variance = square / (draws - 1)
  return {
    mean,
    variance,
    zeros: zeros / draws,
    // Four Monte Carlo standard errors of each.
    ofMean: 4 * Math.sqrt(variance / draws),
    ofVariance: 4 * Math.sqrt((fourth / draws - variance ** 2) / draws),
    ofZeros: (chance: number) => 4 * Math.sqrt((chance * (1 - chance)) / draws) + 1e-9,
  }
}

function expectMoments(
  found: ReturnType<typeof momentsOf>,
  { mean, variance, zeros }: { readonly mean: number; readonly variance: number; readonly zeros: number },
): void {
  expect(Math.abs(found.mean - mean), `mean ${found.mean} against ${mean}`).toBeLessThan(found.ofMean)
  expect(Math.abs(found.variance - variance), `variance ${found.variance} against ${variance}`).toBeLessThan(found.ofVariance)
  expect(Math.abs(found.zeros - zeros), `zeros ${found.zeros} against ${zeros}`).toBeLessThan(found.ofZeros(zeros))
}

/** 96 counts of 12 fields, the intercept alone: every row has the same mean but for its field and effort. */
const { design, ...made } = madeCounts({ seed: 'moments', mean: 3 })
const ones = matrixOfColumns(design.rows, [Array.from({ length: design.rows }, () => 1)])
const fields: CountModel = { family: 'nb2', ...made, design: ones }

const mu = (fit: FittedCountModel, row: number): number => Math.exp(fit.predictor[row] as number)
const row = 43

describe('counts drawn from a fit, random effects at their modes', () => {
  it('identity: Poisson', () => {
    const model: CountModel = { ...fields, family: 'poisson' }
    const fit = fitted(model)
    const mean = mu(fit, row)
    expectMoments(momentsOf(model, fit, 'at-modes', row), { mean, variance: mean, zeros: Math.exp(-mean) })
  })

  it('identity: NB2, variance mu + mu^2 / theta', () => {
    const fit = fitted(fields)
    const mean = mu(fit, row)
    const theta = fit.dispersion as number
    expectMoments(momentsOf(fields, fit, 'at-modes', row), {
      mean,
      variance: mean + mean ** 2 / theta,
      zeros: (theta / (theta + mean)) ** theta,
    })
  })

  it('identity: NB1, variance mu (1 + phi)', () => {
    const model: CountModel = { ...fields, family: 'nb1' }
    const fit = fitted(model)
    const mean = mu(fit, row)
    const phi = fit.dispersion as number
    expectMoments(momentsOf(model, fit, 'at-modes', row), {
      mean,
      variance: mean * (1 + phi),
      zeros: (1 + phi) ** (-mean / phi),
    })
  })

  it('identity: binomial', () => {
    const fit = fitted(cbpp)
    const n = cbpp.trials?.[0] as number
    const p = inverseLogit(fit.predictor[0] as number)
    expectMoments(momentsOf(cbpp, fit, 'at-modes', 0), { mean: n * p, variance: n * p * (1 - p), zeros: (1 - p) ** n })
  })

  it('identity: beta-binomial', () => {
    const model: CountModel = { ...cbpp, family: 'beta-binomial', groupings: [] }
    const fit = fitted(model)
    const n = cbpp.trials?.[0] as number
    const p = inverseLogit(fit.predictor[0] as number)
    const size = fit.dispersion as number
    let none = 1
    for (let k = 0; k < n; k++) none *= (size * (1 - p) + k) / (size + k)
    expectMoments(momentsOf(model, fit, 'at-modes', 0), {
      mean: n * p,
      variance: (n * p * (1 - p) * (size + n)) / (size + 1),
      zeros: none,
    })
  })

  it.each(['poisson', 'nb2', 'nb1'] as const)('identity: %s beside zeros of another origin', (family) => {
    const rng = createRng(`zeros ${family}`)
    const levels = Array.from({ length: 200 }, (_, i) => i % 2)
    const counts = levels.map((level) => {
      if (rng.uniform() < 0.35) return 0
      const own = 2 * 4 ** level
      return family === 'poisson' ? drawPoisson(rng, own) : drawNegativeBinomial(rng, own, family === 'nb2' ? 5 : own / 0.5)
    })
    const one = counts.map(() => 1)
    const model: CountModel = {
      family,
      counts,
      design: matrixOfColumns(counts.length, [one, levels]),
      zeros: matrixOfColumns(counts.length, [one, levels]),
    }
    const fit = fitted(model)
    const own = fit.zeros?.coefficients ?? []
    const at = 1
    const chance = inverseLogit((own[0] as number) + (own[1] as number))
    expect(chance).toBeGreaterThan(0.1)
    const mean = mu(fit, at)
    const spread = fit.dispersion ?? 0
    const variance = family === 'poisson' ? mean : family === 'nb2' ? mean + mean ** 2 / spread : mean * (1 + spread)
    const none =
      family === 'poisson'
        ? Math.exp(-mean)
        : family === 'nb2'
          ? (spread / (spread + mean)) ** spread
          : (1 + spread) ** (-mean / spread)
    expectMoments(momentsOf(model, fit, 'at-modes', at), {
      mean: (1 - chance) * mean,
      variance: (1 - chance) * (variance + chance * mean ** 2),
      zeros: chance + (1 - chance) * none,
    })
  })
})

describe('counts drawn from a fit, random effects anew', () => {
  it('identity: the log mean is drawn with the deviation of the fields', () => {
    const model: CountModel = { ...fields, family: 'poisson' }
    const fit = fitted(model)
    const field = model.groupings?.[0]?.of[row] as number
    const fixed = (fit.predictor[row] as number) - (fit.groups[0]?.intercepts[field] as number)
    const square = (fit.deviations[0] as number) ** 2
    const mean = Math.exp(fixed + square / 2)
    const found = momentsOf(model, fit, 'anew', row)
    expect(Math.abs(found.mean - mean)).toBeLessThan(found.ofMean)
    expect(Math.abs(found.variance - (mean + mean ** 2 * (Math.exp(square) - 1)))).toBeLessThan(found.ofVariance)
  })

  it('identity: rows of one field share its draw, rows of two fields do not', () => {
    const model: CountModel = { ...fields, family: 'poisson' }
    const fit = fitted(model)
    const of = model.groupings?.[0]?.of ?? []
    const same = Array.from(of).findIndex((level, i) => i !== row && level === of[row])
    const other = Array.from(of).findIndex((level) => level !== of[row])
    const simulator = countSimulator(model, fit)
    const rng = createRng('shared')
    const drawn = Array.from({ length: draws }, (_, r) => simulator.draw(rng.fork(`${r}`), 'anew'))
    const meanAt = (i: number): number => drawn.reduce((sum, counts) => sum + (counts[i] as number), 0) / draws
    const covariance = (i: number, j: number): number => {
      const [one, two] = [meanAt(i), meanAt(j)]
      return drawn.reduce((sum, counts) => sum + ((counts[i] as number) - one) * ((counts[j] as number) - two), 0) / draws
    }
    const square = (fit.deviations[0] as number) ** 2
    const shared = meanAt(row) * meanAt(same) * (Math.exp(square) - 1)
    expect(covariance(row, same) / shared).toBeGreaterThan(0.75)
    expect(covariance(row, same) / shared).toBeLessThan(1.33)
    expect(Math.abs(covariance(row, other) / shared)).toBeLessThan(0.2)
  })

  it('identity: the same seed draws the same counts; another seed, other ones; without groups anew is at modes', () => {
    const simulator = countSimulator(fields, fitted(fields))
    expect(simulator.draw(createRng('a'), 'anew')).toEqual(simulator.draw(createRng('a'), 'anew'))
    expect(simulator.draw(createRng('a'), 'anew')).not.toEqual(simulator.draw(createRng('b'), 'anew'))
    const plain = countSimulator(withoutSites, fitted(withoutSites))
    expect(plain.draw(createRng('a'), 'anew')).toEqual(plain.draw(createRng('a'), 'at-modes'))
  })

  it('identity: a fit without overdispersion draws Poisson counts', () => {
    const counts = Array.from({ length: 40 }, (_, i) => 4 + (i % 3))
    const model: CountModel = { family: 'nb2', counts, design: matrixOfColumns(40, [counts.map(() => 1)]) }
    const fit = fitted(model)
    expect(fit.warnings).toContainEqual({ kind: 'no-overdispersion' })
    const mean = 4.975
    expectMoments(momentsOf(model, fit, 'at-modes', 0), { mean, variance: mean, zeros: Math.exp(-mean) })
  })

  it('refuses a mean beyond all counting', () => {
    const fit = fitted(withoutSites)
    const far = countSimulator(withoutSites, { ...fit, predictor: fit.predictor.map(() => 30) })
    expect(() => far.draw(createRng('far'), 'at-modes')).toThrow(InputError)
  })

  it.each(['poisson', 'nb1', 'nb2', 'binomial', 'beta-binomial'] as const)(
    'identity: %s at predictors far out gives none, or all',
    (family) => {
      const isShare = family.endsWith('binomial')
      const model: CountModel = isShare ? { ...cbpp, family, groupings: [] } : { ...withoutSites, family: family as 'poisson' }
      const fit = fitted(model)
      for (const eta of isShare ? [-900, -50, 50, 900] : [-900, -50]) {
        const counts = countSimulator(model, { ...fit, predictor: fit.predictor.map(() => eta) }).draw(
          createRng('out'),
          'at-modes',
        )
        counts.forEach((count, i) => {
          expect(count).toBe(eta > 0 ? model.trials?.[i] : 0)
        })
      }
    },
  )
})
