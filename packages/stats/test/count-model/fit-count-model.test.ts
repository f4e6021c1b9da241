import { InputError } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CountModel, type CountModelFit, fitCountModel, matrixOfColumns } from '../../src/index.ts'
import { type MadeCounts, madeCounts } from './made-counts.ts'

type Fitted = Extract<CountModelFit, { kind: 'fitted' }>
function fitted(model: CountModel): Fitted {
  const fit = fitCountModel(model)
  if (fit.kind !== 'fitted') throw new Error(fit.kind)
  return fit
}
const near = (one: number, other: number, within: number): void =>
  expect(Math.abs(one - other), `${one} and ${other}`).toBeLessThan(within)

describe('a model of counts', () => {
  const made = madeCounts({ seed: 'invariance' })
  const model: CountModel = { family: 'nb2', ...made }
  const fit = fitted(model)

  it('identity: more effort everywhere moves the intercept alone', () => {
    const moved = fitted({ ...model, offset: Array.from(made.offset, (value) => value + Math.log(3)) })
    near(moved.coefficients[0] ?? 0, (fit.coefficients[0] ?? 0) - Math.log(3), 1e-6)
    near(moved.coefficients[1] ?? 0, fit.coefficients[1] ?? 0, 1e-6)
    near(moved.logLikelihood, fit.logLikelihood, 1e-7)
  })

  it('identity: the order of rows and of groups says nothing', () => {
    const n = made.design.rows
    const order = Array.from({ length: n }, (_, i) => (i * 37) % n)
    const column = (j: number): number[] => order.map((i) => made.design.values[i * 3 + j] as number)
    const turned = fitted({
      family: 'nb2',
      counts: order.map((i) => made.counts[i] as number),
      offset: order.map((i) => made.offset[i] as number),
      design: matrixOfColumns(n, [column(0), column(1), column(2)]),
      groupings: made.groupings.map((own) => ({
        ...own,
        of: Int32Array.from(order, (i) => own.levels - 1 - (own.of[i] as number)),
      })),
    })
    near(turned.logLikelihood, fit.logLikelihood, 1e-8)
    for (let j = 0; j < 3; j++) near(turned.coefficients[j] ?? 0, fit.coefficients[j] ?? 0, 1e-6)
  })

  it('identity: the unit of a covariate scales its coefficient and its error', () => {
    const n = made.design.rows
    const column = (j: number, by: number): number[] =>
      Array.from({ length: n }, (_, i) => (made.design.values[i * 3 + j] as number) * by)
    const weeks = fitted({ ...model, design: matrixOfColumns(n, [column(0, 1), column(1, 1), column(2, 1 / 7)]) })
    near(weeks.coefficients[2] ?? 0, 7 * (fit.coefficients[2] ?? 0), 1e-6)
    near((weeks.standardErrors[2] ?? 0) / (7 * (fit.standardErrors[2] ?? 1)), 1, 1e-4)
    near(weeks.logLikelihood, fit.logLikelihood, 1e-7)
  })

  it('identity: NB2 and NB1 of counts without overdispersion are Poisson, and say so', () => {
    const plain = madeCounts({ seed: 'plain', theta: Number.POSITIVE_INFINITY })
    const poisson = fitted({ family: 'poisson', ...plain })
    for (const family of ['nb1', 'nb2'] as const) {
      const own = fitted({ family, ...plain })
      expect(own.logLikelihood).toBeGreaterThan(poisson.logLikelihood - 1e-6)
      near(own.coefficients[1] ?? 0, poisson.coefficients[1] ?? 0, 0.02)
    }
  })

  it('identity: an aliased column is left out, and told', () => {
    const n = made.design.rows
    const column = (j: number): number[] => Array.from({ length: n }, (_, i) => made.design.values[i * 3 + j] as number)
    const twice = fitted({ ...model, design: matrixOfColumns(n, [column(0), column(1), column(2), column(1)]) })
    expect(twice.aliased.map((own) => own.column)).toEqual([3])
    near(twice.coefficients[1] ?? 0, fit.coefficients[1] ?? 0, 1e-6)
    expect(twice.coefficients[3]).toBe(0)
  })

  it('a variance of nothing is told as a result', () => {
    const none = fitted({
      family: 'poisson',
      ...madeCounts({ seed: 'no variance', fieldSd: 0, theta: Number.POSITIVE_INFINITY, mean: 40 }),
    })
    expect(none.deviations[0]).toBeLessThan(0.1)
    const few = fitted({ family: 'poisson', ...madeCounts({ seed: 'few', groups: 4 }) })
    expect(few.warnings).toContainEqual({ kind: 'few-groups', of: 'field', groups: 4 })
  })
})

describe('a model of counts that cannot be fitted', () => {
  const made = madeCounts({ seed: 'degenerate' })
  it('nothing but zeros, or everything of all trials', () => {
    const zero = Array.from(made.counts, () => 0)
    expect(fitCountModel({ family: 'nb2', ...made, counts: zero }).kind).toBe('all-zero')
    const full = Array.from(made.counts, () => 5)
    expect(fitCountModel({ family: 'binomial', ...made, counts: full, trials: full }).kind).toBe('all-trials')
  })

  it.each(['poisson', 'nb1', 'nb2'] as const)(
    '%s: a level without a single insect is separated, with its direction',
    (family) => {
      const counts = Array.from(made.counts, (count, i) => (made.design.values[i * 3 + 1] === 1 ? 0 : count))
      const fit = fitCountModel({ family, ...made, counts })
      expect(fit.kind).toBe('separated')
      if (fit.kind === 'separated') expect(fit.direction[1]).toBeLessThan(0)
    },
  )

  it('shares of none and all by level are separated', () => {
    const counts: number[] = Array.from(made.counts, (_, i) => (made.design.values[i * 3 + 1] === 1 ? 0 : 3))
    counts[0] = 2
    const trials = counts.map((_, i) => (i === 0 ? 4 : 6))
    expect(fitCountModel({ family: 'binomial', ...made, counts, trials }).kind).toBe('separated')
  })

  it.each([
    ['halves', { counts: [0.5, 1] }],
    ['below zero', { counts: [-1, 1] }],
    ['not a number', { counts: [Number.NaN, 1] }],
    ['too few', { counts: [1] }],
    ['more than all', { counts: [3, 1], trials: [2, 2], family: 'binomial' as const }],
    ['an offset without end', { counts: [1, 1], offset: [Number.NEGATIVE_INFINITY, 0] }],
    ['a group that is not there', { counts: [1, 1], groupings: [{ name: 'field', of: Int32Array.of(0, 2), levels: 2 }] }],
  ])('%s is refused by name', (_, part) => {
    expect(() => fitCountModel({ family: 'poisson', design: matrixOfColumns(2, [[1, 1]]), ...part })).toThrow(InputError)
  })

  it('identity: whatever is counted ends in a fit or in a name', () => {
    const kinds = ['fitted', 'all-zero', 'all-trials', 'separated', 'not-identifiable', 'not-converged']
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.nat(3), fc.nat(200), fc.constant(0)), { minLength: 1, maxLength: 24 }),
        fc.constantFrom('poisson', 'nb1', 'nb2'),
        fc.integer({ min: 1, max: 6 }),
        (counts, family, groups) => {
          const n = counts.length
          const fit = fitCountModel({
            family: family as 'poisson',
            counts,
            design: matrixOfColumns(n, [counts.map(() => 1), counts.map((_, i) => i % 2)]),
            groupings: [{ name: 'field', of: Int32Array.from(counts, (_, i) => i % groups), levels: groups }],
          })
          expect(kinds).toContain(fit.kind)
          if (fit.kind === 'fitted')
            for (const value of [...fit.coefficients, ...fit.standardErrors, fit.logLikelihood])
              expect(Number.isFinite(value)).toBe(true)
        },
      ),
      { numRuns: 80, seed: 7 },
    )
  })
})

const families: readonly (readonly [string, Omit<MadeCounts, 'seed'>])[] = [
  ['typical', {}],
  ['no variance between fields', { fieldSd: 0 }],
  ['Poisson fitted as NB2', { theta: Number.POSITIVE_INFINITY }],
  ['neither', { fieldSd: 0, theta: Number.POSITIVE_INFINITY }],
  ['rare', { mean: 0.3 }],
  ['very rare', { mean: 0.05 }],
  ['large counts', { mean: 300 }],
  ['fields far apart', { fieldSd: 2 }],
  ['five fields, six visits', { groups: 5, visits: 6 }],
  ['crossed', { dateSd: 0.4 }],
]

describe('the families that strain a search', () => {
  it.each(families)('recovery: %s: answered, and never less likely than its Poisson edge', (name, asked) => {
    let answered = 0
    for (let k = 0; k < 12; k++) {
      const made = madeCounts({ seed: `${name} ${k}`, ...asked })
      const fit = fitCountModel({ family: 'nb2', ...made })
      if (fit.kind !== 'fitted') continue
      answered++
      // A Poisson model is an NB2 model at its edge: never more likely.
      const poisson = fitCountModel({ family: 'poisson', ...made })
      if (poisson.kind === 'fitted') expect(fit.logLikelihood).toBeGreaterThan(poisson.logLikelihood - 1e-4)
    }
    expect(answered).toBeGreaterThan(name === 'very rare' ? 3 : 10)
  })
})
