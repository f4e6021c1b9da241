import { describe, expect, it } from 'vitest'
import { informationCriteria } from '../../src/index.ts'
import { expectNear } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { cbpp, fitted, salamanders, zerosByMining } from './published-models.ts'

const told = referenceValues('count-model-inference/values')

describe('information criteria', () => {
  it.each([
    ['cbpp', cbpp],
    ['poisson', { ...salamanders, family: 'poisson' }],
    ['nb2', salamanders],
    ['nb1', { ...salamanders, family: 'nb1' }],
    ['zinb2', zerosByMining],
  ] as const)('oracle: AIC of %s as glmmTMB has it; AICc by its formula', (name, model) => {
    const [aic = 0, parameters = 0, rows = 0] = told(`aic-${name}`)
    const fit = fitted(model)
    expect(fit.parameters).toBe(parameters)
    expect(fit.predictor.length).toBe(rows)
    const found = informationCriteria(fit)
    expectNear(found.aic, aic, 2e-5)
    expectNear(found.aicc, aic + (2 * parameters * (parameters + 1)) / (rows - parameters - 1), 2e-5)
  })

  it('identity: no more rows than parameters and one: AICc is Infinity; one row more and it is not', () => {
    const fit = { ...fitted(cbpp), logLikelihood: -10, parameters: 5 }
    expect(informationCriteria({ ...fit, predictor: new Float64Array(6) })).toEqual({ aic: 30, aicc: Number.POSITIVE_INFINITY })
    expect(informationCriteria({ ...fit, predictor: new Float64Array(7) })).toEqual({ aic: 30, aicc: 90 })
  })
})
