import { InputError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { matrixOfColumns, waldInterval } from '../../src/index.ts'
import { expectNear } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { cbpp, fitted, salamanders } from './published-models.ts'

const told = referenceValues('count-model-inference/values')
const ofCbpp = fitted(cbpp)
const ofSalamanders = fitted(salamanders)
const endless = Number.POSITIVE_INFINITY

describe('Wald intervals of sums of coefficients', () => {
  it.each([
    ['cbpp-period2', ofCbpp, [0, 1, 0, 0], 0.95],
    ['nb2-minedno', ofSalamanders, [0, 0, 0, 0, 0, 0, 0, 1], 0.95],
    ['nb2-minedno-0.9', ofSalamanders, [0, 0, 0, 0, 0, 0, 0, 1], 0.9],
    ['nb2-difference', ofSalamanders, [0, 0, 0, 0, -1, 1, 0, 0], 0.95],
  ] as const)('oracle: %s (glmmTMB)', (name, fit, weights, level) => {
    const [estimate = 0, error = 0, lower = 0, upper = 0] = told(`wald-${name}`)
    const found = waldInterval(fit, weights, endless, level)
    expectNear(found.estimate, estimate, 1e-4)
    expectNear(found.standardError, error, 1e-3 * error)
    expectNear(found.lower, lower, 4e-3 * error)
    expectNear(found.upper, upper, 4e-3 * error)
    expect(found.level).toBe(level)
  })

  it('oracle: with 3, 14 and 21 degrees of freedom it is wider by the quantile of t (R qt)', () => {
    const quantiles = told('t')
    for (const [k, df] of [3, 14, 21].entries()) {
      const { estimate, standardError, upper, lower } = waldInterval(ofCbpp, [0, 1, 0, 0], df)
      expectNear((upper - estimate) / standardError, quantiles[k] as number, 1e-10)
      expectNear((estimate - lower) / standardError, quantiles[k] as number, 1e-10)
    }
  })

  it('identity: weights scale the interval, and their sign turns it over', () => {
    const one = waldInterval(ofCbpp, [0, 1, 0, 0], 14)
    const other = waldInterval(ofCbpp, [0, -3, 0, 0], 14)
    expectNear(other.lower, -3 * one.upper, 1e-12)
    expectNear(other.upper, -3 * one.lower, 1e-12)
    expect(waldInterval(ofCbpp, [0, 0, 0, 0], 14)).toMatchObject({ estimate: 0, standardError: 0, lower: 0, upper: 0 })
  })

  it('refuses another number of weights, weight on an aliased column, a level of 1, no freedom', () => {
    const { rows, values } = cbpp.design
    const column = (j: number): number[] => Array.from({ length: rows }, (_, i) => values[i * 4 + j] as number)
    const twice = fitted({ ...cbpp, design: matrixOfColumns(rows, [0, 1, 2, 3, 1].map(column)) })
    expect(() => waldInterval(ofCbpp, [0, 1, 0], endless)).toThrow(InputError)
    expect(() => waldInterval(twice, [0, 0, 0, 0, 1], endless)).toThrow(/aliased/)
    expectNear(waldInterval(twice, [0, 1, 0, 0, 0], endless).estimate, waldInterval(ofCbpp, [0, 1, 0, 0], endless).estimate, 1e-6)
    expect(() => waldInterval(ofCbpp, [0, 1, 0, 0], endless, 1)).toThrow(InputError)
    expect(() => waldInterval(ofCbpp, [0, 1, 0, 0], 0)).toThrow(InputError)
  })
})
