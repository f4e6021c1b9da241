import { describe, expect, it } from 'vitest'
import {
  designOf,
  fitCountModel,
  type MarginalMeans,
  type MeansAsked,
  marginalMeans,
  predictionsOf,
  type TermDesign,
} from '../../src/index.ts'
import { expectNear, expectRelative, kindOf } from '../near.ts'
import { referenceValues } from '../reference-table.ts'
import { columnsOf, designed, fitted, levelsOf, numbersOf, type Row, strip, strips, tableOf } from './strips.ts'

const oracle = referenceValues('marginal-means/values')
const weight = numbersOf(strips, 'weight')
const count = numbersOf(strips, 'count')
const offset = numbersOf(strips, 'minutes').map((minutes) => Math.log(minutes))
const plain = { scale: { link: 'identity' }, law: 'normal', weights: 'equal' } as const

/** Estimates, errors and limits against lines of the oracle. */
function expectMeans({ means }: MarginalMeans, name: string, tolerance = 1e-9): void {
  means.forEach((mean, k) => {
    const { predictor, se, limits } = kindOf(mean, 'mean')
    const found = [predictor, se, limits.lower, limits.upper]
    oracle(`${name}/${k + 1}`).forEach((value, j) => {
      expectNear(found[j] ?? Number.NaN, value, tolerance)
    })
  })
}

describe('marginalMeans of a table with unequal cells, by t (oracle: emmeans)', () => {
  const design = designed(designOf(columnsOf(), [['strip', 'stage'], ['day']]))
  const { estimates, df } = fitted(design, weight)
  const asked = { ...plain, law: { df } }

  it.each<[string, Partial<MeansAsked>]>([
    ['lm-equal', { of: ['strip'] }],
    ['lm-rows', { of: ['strip'], weights: 'rows' }],
    ['lm-cells', { of: ['strip', 'stage'] }],
    ['lm-day', { of: ['stage'], numbers: { day: 20002 } }],
  ])('%s', (name, change) => {
    // Days are numbered from 20,000: of the sixteen digits of a covariance eight go to where they are, not to how they differ.
    expectMeans(marginalMeans(design, estimates, { ...asked, of: [], ...change }), name, 1e-7)
  })

  it('tells where numbers were held', () => {
    const days = numbersOf(strips, 'day')
    const { numbers } = marginalMeans(design, estimates, { ...asked, of: ['strip'] })
    expectNear(numbers.day ?? 0, days.reduce((sum, day) => sum + day, 0) / days.length, 1e-9)
    expect(marginalMeans(design, estimates, { ...asked, of: [], numbers: { day: 20002 } }).numbers).toEqual({ day: 20002 })
  })

  it('identity: by rows, it is the mean of what the model says of every row, put to that level', () => {
    const { means } = marginalMeans(design, estimates, { ...asked, of: ['strip'], weights: 'rows' })
    means.forEach((mean) => {
      const rows = strips.map((row) => design.rowAt({ strip: mean.at.strip ?? '', stage: row.stage ?? '', day: Number(row.day) }))
      const { predictions } = predictionsOf(design, estimates, rows, asked)
      const all = predictions.map((prediction) => kindOf(prediction, 'prediction').predictor)
      expectNear(kindOf(mean, 'mean').predictor, all.reduce((sum, value) => sum + value, 0) / all.length, 1e-9)
    })
  })
})

describe('marginalMeans where measured columns act on each other (oracle: emmeans)', () => {
  const days = numbersOf(strips, 'day').map((day) => day - 20000)
  const columns = { ...columnsOf(), day: { kind: 'number', values: days } } as const
  const design = designed(designOf(columns, [['strip'], ['day'], ['minutes'], ['strip', 'day'], ['day', 'minutes']]))
  const { estimates, df } = fitted(design, weight)
  const asked = { ...plain, law: { df }, of: ['strip'] }

  it('slopes', () => expectMeans(marginalMeans(design, estimates, asked), 'slopes'))
  it('slopes-at', () => {
    expectMeans(marginalMeans(design, estimates, { ...asked, numbers: { day: 7, minutes: 20 } }), 'slopes-at')
  })
})

describe('marginalMeans on the scale of counts and shares (oracle: emmeans, fits of our own)', () => {
  const design = designed(designOf(columnsOf(), [['strip'], ['stage']]))
  const counted = kindOf(fitCountModel({ family: 'poisson', counts: count, design: design.matrix, offset }), 'fitted')
  const hour = { link: 'log', effort: 60 } as const
  const asked = { ...plain, of: ['strip'], scale: hour }

  it('visitors of an hour', () => {
    const told = marginalMeans(design, counted, asked)
    expectMeans(told, 'log', 1e-6)
    told.means.forEach((mean, k) => {
      const { mean: rate, meanLimits } = kindOf(mean, 'mean')
      const found = [rate, meanLimits.lower, meanLimits.upper]
      oracle(`log-response/${k + 1}`).forEach((value, j) => {
        expectRelative(found[j] ?? 0, value, 1e-6)
      })
    })
  })

  it('shares', () => {
    const trials = count.map(() => 30)
    const shares = kindOf(fitCountModel({ family: 'binomial', counts: count, trials, design: design.matrix }), 'fitted')
    const { means } = marginalMeans(design, shares, { ...asked, scale: { link: 'logit' } })
    means.forEach((mean, k) => {
      const { mean: share, meanLimits } = kindOf(mean, 'mean')
      const found = [share, meanLimits.lower, meanLimits.upper]
      oracle(`logit-response/${k + 1}`).forEach((value, j) => {
        expectRelative(found[j] ?? 0, value, 1e-6)
      })
    })
  })

  it('identity: twice the effort, twice the mean and its limits; variances of 0.5 and 0.3 make them exp(0.4) as large', () => {
    const [one] = marginalMeans(design, counted, { ...asked, scale: { link: 'log', effort: 30 } }).means
    const [two] = marginalMeans(design, counted, asked).means
    const [over] = marginalMeans(design, counted, { ...asked, scale: { ...hour, variances: [0.5, 0.3] } }).means
    if (one === undefined || two === undefined || over === undefined) throw new Error('no mean')
    const [a, b, c] = [kindOf(one, 'mean'), kindOf(two, 'mean'), kindOf(over, 'mean')]
    expectRelative(b.mean / a.mean, 2, 1e-14)
    expectRelative(b.meanLimits.upper / a.meanLimits.upper, 2, 1e-14)
    expectRelative(c.mean / b.mean, Math.exp(0.4), 1e-14)
    expectRelative(c.meanLimits.lower / b.meanLimits.lower, Math.exp(0.4), 1e-14)
    expect(c.predictor).toBe(b.predictor)
  })

  it('refuses an effort or a variance that is none', () => {
    expect(() => marginalMeans(design, counted, { ...asked, scale: { link: 'log', effort: 0 } })).toThrow(/effort is 0/)
    expect(() => marginalMeans(design, counted, { ...asked, scale: { ...hour, variances: [-1] } })).toThrow(/variances hold -1/)
  })
})

describe('marginalMeans of salamanders at sites (oracle: glmmTMB and emmeans)', () => {
  const rows = tableOf('count-models/salamanders')
  const columns = {
    spp: levelsOf(rows, 'spp', ['GP', 'PR', 'DM', 'EC-A', 'EC-L', 'DES-L', 'DF']),
    mined: levelsOf(rows, 'mined', ['yes', 'no']),
  }
  const sites = [...new Set(rows.map((row) => row.site ?? ''))]
  const design = designed(designOf(columns, [['spp', 'mined']]))
  const fit = kindOf(
    fitCountModel({
      family: 'nb2',
      counts: numbersOf(rows, 'count'),
      design: design.matrix,
      groupings: [{ name: 'site', of: levelsOf(rows, 'site', sites).of, levels: sites.length }],
    }),
    'fitted',
  )
  const asked = { ...plain, scale: { link: 'log', effort: 1 } } as const

  it.each([
    ['salamanders', ['spp', 'mined']],
    ['salamanders-mined', ['mined']],
  ])('%s', (name, of) => {
    marginalMeans(design, fit, { ...asked, of }).means.forEach((mean, k) => {
      const { predictor, se } = kindOf(mean, 'mean')
      const [estimate = 0, error = 0] = oracle(`${name}/${k + 1}`)
      expectNear(predictor, estimate, 1e-3 * error)
      expectRelative(se, error, 5e-3)
    })
  })
})

describe('marginalMeans where a cell is empty', () => {
  const rows = strips.filter((row) => !(row.strip === 'old' && row.stage === 'late'))
  const design = designed(designOf(columnsOf(rows), [['strip', 'stage']]))
  const { estimates, df } = fitted(design, numbersOf(rows, 'weight'))
  const asked = { ...plain, law: { df } }
  const lost = ['strip: old, and stage: late']

  it('oracle: the same means are estimable as in emmeans, and the others are told by what they hang on', () => {
    for (const [name, of] of [
      ['hole', ['strip', 'stage']],
      ['hole-strip', ['strip']],
    ] as const)
      marginalMeans(design, estimates, { ...asked, of }).means.forEach((mean, k) => {
        const [printed] = oracle(`${name}/${k + 1}`)
        if (printed === undefined) expect(mean).toMatchObject({ kind: 'not-estimable', aliased: lost })
        else expectNear(kindOf(mean, 'mean').predictor, printed, 1e-9)
      })
    expect(marginalMeans(design, estimates, { ...asked, of: ['strip'] }).means[2]).toEqual({
      kind: 'not-estimable',
      at: { strip: 'old' },
      aliased: lost,
    })
  })

  it('a level that no row has is told, and does not weigh in means of others', () => {
    const more = { ...columnsOf(), stage: levelsOf(strips, 'stage', ['early', 'full', 'late', 'over']) }
    const with4 = designed(designOf(more, [['strip'], ['stage']]))
    const with3 = designed(designOf(columnsOf(), [['strip'], ['stage']]))
    const told = (own: TermDesign, of: readonly string[]) =>
      marginalMeans(own, fitted(own, weight).estimates, { ...asked, of }).means
    expect(told(with4, ['stage'])[3]).toEqual({ kind: 'not-estimable', at: { stage: 'over' }, aliased: ['stage: over'] })
    told(with3, ['strip']).forEach((mean, k) => {
      const same = told(with4, ['strip'])[k]
      if (same === undefined) throw new Error('no mean')
      expectNear(kindOf(same, 'mean').predictor, kindOf(mean, 'mean').predictor, 1e-12)
    })
  })

  it('identity: an aliased column bars only sums that break what it equals', () => {
    const minutes = numbersOf(strips, 'minutes')
    const twice = { ...columnsOf(), twice: { kind: 'number', values: minutes.map((own) => 2 * own + 1) } } as const
    const own = designed(designOf(twice, [['strip'], ['minutes'], ['twice']]))
    const fit = fitted(own, weight)
    const at = (numbers: Readonly<Record<string, number>>) =>
      marginalMeans(own, fit.estimates, { ...asked, of: ['strip'], numbers }).means[0]
    expect(at({})).toMatchObject({ kind: 'mean' })
    expect(at({ minutes: 10, twice: 21 })).toMatchObject({ kind: 'mean' })
    expect(at({ minutes: 10, twice: 20 })).toEqual({ kind: 'not-estimable', at: { strip: 'none' }, aliased: ['twice'] })
  })
})

describe('marginalMeans, identities', () => {
  const cells: readonly Row[] = strip.flatMap((own) =>
    ['early', 'late'].flatMap((when) => [1, 2, 3].map(() => ({ strip: own, stage: when }))),
  )
  const response = Float64Array.from(cells, (_, i) => ((i * 7) % 11) + i / 10)
  const columns = (order: readonly string[]) => ({
    strip: levelsOf(cells, 'strip', order),
    stage: levelsOf(cells, 'stage', ['early', 'late']),
  })

  it.each<'equal' | 'rows'>(['equal', 'rows'])('of a balanced table they are the averages of its rows, %s', (weights) => {
    const design = designed(designOf(columns(strip), [['strip', 'stage']]))
    const { means } = marginalMeans(design, fitted(design, response).estimates, { ...plain, weights, of: ['strip'] })
    means.forEach((mean) => {
      const own = [...response].filter((_, i) => cells[i]?.strip === mean.at.strip)
      expectNear(kindOf(mean, 'mean').predictor, own.reduce((sum, value) => sum + value, 0) / own.length, 1e-12)
    })
  })

  it('another reference level changes no mean and no error', () => {
    const told = (order: readonly string[]) => {
      const design = designed(designOf(columns(order), [['strip', 'stage']]))
      const { means } = marginalMeans(design, fitted(design, response).estimates, { ...plain, of: ['strip'] })
      return new Map(means.map((mean) => [mean.at.strip, kindOf(mean, 'mean')]))
    }
    const turned = told(['sown', 'old', 'none'])
    for (const [level, mean] of told(strip)) {
      expectNear(turned.get(level)?.predictor ?? Number.NaN, mean.predictor, 1e-12)
      expectNear(turned.get(level)?.se ?? Number.NaN, mean.se, 1e-12)
    }
  })

  it('of no column there is one mean over all', () => {
    const design = designed(designOf(columns(strip), [['strip'], ['stage']]))
    const { means } = marginalMeans(design, fitted(design, response).estimates, { ...plain, of: [] })
    expect(means).toHaveLength(1)
    expectNear(
      means[0]?.kind === 'mean' ? means[0].predictor : Number.NaN,
      response.reduce((sum, value) => sum + value, 0) / 18,
      1e-12,
    )
  })

  it('refuses what is no column of levels, a column twice, estimates of another design', () => {
    const design = designed(designOf(columnsOf(), [['strip'], ['day']]))
    const { estimates } = fitted(design, weight)
    const means = (change: Partial<MeansAsked>) => () => marginalMeans(design, estimates, { ...plain, of: ['strip'], ...change })
    expect(means({ of: ['day'] })).toThrow(/day is a column of numbers/)
    expect(means({ of: ['strip', 'strip'] })).toThrow(/twice/)
    expect(means({ of: ['stage'] })).toThrow(/no column stage/)
    expect(means({ numbers: { strip: 1 } })).toThrow(/strip is a column of levels/)
    expect(means({ numbers: { day: Number.NaN } })).toThrow(/day is NaN/)
    expect(means({ level: 1 })).toThrow(/level is 1/)
    const other = designed(designOf(columnsOf(), [['strip']]))
    expect(() => marginalMeans(other, estimates, { ...plain, of: ['strip'] })).toThrow(/4 coefficients/)
    const wrong = { ...estimates, covariance: estimates.covariance.map((value, k) => (k % 5 === 0 ? -value : value)) }
    expect(() => marginalMeans(design, wrong, { ...plain, of: ['strip'] })).toThrow(/the variance -/)
  })
})
