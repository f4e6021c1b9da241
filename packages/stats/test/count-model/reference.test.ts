import { describe, expect, it } from 'vitest'
import { type Coefficients, type FittedCountModel, fitCountModel } from '../../src/index.ts'
import { type PublishedFit, publishedFits } from './published-fits.ts'
import { type Columns, designOf, type Expected, expected, numbers, table } from './published-tables.ts'

const made = table('field-visits')

/** A standard deviation below this is none. */
const none = 1e-3

const modelOf = (name: string): PublishedFit => {
  const model = publishedFits[name]
  if (model === undefined) throw new Error(`no model ${name}`)
  return model
}

const toldOf = (name: string): Expected => {
  const told = expected[name]
  if (told === undefined) throw new Error(`no expected fit ${name}`)
  return told
}

function fitted({ zerosBy, ...model }: PublishedFit): FittedCountModel {
  const fit = fitCountModel(zerosBy === undefined ? model : { ...model, zeros: zerosBy.design })
  if (fit.kind !== 'fitted') throw new Error(fit.kind)
  return fit
}

function expectCoefficients(own: Coefficients, terms: readonly string[], told: Expected['coef']): void {
  expect(terms.toSorted()).toEqual(Object.keys(told).toSorted())
  for (const [j, term] of terms.entries()) {
    const [estimate, error] = told[term] ?? [Number.NaN, Number.NaN]
    const found = own.coefficients[j] as number
    expect(Math.abs(found - estimate), `${term} ${found}`).toBeLessThan(Math.max(1e-4, 1e-3 * error))
    expect(Math.abs((own.standardErrors[j] as number) / error - 1), `error of ${term}`).toBeLessThan(0.005)
  }
}

/** Within 0.2 %; where R finds none, the fit says so too. */
function expectGroups({ groups, warnings }: FittedCountModel, told: Pick<Expected, 'sd' | 'correlation'>): void {
  expect(groups.map(({ name }) => name).toSorted()).toEqual(Object.keys(told.sd).toSorted())
  for (const { name, deviation, slope } of groups) {
    const [ofIntercepts = Number.NaN, ofSlopes] = [told.sd[name] ?? []].flat()
    if (ofIntercepts < none) expect(warnings).toContainEqual({ kind: 'zero-variance', of: name })
    else expect(Math.abs(deviation / ofIntercepts - 1), `SD of ${name}`).toBeLessThan(0.002)
    expect(slope === null).toBe(ofSlopes === undefined)
    if (slope === null || ofSlopes === undefined) continue
    expect(Math.abs(slope.deviation / ofSlopes - 1), `SD of ${slope.name} by ${name}`).toBeLessThan(0.002)
    const correlation = told.correlation?.[name]
    if (correlation === undefined) expect(slope.correlation).toBeNull()
    else expect(Math.abs((slope.correlation ?? Number.NaN) - correlation)).toBeLessThan(0.002)
  }
}

describe('a model of counts, beside R', () => {
  it('oracle: every fit in the table is fitted', () => {
    expect(Object.keys(publishedFits).toSorted()).toEqual(Object.keys(expected).toSorted())
  })

  it.each(Object.entries(publishedFits))('oracle: %s', (name, model) => {
    const told = toldOf(name)
    const fit = fitted(model)
    expect(Math.abs(fit.logLikelihood - told.logLik), `${fit.logLikelihood}`).toBeLessThan(1e-5)
    expectCoefficients(fit, model.terms, told.coef)
    expect(fit.zeros === null).toBe(told.zeros === undefined)
    if (fit.zeros !== null) expectCoefficients(fit.zeros, model.zerosBy?.terms ?? [], told.zeros ?? {})
    expectGroups(fit, told)
    const dispersion = told.theta ?? told.phi ?? told.sum
    if (dispersion === undefined) expect(fit.dispersion).toBeNull()
    else expect(Math.abs((fit.dispersion ?? Number.NaN) / dispersion - 1), `dispersion ${fit.dispersion}`).toBeLessThan(0.002)
  })

  // An intercept hangs on all parameters, each known to some 1e-6.
  it.each(Object.entries(publishedFits).filter(([name]) => expected[name]?.modes !== undefined))(
    'oracle: %s: intercepts and slopes of the fields',
    (name, model) => {
      const told = toldOf(name).modes
      const [own] = fitted(model).groups
      expect(own?.intercepts.length).toBe(told?.intercepts.length)
      told?.intercepts.forEach((value, j) => {
        expect(Math.abs((own?.intercepts[j] as number) - value), `intercept ${j}`).toBeLessThan(1e-5)
      })
      told?.slopes.forEach((value, j) => {
        expect(Math.abs((own?.slope?.slopes[j] as number) - value), `slope ${j}`).toBeLessThan(1e-5)
      })
    },
  )

  it.each(Object.entries(publishedFits).filter(([name]) => expected[name]?.lme4 !== undefined))(
    'oracle: %s, as lme4 has it',
    (name, model) => {
      const told = toldOf(name).lme4
      if (told === undefined) throw new Error(name)
      const fit = fitted(name === 'cbpp: binomial by quadrature' ? { ...model, nodes: 9 } : model)
      expect(Math.abs(fit.logLikelihood - told.logLik), `${fit.logLikelihood}`).toBeLessThan(1e-5)
      expectCoefficients(fit, model.terms, told.coef)
      expectGroups(fit, told)
    },
  )

  it.each([20, 200])('identity: a slope is the same, warmth being counted from %i below', (below) => {
    const model = modelOf('field visits: nb2, slope')
    const near = fitted(model)
    const values = made.map(({ warmth }) => Number(warmth) - 20 + below)
    const covariates: Columns = [
      ['treated', numbers(made, 'treated')],
      ['warm', values],
    ]
    const groupings = model.groupings?.map((own) => ({ ...own, slope: { name: 'warm', values } })) ?? []
    const far = fitted({ ...model, ...designOf(made.length, covariates), groupings })
    expect(Math.abs(far.logLikelihood - near.logLikelihood)).toBeLessThan(1e-7)
    expect(Math.abs((far.coefficients[2] as number) - (near.coefficients[2] as number))).toBeLessThan(1e-5)
    const [ofNear, ofFar] = [near.groups[0]?.slope?.deviation ?? 0, far.groups[0]?.slope?.deviation ?? 0]
    expect(Math.abs(ofFar / ofNear - 1)).toBeLessThan(1e-4)
  })

  it('oracle: a chance of other zeros that goes to none leaves the fit without it', () => {
    const model = modelOf('salamanders: nb2')
    const one = designOf(model.counts.length)
    const fit = fitted({ ...model, zerosBy: one })
    // glmmTMB stops at a logit of -16 with an error of 3,621: the likelihood rises for ever, by 1e-7 from there on.
    expect(Math.abs(fit.logLikelihood - toldOf('salamanders: nb2').logLik)).toBeLessThan(1e-5)
    expectCoefficients(fit, model.terms, toldOf('salamanders: nb2').coef)
    expectGroups(fit, toldOf('salamanders: nb2'))
    expect(fit.zeros?.coefficients[0]).toBeLessThan(-12)
  })
})
