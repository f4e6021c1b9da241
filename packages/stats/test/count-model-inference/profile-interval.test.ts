import { InputError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { type CountModel, matrixOfColumns, type Profiled, profileInterval, waldInterval } from '../../src/index.ts'
import { madeCounts } from '../count-model/made-counts.ts'
import { expectNear } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { cbpp, fitted, salamanders } from './published-models.ts'

const told = referenceValues('count-model-inference/values')
const ofCbpp = fitted(cbpp)
const ofSalamanders = fitted(salamanders)
const unit = (p: number, column: number): number[] => Array.from({ length: p }, (_, j) => Number(j === column))
const coefficient = (p: number, column: number): Profiled => ({ kind: 'coefficients', weights: unit(p, column) })
const columnsOf = ({ design: { rows, columns, values } }: CountModel): number[][] =>
  Array.from({ length: columns }, (_, j) => Array.from({ length: rows }, (_, i) => values[i * columns + j] as number))

describe('profile intervals', () => {
  it.each([
    ['cbpp-1', cbpp, ofCbpp, coefficient(4, 0), 0.95],
    ['cbpp-2', cbpp, ofCbpp, coefficient(4, 1), 0.95],
    ['cbpp-3', cbpp, ofCbpp, coefficient(4, 2), 0.95],
    ['cbpp-4', cbpp, ofCbpp, coefficient(4, 3), 0.95],
    ['cbpp-sd', cbpp, ofCbpp, { kind: 'deviation', of: 'herd' }, 0.95],
    ['nb2-1', salamanders, ofSalamanders, coefficient(8, 0), 0.95],
    ['nb2-2', salamanders, ofSalamanders, coefficient(8, 1), 0.95],
    ['nb2-8', salamanders, ofSalamanders, coefficient(8, 7), 0.95],
    ['nb2-8-0.9', salamanders, ofSalamanders, coefficient(8, 7), 0.9],
    ['nb2-sd', salamanders, ofSalamanders, { kind: 'deviation', of: 'site' }, 0.95],
  ] as const)('oracle: %s (glmmTMB, root search)', (name, model, fit, profiled, level) => {
    const [lower = 0, upper = 0] = told(`profile-${name}`)
    const found = profileInterval(model, fit, profiled, { level })
    expectNear(found.lower, lower, 2e-4)
    expectNear(found.upper, upper, 2e-4)
    expect(found.lower).toBeLessThan(found.estimate)
    expect(found.upper).toBeGreaterThan(found.estimate)
    expect(found.level).toBe(level)
  })

  it.each([1, 1.96, 3])('identity: at the limits the log likelihood has fallen by half of %d squared', (multiplier) => {
    const found = profileInterval(cbpp, ofCbpp, coefficient(4, 1), { multiplier })
    const [one = [], held = [], ...others] = columnsOf(cbpp)
    for (const limit of [found.lower, found.upper]) {
      // The coefficient held there: its column goes into the offset, and the rest is fitted by the usual way.
      const rest = fitted({
        ...cbpp,
        design: matrixOfColumns(cbpp.design.rows, [one, ...others]),
        offset: held.map((value) => value * limit),
      })
      expectNear(Math.sqrt(2 * (ofCbpp.logLikelihood - rest.logLikelihood)), multiplier, 2e-4)
    }
  })

  it('identity: a column in another unit scales the limits, and a shifted one leaves them', () => {
    const [one = [], two = [], ...others] = columnsOf(cbpp)
    const before = profileInterval(cbpp, ofCbpp, coefficient(4, 1))
    for (const [by, shift] of [
      [1000, 0],
      [-0.01, 0],
      [1, 50],
    ] as const) {
      const model = {
        ...cbpp,
        design: matrixOfColumns(cbpp.design.rows, [one, two.map((value) => value * by + shift), ...others]),
      }
      const found = profileInterval(model, fitted(model), coefficient(4, 1))
      const [low, high] = by > 0 ? [found.lower, found.upper] : [found.upper, found.lower]
      expectNear(low * by, before.lower, 2e-4)
      expectNear(high * by, before.upper, 2e-4)
    }
  })

  it('identity: the sum of two coefficients is the coefficient of a design turned round', () => {
    // Fourth less third period: with the fourth as a step upon the third, it is a coefficient of its own.
    const [one = [], second = [], third = [], fourth = []] = columnsOf(cbpp)
    const late = third.map((value, i) => value + (fourth[i] as number))
    const turned = { ...cbpp, design: matrixOfColumns(one.length, [one, second, late, fourth]) }
    const found = profileInterval(cbpp, ofCbpp, { kind: 'coefficients', weights: [0, 0, -1, 1] })
    const other = profileInterval(turned, fitted(turned), coefficient(4, 3))
    expectNear(found.estimate, other.estimate, 1e-5)
    expectNear(found.lower, other.lower, 3e-4)
    expectNear(found.upper, other.upper, 3e-4)
  })

  it('identity: with many counts it is the Wald interval', () => {
    const model: CountModel = {
      family: 'poisson',
      ...madeCounts({ seed: 'many', groups: 60, visits: 20, mean: 30, theta: Infinity }),
    }
    const fit = fitted(model)
    // Date within fields: settled by the counts, not by the fields.
    const wald = waldInterval(fit, unit(3, 2), Number.POSITIVE_INFINITY)
    const found = profileInterval(model, fit, coefficient(3, 2))
    expectNear(found.lower, wald.lower, 0.005 * wald.standardError)
    expectNear(found.upper, wald.upper, 0.005 * wald.standardError)
  })

  it('identity: a deviation estimated as zero has 0 below, and an upper limit', () => {
    const model: CountModel = {
      family: 'poisson',
      ...madeCounts({ seed: 'alike 3', fieldSd: 0, theta: Infinity, groups: 10 }),
    }
    const fit = fitted(model)
    expect(fit.warnings).toContainEqual({ kind: 'zero-variance', of: 'field' })
    const found = profileInterval(model, fit, { kind: 'deviation', of: 'field' })
    expect(found.lower).toBe(0)
    expect(found.upper).toBeGreaterThan(0.02)
    expect(found.upper).toBeLessThan(1)
  })

  it('identity: a small deviation that zero explains nearly as well has 0 below', () => {
    const found = profileInterval(cbpp, ofCbpp, { kind: 'deviation', of: 'herd' }, { multiplier: 5 })
    // The likelihood ratio against no herds at all is 14.006: its root is 3.74, below 5.
    expect(found.lower).toBe(0)
    expect(profileInterval(cbpp, ofCbpp, { kind: 'deviation', of: 'herd' }, { multiplier: 3.6 }).lower).toBeGreaterThan(0)
  })

  it('identity: a side that does not fall far enough is without limit', () => {
    // One insect at the level: its rate can be ever so small, but not ever so large.
    const counts = [4, 6, 5, 3, 1, 0, 0, 0]
    const model: CountModel = {
      family: 'poisson',
      counts,
      design: matrixOfColumns(8, [counts.map(() => 1), [0, 0, 0, 0, 1, 1, 1, 1]]),
    }
    const found = profileInterval(model, fitted(model), coefficient(2, 1), { multiplier: 12.7 })
    expect(found.lower).toBe(Number.NEGATIVE_INFINITY)
    expect(Number.isFinite(found.upper)).toBe(true)
    expect(found.upper).toBeGreaterThan(found.estimate)
  })

  it('refuses a grouping that is not there, weights of another number or of nothing, and an aliased column', () => {
    expect(() => profileInterval(cbpp, ofCbpp, { kind: 'deviation', of: 'field' })).toThrow(/no grouping field/)
    expect(() => profileInterval(cbpp, ofCbpp, { kind: 'coefficients', weights: [1] })).toThrow(InputError)
    expect(() => profileInterval(cbpp, ofCbpp, { kind: 'coefficients', weights: [0, 0, 0, 0] })).toThrow(/all weights are 0/)
    const [one = [], two = [], ...others] = columnsOf(cbpp)
    const twice = { ...cbpp, design: matrixOfColumns(one.length, [one, two, ...others, two]) }
    expect(() => profileInterval(twice, fitted(twice), { kind: 'coefficients', weights: [0, 1, 0, 0, 1] })).toThrow(/aliased/)
  })
})
