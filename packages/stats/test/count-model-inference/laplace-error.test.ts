import { describe, expect, it } from 'vitest'
import { type CountModel, laplaceError, matrixOfColumns } from '../../src/index.ts'
import { madeCounts } from '../count-model/made-counts.ts'
import { expectNear } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { cbpp, fitted, salamanders, withoutSites } from './published-models.ts'

/** How far a refit by quadrature really moves, on the scale of the search, in standard errors of the Laplace fit. */
function movedBy(model: CountModel) {
  const laplace = fitted(model)
  const whole = fitted({ ...model, nodes: 25 })
  const p = laplace.coefficients.length
  const m = laplace.history.end.length
  const moved = Array.from({ length: p + 1 }, (_, k) => {
    const [one, other] = [laplace.history.end[k] as number, whole.history.end[k] as number]
    const by = k < p ? other - one : Math.abs(other) - Math.abs(one)
    return Math.abs(by) / Math.sqrt(laplace.searchCovariance[k * (m + 1)] as number)
  })
  return { laplace, coefficients: Math.max(...moved.slice(0, p)), deviation: moved[p] as number }
}

/** 60 fields far apart with two visits each, and few insects. */
const pairsOf = (seed: string): CountModel => ({
  family: 'nb2',
  ...madeCounts({ seed, groups: 60, visits: 2, mean: 0.3, fieldSd: 2 }),
})
const pairs = pairsOf('sixty pairs')

describe('the error of the Laplace approximation', () => {
  it('oracle: a refit by quadrature of cbpp is that of lme4 with 25 nodes', () => {
    const own = fitted({ ...cbpp, nodes: 25 })
    const values = referenceValues('count-model-inference/values')('quadrature-cbpp')
    values.forEach((value, k) => {
      expectNear(k < 4 ? (own.coefficients[k] as number) : (own.deviations[0] as number), value, 2e-4)
    })
  })

  it.each<[string, CountModel]>([
    ['cbpp', cbpp],
    ['salamanders', salamanders],
    ['pairs with few insects', pairs],
    ['other pairs', pairsOf('other')],
    ['pairs less far apart', { family: 'nb2', ...madeCounts({ seed: 'p2', groups: 60, visits: 2, mean: 0.5, fieldSd: 1 }) }],
  ])('identity: %s: a refit by quadrature moves about as far as it says', (_, model) => {
    const moved = movedBy(model)
    const told = laplaceError(model, moved.laplace)
    if (told === null) throw new Error('quadrature is to be had here')
    // One Newton step of a curve that is no parabola: a third off, or a fiftieth of a standard error.
    expectNear(told.deviation, moved.deviation, Math.max(0.35 * moved.deviation, 0.02))
    expectNear(told.coefficients, moved.coefficients, Math.max(0.35 * moved.coefficients, 0.02))
  })

  it('recovery: fields with many visits need no quadrature; pairs with few insects do', () => {
    const many: CountModel = { family: 'nb2', ...madeCounts({ seed: 'many visits', groups: 20, visits: 10 }) }
    expect(laplaceError(many, fitted(many))).toMatchObject({ matters: false })
    const told = ['first', 'second', 'third', 'fourth', 'fifth'].map((seed) => laplaceError(pairsOf(seed), fitted(pairsOf(seed))))
    expect(told.filter((own) => own?.matters).length).toBeGreaterThanOrEqual(4)
  })

  it('identity: after a fit by quadrature there is nothing left to move', () => {
    const model = { ...pairs, nodes: 15 }
    const told = laplaceError(model, fitted(model))
    expect(told?.matters).toBe(false)
    expect(told?.coefficients).toBeLessThan(1e-3)
    expect(told?.deviation).toBeLessThan(1e-3)
  })

  it('a deviation of zero has no error to tell, and where quadrature is not to be had nothing is told', () => {
    const alike: CountModel = { family: 'poisson', ...madeCounts({ seed: 'alike 3', fieldSd: 0, theta: Infinity, groups: 10 }) }
    expect(laplaceError(alike, fitted(alike))).toMatchObject({ deviation: 0 })
    expect(laplaceError(withoutSites, fitted(withoutSites))).toBeNull()
    const crossed: CountModel = { family: 'poisson', ...madeCounts({ seed: 'crossed', dateSd: 0.4 }) }
    expect(laplaceError(crossed, fitted(crossed))).toBeNull()
    const [field] = madeCounts({ seed: 'slope' }).groupings
    if (field === undefined) throw new Error('no field')
    const made = madeCounts({ seed: 'slope' })
    const { rows, values } = made.design
    const dates = Array.from({ length: rows }, (_, i) => ((values[i * 3 + 2] as number) - 20_024) / 14)
    const sloped: CountModel = {
      family: 'poisson',
      ...made,
      design: matrixOfColumns(rows, [dates.map(() => 1), dates]),
      groupings: [{ ...field, slope: { name: 'date', values: Float64Array.from(dates) } }],
    }
    expect(laplaceError(sloped, fitted(sloped))).toBeNull()
  })
})
