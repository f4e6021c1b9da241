import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import {
  contrastsOf,
  designOf,
  type Estimates,
  fitCountModel,
  type MeanContrast,
  type MeansAsked,
  marginalMeans,
  type Pairs,
  studentMultiplier,
  type TermDesign,
} from '../../src/index.ts'
import { expectNear, expectRelative, kindOf } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { columnsOf, designed, fitted, levelsOf, numbersOf, strips, tableOf } from './strips.ts'

const oracle = referenceValues('marginal-means/values')
const rng = createRng('contrasts')
const weight = numbersOf(strips, 'weight')
const count = numbersOf(strips, 'count')
const offset = numbersOf(strips, 'minutes').map((minutes) => Math.log(minutes))
const plain = { scale: { link: 'identity' }, law: 'normal', weights: 'equal', of: ['strip'] } as const

function told(design: TermDesign, estimates: Estimates, change: Partial<MeansAsked>, pairs: Pairs = 'all') {
  return contrastsOf(marginalMeans(design, estimates, { ...plain, ...change }), pairs, rng)
}

/** Difference, error, limits, p and p after Holm against lines of the oracle. */
function expectContrasts(contrasts: readonly MeanContrast[], name: string, tolerance: number): void {
  contrasts.forEach((contrast, k) => {
    const { difference, se, limits, p, holm } = kindOf(contrast, 'contrast')
    const found = [difference, se, limits.lower, limits.upper, p, holm]
    oracle(`${name}/${k + 1}`).forEach((value, j) => {
      expectNear(found[j] ?? Number.NaN, value, tolerance)
    })
  })
}

describe('contrastsOf against emmeans', () => {
  it('oracle: all pairs of strips by t, and the multiplier of mvtnorm', () => {
    const design = designed(designOf(columnsOf(), [['strip', 'stage'], ['day']]))
    const { estimates, df } = fitted(design, weight)
    const { contrasts, multiplier } = told(design, estimates, { law: { df } })
    expect(contrasts.map(({ of, against }) => `${of.strip} to ${against.strip}`)).toEqual([
      'sown to none',
      'old to none',
      'old to sown',
    ])
    expectContrasts(contrasts, 'lm-pairs', 1e-7)
    expectNear(multiplier?.value ?? Number.NaN, oracle('lm-multiplier')[0] ?? 0, (multiplier?.error ?? 0) + 2e-5)
    for (const contrast of contrasts) {
      const { difference, se, simultaneous, ratio } = kindOf(contrast, 'contrast')
      expect(simultaneous.upper).toBe(difference + (multiplier?.value ?? Number.NaN) * se)
      expect(ratio).toBeNull()
    }
  })

  it('oracle: all pairs under a log link; exp of them are ratios of rates', () => {
    const design = designed(designOf(columnsOf(), [['strip'], ['stage']]))
    const fit = kindOf(fitCountModel({ family: 'poisson', counts: count, design: design.matrix, offset }), 'fitted')
    const { contrasts } = told(design, fit, { scale: { link: 'log', effort: 60 } })
    expectContrasts(contrasts, 'log-pairs', 1e-6)
    for (const contrast of contrasts) {
      const { difference, ratio, simultaneous } = kindOf(contrast, 'contrast')
      expect(ratio?.ratio).toBeCloseTo(Math.exp(difference), 14)
      expect(ratio?.simultaneous).toEqual({ lower: Math.exp(simultaneous.lower), upper: Math.exp(simultaneous.upper) })
    }
    // Effort and variances cancel in a ratio.
    const other = told(design, fit, { scale: { link: 'log', effort: 7, variances: [0.4] } })
    expect(other.contrasts).toEqual(contrasts)
  })

  it('oracle: each against the first under a logit link', () => {
    const design = designed(designOf(columnsOf(), [['strip'], ['stage']]))
    const trials = count.map(() => 30)
    const fit = kindOf(fitCountModel({ family: 'binomial', counts: count, trials, design: design.matrix }), 'fitted')
    const { contrasts } = told(design, fit, { scale: { link: 'logit' } }, { against: { strip: 'none' } })
    expect(contrasts).toHaveLength(2)
    contrasts.forEach((contrast, k) => {
      const { difference, se, p, holm } = kindOf(contrast, 'contrast')
      const line = oracle(`logit-against/${k + 1}`)
      const found = [difference, se, p, holm]
      const printed = [line[0], line[1], line.at(-2), line.at(-1)]
      printed.forEach((value, j) => {
        expectNear(found[j] ?? Number.NaN, value ?? 0, 1e-6)
      })
    })
  })

  it('oracle: ages of children away from school, NB2 fitted by glmmTMB', () => {
    const rows = tableOf('count-models/quine')
    const columns = {
      Eth: levelsOf(rows, 'Eth', ['A', 'N']),
      Sex: levelsOf(rows, 'Sex', ['F', 'M']),
      Age: levelsOf(rows, 'Age', ['F0', 'F1', 'F2', 'F3']),
      Lrn: levelsOf(rows, 'Lrn', ['AL', 'SL']),
    }
    const design = designed(designOf(columns, [['Eth'], ['Sex'], ['Age'], ['Lrn']]))
    const fit = kindOf(fitCountModel({ family: 'nb2', counts: numbersOf(rows, 'Days'), design: design.matrix }), 'fitted')
    const df = rows.length - fit.parameters
    told(design, fit, { of: ['Age'], scale: { link: 'log', effort: 1 }, law: { df } }).contrasts.forEach((contrast, k) => {
      const { difference, se, p, holm } = kindOf(contrast, 'contrast')
      const [estimate = 0, error = 0, , , alone = 0, together = 0] = oracle(`quine-age/${k + 1}`)
      expectNear(difference, estimate, 1e-3 * error)
      expectRelative(se, error, 5e-3)
      expectNear(p, alone, 5e-3)
      expectNear(holm, together, 1e-2)
    })
  })
})

describe('contrastsOf, identities', () => {
  const design = designed(designOf(columnsOf(), [['strip'], ['stage']]))
  const { estimates, df } = fitted(design, weight)
  const law = { df }

  it('of one contrast the simultaneous limits are its own, exactly', () => {
    const rows = strips.filter((row) => row.strip !== 'old')
    const two = { ...columnsOf(rows), strip: levelsOf(rows, 'strip', ['none', 'sown']) }
    const own = designed(designOf(two, [['strip'], ['stage']]))
    const fit = fitted(own, numbersOf(rows, 'weight'))
    const { contrasts, multiplier } = told(own, fit.estimates, { law: { df: fit.df } })
    const [contrast] = contrasts
    if (contrast === undefined) throw new Error('no contrast')
    const { limits, simultaneous, p, holm } = kindOf(contrast, 'contrast')
    expect(simultaneous).toEqual(limits)
    expect(holm).toBe(p)
    expect(multiplier).toEqual({ value: studentMultiplier(0.95, fit.df), error: 0, directions: 0 })
  })

  it('another reference level turns signs and changes nothing else', () => {
    const turned = designed(
      designOf({ ...columnsOf(), strip: levelsOf(strips, 'strip', ['old', 'none', 'sown']) }, [['strip'], ['stage']]),
    )
    const other = told(turned, fitted(turned, weight).estimates, { law }).contrasts
    for (const contrast of told(design, estimates, { law }).contrasts) {
      const { of, against, difference, se } = kindOf(contrast, 'contrast')
      const same = other.find(
        (one) => [one.of.strip, one.against.strip].sort().join() === [of.strip, against.strip].sort().join(),
      )
      if (same === undefined) throw new Error('no such pair')
      const found = kindOf(same, 'contrast')
      expectNear(found.difference, same.of.strip === of.strip ? difference : -difference, 1e-12)
      expectNear(found.se, se, 1e-12)
    }
  })

  it('simultaneous limits lie between those of one and those of Bonferroni', () => {
    const { contrasts } = told(design, estimates, { law, of: ['strip', 'stage'] })
    expect(contrasts).toHaveLength(36)
    for (const contrast of contrasts) {
      const { limits, simultaneous, se, difference } = kindOf(contrast, 'contrast')
      expect(simultaneous.upper).toBeGreaterThan(limits.upper)
      expect(simultaneous.upper).toBeLessThan(difference + studentMultiplier(1 - 0.05 / 36, df) * se)
    }
  })

  it('a difference may be told where neither mean can', () => {
    const minutes = numbersOf(strips, 'minutes')
    const twice = { ...columnsOf(), twice: { kind: 'number', values: minutes.map((own) => 2 * own) } } as const
    const own = designed(designOf(twice, [['strip'], ['minutes'], ['twice']]))
    const fit = fitted(own, weight)
    const means = marginalMeans(own, fit.estimates, { ...plain, numbers: { minutes: 10, twice: 30 } })
    expect(means.means.map(({ kind }) => kind)).toEqual(['not-estimable', 'not-estimable', 'not-estimable'])
    expect(contrastsOf(means, 'all', rng).contrasts.map(({ kind }) => kind)).toEqual(['contrast', 'contrast', 'contrast'])
  })

  it('numbers far from 0, such as days from long ago, leave no wrong limits: the same ones, or none', () => {
    const day = numbersOf(strips, 'day')
    const moved = (by: number) => {
      const columns = { ...columnsOf(), day: { kind: 'number', values: day.map((own) => own + by) } } as const
      const own = designed(designOf(columns, [['strip', 'day'], ['minutes']]))
      return told(own, fitted(own, weight).estimates, { law })
    }
    const near = moved(-20000)
    for (const by of [0, 1e5, 1e6, 1e8])
      moved(by).contrasts.forEach((contrast, k) => {
        const same = near.contrasts[k]
        if (same === undefined) throw new Error('no contrast')
        if (contrast.kind === 'contrast') expectRelative(contrast.se, kindOf(same, 'contrast').se, 1e-4)
      })
    expect(moved(0).contrasts.map(({ kind }) => kind)).toEqual(['contrast', 'contrast', 'contrast'])
  })

  it('what hangs on an empty cell is named, and does not count among the others', () => {
    const rows = strips.filter((row) => !(row.strip === 'old' && row.stage === 'late'))
    const holed = designed(designOf(columnsOf(rows), [['strip', 'stage']]))
    const fit = fitted(holed, numbersOf(rows, 'weight'))
    const { contrasts, multiplier } = told(holed, fit.estimates, { law: { df: fit.df } })
    expect(contrasts.map(({ kind }) => kind)).toEqual(['contrast', 'not-estimable', 'not-estimable'])
    expect(contrasts[1]).toMatchObject({ aliased: ['strip: old, and stage: late'] })
    expect(multiplier?.value).toBe(studentMultiplier(0.95, fit.df))
  })

  it('without any scatter there is a difference and no more', () => {
    const none = { ...estimates, covariance: estimates.covariance.map(() => 0) }
    const { contrasts, multiplier } = told(design, none, { law })
    expect(contrasts.map(({ kind }) => kind)).toEqual(['no-scatter', 'no-scatter', 'no-scatter'])
    expect(multiplier).toBeNull()
    expect(told(design, none, { law, of: [] })).toEqual({ contrasts: [], multiplier: null })
  })

  it('refuses a mean that is not there to compare with', () => {
    expect(() => told(design, estimates, {}, { against: { strip: 'mown' } })).toThrow(/no mean of \[strip: mown\]/)
    expect(() => told(design, estimates, {}, { against: {} })).toThrow(/no mean of \[\]/)
  })
})
