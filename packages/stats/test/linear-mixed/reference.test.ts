import { describe, expect, it } from 'vitest'
import {
  fitLinearMixed,
  type LinearMixedFit,
  type LinearMixedFitted,
  linearMixedContrast,
  linearMixedModes,
} from '../../src/index.ts'
import { answers, type Expected, modelOf, namedModels } from './reference-models.ts'

function fitted(fit: LinearMixedFit): LinearMixedFitted {
  if (fit.kind !== 'fitted') throw new Error(fit.kind)
  return fit
}

/** One of our standard deviations or the correlation, by lme4's names. */
function scatterOf(fit: LinearMixedFitted, names: readonly string[], { group, of, with: other }: Expected['sd'][number]): number {
  if (other !== null) return fit.slope?.correlation ?? 0
  if (of === '(Intercept)') return fit.deviations[names.indexOf(group)] as number
  return fit.slope?.deviation ?? 0
}

const cases = Object.entries(namedModels).flatMap(([name, model]) =>
  (['full', 'restricted'] as const).map((likelihood) => ({ name, model, likelihood })),
)

describe('published data, fitted by R (lme4)', () => {
  it('oracle: every fit that R made is tried', () => {
    expect(cases.map(({ name, likelihood }) => `${name}, ${likelihood}`).toSorted()).toEqual(Object.keys(answers.fits).toSorted())
  })

  it.each(cases)('oracle: $name, $likelihood', ({ name, model, likelihood }) => {
    const told = answers.fits[`${name}, ${likelihood}`] as Expected
    const fit = fitted(fitLinearMixed(modelOf(model, likelihood)))
    expect(model.response.length).toBe(told.n)
    expect(Math.abs(fit.logLikelihood - told.logLik), `log likelihood ${fit.logLikelihood}`).toBeLessThan(1e-5)
    expect(fit.parameters).toBe(told.df)
    expect(Math.abs(fit.aic - told.aic)).toBeLessThan(2e-5)
    expect(Math.abs(fit.residualSd / told.sigma - 1)).toBeLessThan(1e-4)
    const terms = [...model.columns.keys()]
    expect(terms.toSorted()).toEqual(Object.keys(told.coef).toSorted())
    terms.forEach((term, j) => {
      const [estimate, error] = told.coef[term] as readonly [number, number]
      const found = fit.coefficients[j] as number
      expect(Math.abs(found - estimate), `${term} ${found}`).toBeLessThan(Math.max(1e-4, 1e-3 * error))
      expect(Math.abs((fit.standardErrors[j] as number) / error - 1), `error of ${term}`).toBeLessThan(0.005)
    })
    const names = model.groupings?.map((own) => own.name) ?? []
    for (const part of told.sd) {
      const found = scatterOf(fit, names, part)
      // A scatter of nothing has no relative size: it is held to a ten thousandth of the residual.
      const isNothing = part.with === null && part.value < 1e-4 * told.sigma
      const allowed = isNothing ? 1e-4 * told.sigma : 0.002 * Math.abs(part.value)
      expect(Math.abs(found - part.value), `${part.group} ${part.of} ${found}`).toBeLessThan(allowed)
    }
  })

  it('oracle: conditional modes of subjects with correlated slopes', () => {
    const model = modelOf(namedModels['sleepstudy: correlated slope'] as (typeof namedModels)[string], 'restricted')
    const [subjects] = linearMixedModes(model, fitted(fitLinearMixed(model)))
    answers.modes.subject.forEach((_, k) => {
      expect(Math.abs((subjects?.intercepts[k] as number) - (answers.modes.intercept[k] as number))).toBeLessThan(1e-3)
      expect(Math.abs((subjects?.slopes?.[k] as number) - (answers.modes.slope[k] as number))).toBeLessThan(1e-3)
    })
  })

  it('oracle: a contrast with the degrees of freedom of subjects less one', () => {
    const fit = fitted(
      fitLinearMixed(modelOf(namedModels['sleepstudy: correlated slope'] as (typeof namedModels)[string], 'restricted')),
    )
    const told = linearMixedContrast(fit, [0, 1], 17)
    if (told.kind !== 'contrast') throw new Error(told.kind)
    // R 4.2.2: 10.467285959596 + c(-1, 1) * qt(0.975, 17) * 1.54578893
    expect(Math.abs(told.limits.lower - 7.20595647)).toBeLessThan(1e-4)
    expect(Math.abs(told.limits.upper - 13.72861544)).toBeLessThan(1e-4)
  })

  it('oracle: what has no variance is zero, and said', () => {
    const warningsOf = (name: string): readonly unknown[] =>
      fitted(fitLinearMixed(modelOf(namedModels[name] as (typeof namedModels)[string], 'restricted'))).warnings
    expect(warningsOf('Dyestuff2: no variance')).toEqual([{ kind: 'zero-variance', of: 'Batch' }])
    expect(warningsOf('blueberry: fruit set')).toEqual([{ kind: 'zero-variance', of: 'row' }])
    expect(warningsOf('cake: slope beside a crossed intercept')).toEqual([{ kind: 'perfect-correlation', of: 'replicate' }])
    expect(warningsOf('sleepstudy: correlated slope')).toEqual([])
  })
})
