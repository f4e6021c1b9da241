import { InputError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { likelihoodRatio } from '../../src/index.ts'
import { expectNear, expectRelative } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { cbpp, fitted, salamanders, withoutKinds, withoutMining, withoutSites } from './published-models.ts'

const told = referenceValues('count-model-inference/values')
const whole = fitted(salamanders)

describe('likelihood ratio', () => {
  it.each([
    ['mining', withoutMining],
    ['species', withoutKinds],
  ] as const)('oracle: salamanders with and without %s (glmmTMB)', (name, model) => {
    const [statistic = 0, df = 0, p = 0] = told(`lr-${name}`)
    const found = likelihoodRatio(whole, fitted(model), 'inner')
    expectNear(found.statistic, statistic, 2e-5)
    expect(found.df).toBe(df)
    expectRelative(found.p, p, 1e-4)
    expect(found.null).toBe('chi-square')
  })

  it.each([
    ['sites', whole, withoutSites],
    ['herds', fitted(cbpp), { ...cbpp, groupings: [] }],
  ] as const)('oracle: a variance of %s lies on the edge: half the p of the chi-square (glmmTMB)', (name, larger, model) => {
    const [statistic = 0, , p = 0] = told(`lr-${name}`)
    const found = likelihoodRatio(larger, fitted(model), 'one-variance')
    expectNear(found.statistic, statistic, 2e-5)
    expectRelative(found.p, p / 2, 1e-4)
    expect(found.null).toBe('mixture')
  })

  it('identity: no difference at all: p is 1, also of the mixture, and rounding below 0 is 0', () => {
    const smaller = { ...whole, parameters: whole.parameters - 1, logLikelihood: whole.logLikelihood + 1e-6 }
    for (const difference of ['inner', 'one-variance'] as const)
      expect(likelihoodRatio(whole, smaller, difference)).toMatchObject({ statistic: 0, p: 1 })
  })

  it('refuses fits in the wrong order, of other rows, more than one variance, and what is not nested', () => {
    const smaller = fitted(withoutMining)
    expect(() => likelihoodRatio(smaller, whole, 'inner')).toThrow(InputError)
    expect(() => likelihoodRatio(whole, whole, 'inner')).toThrow(InputError)
    expect(() => likelihoodRatio(whole, fitted(cbpp), 'inner')).toThrow(/rows/)
    expect(() => likelihoodRatio(whole, fitted(withoutKinds), 'one-variance')).toThrow(/one variance/)
    expect(() => likelihoodRatio({ ...whole, logLikelihood: smaller.logLikelihood - 1 }, smaller, 'inner')).toThrow(/nested/)
  })
})
