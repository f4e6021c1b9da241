import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { type CountModel, type FamilyName, fitCountModel, matrixOfColumns, simulatedResiduals } from '../../src/index.ts'
import { distanceFromEven } from '../../src/model-checks/looks/uniformity.ts'
import { rowLaw } from '../../src/model-checks/row-law.ts'
import { cell, referenceTable, referenceValues } from '../reference-table.ts'
import { fitted, watched } from './watched.ts'

const families: readonly FamilyName[] = ['poisson', 'nb1', 'nb2', 'binomial', 'beta-binomial']
const rows = referenceTable('model-checks/residuals')
const column = (name: string): number[] => rows.map((row) => cell(row, name))

const model = (family: FamilyName): CountModel => ({
  family,
  counts: column('counts'),
  design: matrixOfColumns(rows.length, [rows.map(() => 1), column('x')]),
})

describe('the law of a row', () => {
  it.each(referenceTable('model-checks/laws'))('oracle: R 4.2.2, family $family, counted $count', (row) => {
    const family = families[cell(row, 'family') - 1] ?? 'poisson'
    const of = (name: string): number => cell(row, name)
    const seen = { count: of('count'), trials: of('trials'), predictor: of('predictor') }
    const law = rowLaw(family, { ...seen, dispersion: of('dispersion'), chance: of('chance') })
    // R writes 15 digits; its sums and ours round in other orders.
    expect(law.below).toBeCloseTo(of('below'), 12)
    expect(law.at).toBeCloseTo(of('at'), 12)
    expect(law.chanceOfZero).toBeCloseTo(of('zero'), 12)
    expect(law.mean).toBeCloseTo(of('mean'), 12)
    expect(law.variance).toBeCloseTo(of('variance'), 11)
  })

  it.each(families)('identity: %s, chances of all counts sum to 1, and to mean and variance', (family) => {
    const trials = family === 'binomial' || family === 'beta-binomial' ? 12 : 400
    const chance = family === 'nb2' ? 0.3 : 0
    const laws = Array.from({ length: trials + 1 }, (_, count) =>
      rowLaw(family, { count, trials, predictor: 0.7, dispersion: 0.4, chance }),
    )
    const sum = (of: (count: number) => number): number => laws.reduce((all, { at }, count) => all + at * of(count), 0)
    const { mean, variance, chanceOfZero, at } = laws[0] ?? { mean: 0, variance: 0, chanceOfZero: 0, at: 0 }
    expect(sum(() => 1)).toBeCloseTo(1, 10)
    expect(sum((k) => k)).toBeCloseTo(mean, 9)
    expect(sum((k) => (k - mean) ** 2)).toBeCloseTo(variance, 8)
    expect(chanceOfZero).toBeCloseTo(at, 14)
    let below = 0
    for (const law of laws.slice(0, 12)) {
      expect(law.below).toBeCloseTo(below, 11)
      below += law.at
    }
  })

  it.each(['poisson', 'nb1', 'nb2'] as const)('identity: %s, sums from zero and tails meet', (family) => {
    // Up to 400 a chance is a sum; beyond, and where the sum begins too near 0, it is a tail.
    for (const [from, predictor] of [
      [398, 5.9],
      [3, 6.6],
      [690, 6.6],
    ] as const) {
      let below: number | null = null
      for (let count = from; count < from + 6; count++) {
        const law = rowLaw(family, { count, trials: 1, predictor, dispersion: 0.01, chance: 0 })
        if (below !== null) expect(Math.abs(law.below - below)).toBeLessThan(1e-12)
        below = law.below + law.at
      }
    }
  })

  it('stays a law where a mean vanishes or has no end', () => {
    for (const family of families)
      for (const predictor of [-800, -40, 40, 800])
        for (const count of [0, 3]) {
          const law = rowLaw(family, { count, trials: 5, predictor, dispersion: 0.5, chance: 0 })
          expect(law.below).toBeGreaterThanOrEqual(0)
          expect(law.below + law.at).toBeLessThanOrEqual(1 + 1e-12)
          expect(Number.isNaN(law.variance)).toBe(false)
        }
  })
})

describe('simulatedResiduals', () => {
  it.each(['poisson', 'nb2'] as const)(
    'oracle: %s, between the chances that R gives, within four Monte Carlo errors',
    async (family) => {
      const whole = model(family)
      const fit = fitCountModel(whole)
      if (fit.kind !== 'fitted') throw new Error(fit.kind)
      const draws = 4000
      const { atModes, anew, drawn } = await simulatedResiduals(whole, fit, { draws, rng: createRng('oracle') })
      const prefix = family === 'poisson' ? 'poisson' : 'nb'
      const below = column(`${prefix}_below`)
      const upTo = column(`${prefix}_upto`)
      const error = (p: number): number => 4 * Math.sqrt((p * (1 - p)) / draws) + 2 / draws
      rows.forEach((_, i) => {
        for (const residual of [atModes[i] ?? Number.NaN, anew[i] ?? Number.NaN]) {
          expect(residual).toBeGreaterThanOrEqual((below[i] ?? 0) - error(below[i] ?? 0))
          expect(residual).toBeLessThanOrEqual((upTo[i] ?? 0) + error(upTo[i] ?? 0))
        }
        // The draws themselves: their share below what was counted.
        const own = drawn.subarray(i * draws, (i + 1) * draws)
        const share = own.reduce((sum, value) => sum + Number(value < (whole.counts[i] ?? 0)), 0) / draws
        expect(Math.abs(share - (below[i] ?? 0))).toBeLessThanOrEqual(error(below[i] ?? 0))
      })
    },
  )

  it('identity: counts drawn from a fit have even residuals', async () => {
    const { model: whole, fit } = fitted(watched({ seed: 'even', fields: 200, visits: 5 }).model, 'poisson')
    const { drawn, draws } = await simulatedResiduals(whole, fit, { draws: 20, rng: createRng('one') })
    const counts = Array.from({ length: 1000 }, (_, i) => drawn[i * draws] ?? 0)
    const { anew } = await simulatedResiduals({ ...whole, counts }, fit, { draws: 400, rng: createRng('two') })
    // Rows of a field share an effect: 200 fields, not 1000 rows, are independent. 1.95 / sqrt(200) is the 0.1 % point.
    expect(distanceFromEven(anew)).toBeLessThan(1.95 / Math.sqrt(200))
  })

  it('oracle: distance from evenness as of ks.test', () => {
    expect(distanceFromEven(Float64Array.of(0.9, 0.1, 0.2))).toBeCloseTo(referenceValues('model-checks/values')('ks')[0] ?? 0, 14)
  })

  it('identity: with effects at their modes, the order of rows moves a residual by no more than chance', async () => {
    const made = watched({ seed: 'order', fields: 4, visits: 5 }).model
    const { model: whole, fit } = fitted(made, 'poisson')
    const order = [...Array(20).keys()].reverse()
    const turned: CountModel = {
      ...whole,
      counts: order.map((i) => whole.counts[i] ?? 0),
      design: matrixOfColumns(20, [order.map(() => 1), order.map((i) => whole.design.values[2 * i + 1] ?? 0)]),
      groupings: [{ name: 'field', of: Int32Array.from(order, (i) => Math.floor(i / 5)), levels: 4 }],
    }
    const turnedFit = fitCountModel(turned)
    if (turnedFit.kind !== 'fitted') throw new Error(turnedFit.kind)
    const draws = 4000
    const one = await simulatedResiduals(whole, fit, { draws, rng: createRng('a') })
    const other = await simulatedResiduals(turned, turnedFit, { draws, rng: createRng('b') })
    const shareBelow = (of: typeof one, row: number, count: number): number =>
      of.drawn.subarray(row * draws, (row + 1) * draws).reduce((sum, value) => sum + Number(value < count), 0) / draws
    order.forEach((i, k) => {
      const count = whole.counts[i] ?? 0
      // Two shares of 4000, each with an error of at most 0.5 / sqrt(4000).
      expect(Math.abs(shareBelow(one, i, count) - shareBelow(other, k, count))).toBeLessThan(4 * 0.5 * Math.sqrt(2 / draws))
    })
  })

  it('gives the same numbers for the same stream, and keeps what is done when stopped', async () => {
    const { model: whole, fit } = fitted(watched({ seed: 'stop' }).model, 'poisson')
    const all = await simulatedResiduals(whole, fit, { draws: 100, rng: createRng('s') })
    const again = await simulatedResiduals(whole, fit, { draws: 100, rng: createRng('s') })
    expect(again).toEqual(all)
    const signal = { aborted: false }
    const stopped = await simulatedResiduals(
      whole,
      fit,
      { draws: 100, rng: createRng('s') },
      {
        signal,
        onProgress: ({ done }) => {
          signal.aborted = done >= 50
        },
        breathe: () => Promise.resolve(),
      },
    )
    expect(stopped.kind).toBe('stopped')
    expect(stopped.draws).toBe(50)
    expect(stopped.drawn.length).toBe(80 * 50)
    expect([...stopped.drawn.subarray(0, 50)]).toEqual([...all.drawn.subarray(0, 50)])
  })
})
