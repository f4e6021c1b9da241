import { describe, expect, it } from 'vitest'
import { designOf, fitCountModel, predictionsOf } from '../../src/index.ts'
import { expectNear, kindOf } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { columnsOf, designed, fitted, numbersOf, strips } from './strips.ts'

const design = designed(designOf(columnsOf(), [['strip'], ['stage']]))
const offset = numbersOf(strips, 'minutes').map((minutes) => Math.log(minutes))

describe('predictionsOf', () => {
  it('oracle: R predict of a Poisson model, at half an hour', () => {
    const fit = kindOf(
      fitCountModel({ family: 'poisson', counts: numbersOf(strips, 'count'), design: design.matrix, offset }),
      'fitted',
    )
    const rows = ['early', 'late'].map((stage) => design.rowAt({ strip: 'old', stage }))
    const half = { link: 'log', effort: 30 } as const
    const told = predictionsOf(design, fit, rows, { scale: half, law: 'normal' })
    expect(told.scale).toEqual(half)
    const printed = referenceValues('marginal-means/values')('log-predicted')
    told.predictions.forEach((prediction, k) => {
      const { predictor, se, mean } = kindOf(prediction, 'prediction')
      expectNear(predictor, printed[k] ?? 0, 1e-6)
      expectNear(se, printed[k + 2] ?? 0, 1e-6)
      expect(mean).toBe(Math.exp(predictor))
    })
  })

  it('tells by name what no row can tell', () => {
    const rows = strips.filter((row) => !(row.strip === 'old' && row.stage === 'late'))
    const holed = designed(designOf(columnsOf(rows), [['strip', 'stage']]))
    const { estimates } = fitted(holed, numbersOf(rows, 'weight'))
    const at = (stage: string) => holed.rowAt({ strip: 'old', stage })
    const { predictions } = predictionsOf(holed, estimates, [at('full'), at('late')], {
      scale: { link: 'identity' },
      law: 'normal',
    })
    expect(predictions.map(({ kind }) => kind)).toEqual(['prediction', 'not-estimable'])
    expect(predictions[1]).toMatchObject({ aliased: ['strip: old, and stage: late'] })
  })

  it('refuses a row of another design', () => {
    const { estimates } = fitted(design, numbersOf(strips, 'weight'))
    const told = (row: Float64Array) => () =>
      predictionsOf(design, estimates, [row], { scale: { link: 'identity' }, law: 'normal' })
    expect(told(Float64Array.of(1, 0))).toThrow(/a row has 2 entries; expected 5/)
    expect(told(Float64Array.of(1, 0, 0, 0, Number.NaN))).toThrow(/row is NaN/)
  })
})
