import { createRng, InputError } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  drawNormal,
  fitLinearMixed,
  type LinearMixedFitted,
  type LinearMixedModel,
  leastSquares,
  linearMixedContrast,
  linearMixedModes,
  matrixOfColumns,
  matrixOfValues,
} from '../../src/index.ts'
import { kindOf } from '../near.ts'
import { type MadeMeasures, madeMeasures } from './made-measures.ts'

const fitted = (model: LinearMixedModel): LinearMixedFitted => kindOf(fitLinearMixed(model), 'fitted')
const near = (one: number | undefined, other: number | undefined, within: number): void =>
  expect(Math.abs((one as number) - (other as number)), `${one} and ${other}`).toBeLessThan(within)

const richest = { slope: 'free', isCrossed: true, isUneven: true, plots: 2 } as const

describe.each(['full', 'restricted'] as const)('a linear mixed model, %s', (likelihood) => {
  const made = madeMeasures({ seed: 'invariance', ...richest })
  const model: LinearMixedModel = { likelihood, ...made }
  const fit = fitted(model)
  const n = made.design.rows
  const column = (j: number, by = 1): number[] =>
    Array.from({ length: n }, (_, i) => by * (made.design.values[i * 3 + j] as number))

  function expectSameScatter(other: LinearMixedFitted): void {
    near(other.residualSd, fit.residualSd, 1e-4)
    fit.deviations.forEach((own, k) => {
      near(other.deviations[k], own, 1e-4)
    })
    near(other.slope?.deviation, fit.slope?.deviation, 1e-4)
    near(other.slope?.correlation ?? 0, fit.slope?.correlation ?? 0, 1e-3)
  }

  it('identity: a shifted response moves the intercept alone, and so does an offset', () => {
    for (const moved of [
      { ...model, response: Array.from(made.response, (y) => y + 1000) },
      { ...model, offset: Array.from(made.response, () => -1000) },
    ]) {
      const other = fitted(moved)
      near(other.coefficients[0], (fit.coefficients[0] ?? 0) + 1000, 1e-6)
      near(other.coefficients[1], fit.coefficients[1], 1e-6)
      near(other.logLikelihood, fit.logLikelihood, 1e-7)
      expectSameScatter(other)
    }
  })

  it('identity: the unit of the response scales all but the correlation', () => {
    const other = fitted({ ...model, response: Array.from(made.response, (y) => y * 1000) })
    near((other.coefficients[1] ?? 0) / 1000, fit.coefficients[1], 1e-6)
    near((other.standardErrors[1] ?? 0) / 1000, fit.standardErrors[1], 1e-5)
    near(other.residualSd / 1000, fit.residualSd, 1e-5)
    const freedom = likelihood === 'full' ? n : n - 3
    near(other.logLikelihood, fit.logLikelihood - freedom * Math.log(1000), 1e-6)
  })

  it('identity: the unit and the zero of a covariate: coefficient, error and slopes follow', () => {
    const byHours = made.groupings.map((own) =>
      own.slope === undefined ? own : { ...own, slope: { ...own.slope, values: column(2, 24) } },
    )
    const hours = fitted({ ...model, design: matrixOfColumns(n, [column(0), column(1), column(2, 24)]), groupings: byHours })
    near(24 * (hours.coefficients[2] ?? 0), fit.coefficients[2], 1e-6)
    near(24 * (hours.standardErrors[2] ?? 0), fit.standardErrors[2], 1e-5)
    near(24 * (hours.slope?.deviation ?? 0), fit.slope?.deviation, 1e-5)
    near(hours.deviations[0], fit.deviations[0], 1e-4)
    // The restricted likelihood is that of the columns as they came.
    near(hours.logLikelihood, fit.logLikelihood - (likelihood === 'full' ? 0 : Math.log(24)), 1e-7)

    const late = column(2).map((day) => day + 20_000)
    const sloped = made.groupings.map((own) =>
      own.slope === undefined ? own : { ...own, slope: { ...own.slope, values: late } },
    )
    const dayNumbers = fitted({ ...model, design: matrixOfColumns(n, [column(0), column(1), late]), groupings: sloped })
    near(dayNumbers.logLikelihood, fit.logLikelihood, 1e-6)
    near(dayNumbers.coefficients[2], fit.coefficients[2], 1e-6)
    near(dayNumbers.slope?.deviation, fit.slope?.deviation, 1e-5)
  })

  it('identity: the order of rows, of groups and of groupings says nothing', () => {
    const order = Array.from({ length: n }, (_, i) => (i * 37) % n)
    const turn = (values: ArrayLike<number>): number[] => order.map((i) => values[i] as number)
    const other = fitted({
      likelihood,
      response: turn(made.response),
      design: matrixOfColumns(n, [turn(column(0)), turn(column(1)), turn(column(2))]),
      groupings: made.groupings
        .map((own) => ({
          ...own,
          of: Int32Array.from(order, (i) => own.levels - 1 - (own.of[i] as number)),
          ...(own.slope === undefined ? {} : { slope: { ...own.slope, values: turn(own.slope.values) } }),
        }))
        .toReversed(),
    })
    near(other.logLikelihood, fit.logLikelihood, 1e-8)
    for (let j = 0; j < 3; j++) near(other.coefficients[j], fit.coefficients[j], 1e-6)
    expectSameScatter({ ...other, deviations: other.deviations.toReversed() })
  })

  it('identity: an aliased column is left out, and told', () => {
    const twice = fitted({ ...model, design: matrixOfColumns(n, [column(0), column(1), column(2), column(1, 2)]) })
    expect(twice.aliased.map((own) => own.column)).toEqual([3])
    near(twice.coefficients[1], fit.coefficients[1], 1e-8)
    expect(twice.coefficients[3]).toBe(0)
    near(twice.logLikelihood, fit.logLikelihood, 1e-8)
    expect(linearMixedContrast(twice, [0, 1, 0, 0], 8).kind).toBe('not-estimable')
  })

  it('identity: without groupings it is least squares', () => {
    const alone = fitted({ ...model, groupings: [] })
    const straight = kindOf(leastSquares({ design: made.design, response: made.response }), 'fitted')
    const share = likelihood === 'full' ? Math.sqrt(straight.df / n) : 1
    near(alone.residualSd, straight.residualSd * share, 1e-10)
    for (let j = 0; j < 3; j++) {
      near(alone.coefficients[j], straight.coefficients[j], 1e-10)
      near(alone.standardErrors[j], straight.residualSd * share * Math.sqrt(straight.covariance[j * 3 + j] as number), 1e-10)
    }
    expect(alone.parameters).toBe(4)
  })

  it('identity: modes lie about 0, and a level without rows at 0', () => {
    const [field, ...others] = made.groupings
    if (field === undefined) throw new Error('no field')
    const wider = { ...model, groupings: [{ ...field, levels: field.levels + 1 }, ...others] }
    const modes = linearMixedModes(wider, fitted(wider))
    expect(modes.map(({ of }) => of)).toEqual(made.groupings.map(({ name }) => name))
    for (const { intercepts } of modes)
      near(
        intercepts.reduce((sum, value) => sum + value, 0),
        0,
        1e-6,
      )
    expect(modes[0]?.intercepts[field.levels]).toBe(0)
    expect(modes[0]?.slopes?.[field.levels]).toBe(0)
  })
})

describe('balanced fields', () => {
  const made = madeMeasures({ seed: 'balanced', fields: 8, dates: 5 })
  const n = made.response.length
  const design = matrixOfColumns(n, [made.response, made.response].map(() => Array.from({ length: n }, () => 1)).slice(1))
  const fit = fitted({ ...made, design, likelihood: 'restricted' })
  const mean = Array.from(made.response).reduce((sum, y) => sum + y / n, 0)
  const means = Array.from({ length: 8 }, (_, f) =>
    Array.from(made.response).reduce((sum, y, i) => sum + (made.groupings[0]?.of[i] === f ? y / 5 : 0), 0),
  )
  const between = (5 * means.reduce((sum, own) => sum + (own - mean) ** 2, 0)) / 7
  const within =
    Array.from(made.response).reduce((sum, y, i) => sum + (y - (means[made.groupings[0]?.of[i] ?? 0] as number)) ** 2, 0) / 32

  it('identity: restricted variances are those of mean squares', () => {
    near(fit.residualSd ** 2, within, 1e-4)
    near((fit.deviations[0] ?? 0) ** 2, (between - within) / 5, 1e-4)
    near(fit.coefficients[0], mean, 1e-10)
    near(fit.standardErrors[0], Math.sqrt(between / n), 1e-5)
  })

  it('identity: modes are means of fields, pulled in by what they can be relied upon', () => {
    const [modes] = linearMixedModes({ ...made, design, likelihood: 'restricted' }, fit)
    const pull = 1 - within / between
    means.forEach((own, f) => {
      near(modes?.intercepts[f], pull * (own - mean), 1e-4)
    })
  })

  it('oracle: Wald t with the freedom of fields less one', () => {
    const told = kindOf(linearMixedContrast(fit, [1], 7), 'contrast')
    // R 4.2.2: qt(0.975, 7)
    near((told.limits.upper - told.estimate) / told.se, 2.36462425159278, 1e-9)
    expect(told.df).toBe(7)
    expect(() => linearMixedContrast(fit, [1], 0)).toThrow(InputError)
    expect(() => linearMixedContrast(fit, [1, 0], 7)).toThrow(InputError)
  })
})

describe('recovery', () => {
  it('recovery: means over 60 sets lie about the truth', () => {
    const sets = Array.from({ length: 60 }, (_, k) =>
      fitted({
        likelihood: 'restricted',
        ...madeMeasures({ seed: `truth ${k}`, fields: 16, dates: 8, slope: 'apart', isCrossed: true, isUneven: true }),
      }),
    )
    const check = (of: (fit: LinearMixedFitted) => number, truth: number): void => {
      const values = sets.map(of)
      const mean = values.reduce((sum, value) => sum + value / 60, 0)
      const error = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (59 * 60))
      expect(Math.abs(mean - truth), `${mean} for ${truth}`).toBeLessThan(4 * error)
    }
    check((fit) => fit.coefficients[1] ?? 0, 0.8)
    check((fit) => fit.coefficients[2] ?? 0, 0.2)
    check((fit) => fit.residualSd ** 2, 1)
    check((fit) => (fit.slope?.deviation ?? 0) ** 2, 0.09)
    check((fit) => (fit.deviations[0] ?? 0) ** 2, 1)
    check((fit) => (fit.deviations[1] ?? 0) ** 2, 0.36)
  })

  const strained: readonly (readonly [string, Omit<MadeMeasures, 'seed'>])[] = [
    ['typical', richest],
    ['no variance of fields', { ...richest, fieldSd: 0, slopeSd: 0 }],
    ['nothing but residuals', { ...richest, fieldSd: 0, slopeSd: 0, dateSd: 0 }],
    ['fields far apart', { ...richest, fieldSd: 1000 }],
    ['three fields', { ...richest, fields: 3 }],
    ['hardly a residual', { ...richest, residualSd: 1e-4 }],
    ['a residual of a hundred thousandth', { residualSd: 1e-5 }],
  ]
  it.each(strained)('recovery: %s: answered, and never less likely than without its variances', (_, asked) => {
    for (let k = 0; k < 4; k++) {
      const made = madeMeasures({ seed: `strained ${k}`, ...asked })
      for (const likelihood of ['full', 'restricted'] as const) {
        const whole = fitted({ likelihood, ...made })
        for (const groupings of [[], made.groupings.slice(0, 1), made.groupings.slice(1)]) {
          const part = fitted({ likelihood, ...made, groupings })
          expect(whole.logLikelihood).toBeGreaterThan(part.logLikelihood - 1e-6)
        }
        near(whole.residualSd / (asked.residualSd ?? 1), 1, 0.5)
      }
    }
  })

  it('few groups are told', () => {
    const few = fitted({ likelihood: 'restricted', ...madeMeasures({ seed: 'few', fields: 4 }) })
    expect(few.warnings).toContainEqual({ kind: 'few-groups', of: 'field', groups: 4 })
  })
})

describe('a linear mixed model that cannot be fitted', () => {
  const made = madeMeasures({ seed: 'degenerate' })
  const n = made.response.length
  const ones = Array.from({ length: n }, () => 1)
  const likelihoods = ['full', 'restricted'] as const

  it.each(likelihoods)('%s: one row, a constant response, or columns that explain all have no residual', (likelihood) => {
    const one = {
      likelihood,
      response: [3],
      design: matrixOfColumns(1, [[1]]),
      groupings: [{ name: 'field', of: Int32Array.of(0), levels: 1 }],
    }
    expect(fitLinearMixed(one)).toEqual({ kind: 'no-residual' })
    expect(fitLinearMixed({ likelihood, ...made, response: ones.map(() => 0.1) })).toEqual({ kind: 'no-residual' })
    const explained = ones.map((_, i) => 2 + 3 * (made.design.values[i * 3 + 2] as number))
    expect(fitLinearMixed({ likelihood, ...made, response: explained })).toEqual({ kind: 'no-residual' })
  })

  it.each(likelihoods)('%s: groups that explain all have no residual', (likelihood) => {
    const rng = createRng('levels')
    const levels = Array.from({ length: 10 }, () => 7 + drawNormal(rng))
    const response = Array.from(made.groupings[0]?.of ?? [], (f) => levels[f] as number)
    expect(fitLinearMixed({ likelihood, ...made, response })).toEqual({ kind: 'no-residual' })
    const crossed = madeMeasures({ seed: 'exact', isCrossed: true, residualSd: 0 })
    expect(fitLinearMixed({ likelihood, ...crossed })).toEqual({ kind: 'no-residual' })
  })

  const field = made.groupings[0] ?? { name: 'field', of: new Int32Array(n), levels: 1 }
  const blurred: readonly (readonly [string, Partial<LinearMixedModel>, string])[] = [
    ['a group for each row', { groupings: [field, { name: 'row', of: Int32Array.from(ones, (_, i) => i), levels: n }] }, 'row'],
    ['a grouping given twice', { groupings: [field, { ...field, name: 'again' }] }, 'again'],
    ['one level', { groupings: [field, { name: 'valley', of: new Int32Array(n), levels: 1 }] }, 'valley'],
    ['a slope on a covariate that does not vary', { groupings: [{ ...field, slope: { name: 'day', values: ones } }] }, 'field'],
    [
      'fields in the columns too',
      {
        design: matrixOfColumns(n, [
          ones,
          ...Array.from({ length: 9 }, (_, f) => ones.map((_, i) => Number(field.of[i] === f + 1))),
        ]),
      },
      'field',
    ],
    [
      'slopes of pairs of rows',
      {
        groupings: [
          {
            name: 'pair',
            of: Int32Array.from(ones, (_, i) => Math.floor(i / 2)),
            levels: n / 2,
            slope: { name: 'day', values: ones.map((_, i) => i % 2) },
          },
        ],
      },
      'pair',
    ],
  ]
  it.each(blurred)('%s: not identifiable, by name', (_, part, of) => {
    for (const likelihood of likelihoods)
      expect(fitLinearMixed({ likelihood, ...made, ...part })).toEqual({ kind: 'not-identifiable', of })
  })

  const two = { likelihood: 'full', response: [1, 2], design: matrixOfColumns(2, [[1, 1]]) } as const
  const plot = { name: 'plot', of: Int32Array.of(0, 0), levels: 1 }
  it.each([
    ['not a number', { response: [Number.NaN, 1] }],
    ['without end', { response: [Number.POSITIVE_INFINITY, 1] }],
    ['too few', { response: [1] }],
    ['no row', { response: [], design: matrixOfValues(0, 1, new Float64Array(0)) }],
    ['an offset of another length', { offset: [1] }],
    ['an offset without end', { offset: [Number.NEGATIVE_INFINITY, 0] }],
    ['a group that is not there', { groupings: [{ ...plot, of: Int32Array.of(0, 1) }] }],
    ['a grouping of another length', { groupings: [{ ...plot, of: Int32Array.of(0) }] }],
    ['a slope of another length', { groupings: [{ ...plot, slope: { name: 'day', values: [1] } }] }],
    ['a slope that is not a number', { groupings: [{ ...plot, slope: { name: 'day', values: [1, Number.NaN] } }] }],
    [
      'two slopes',
      {
        groupings: [
          { ...plot, slope: { name: 'day', values: [1, 2] } },
          { ...plot, slope: { name: 'day', values: [1, 2] } },
        ],
      },
    ],
  ])('%s is refused by an InputError', (_, part) => {
    expect(() => fitLinearMixed({ ...two, ...part })).toThrow(InputError)
  })

  it('identity: whatever is measured ends in a fit or in a name', () => {
    const kinds = ['fitted', 'no-residual', 'not-identifiable', 'not-converged']
    const seen = new Map<string, number>()
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.integer({ min: 0, max: 3 }), fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constant(0)), {
          minLength: 1,
          maxLength: 24,
        }),
        fc.constantFrom('full', 'restricted'),
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 1, max: 5 }),
        fc.constantFrom('none', 'free', 'apart'),
        (response, likelihood, groups, dates, slope) => {
          const rows = response.length
          const covariate = response.map((_, i) => (i * 7) % 5)
          const fit = fitLinearMixed({
            likelihood: likelihood as 'full',
            response,
            design: matrixOfColumns(rows, [response.map(() => 1), covariate]),
            groupings: [
              {
                ...{ name: 'field', of: Int32Array.from(response, (_, i) => i % groups), levels: groups },
                ...(slope === 'none' ? {} : { slope: { name: 'day', values: covariate, isCorrelated: slope === 'free' } }),
              },
              { name: 'date', of: Int32Array.from(response, (_, i) => Math.floor(i / dates)), levels: Math.ceil(rows / dates) },
            ],
          })
          expect(kinds).toContain(fit.kind)
          seen.set(fit.kind, (seen.get(fit.kind) ?? 0) + 1)
          if (fit.kind !== 'fitted') return
          for (const value of [
            ...fit.coefficients,
            ...fit.standardErrors,
            ...fit.deviations,
            fit.residualSd,
            fit.logLikelihood,
            fit.aic,
          ])
            expect(Number.isFinite(value)).toBe(true)
        },
      ),
      { numRuns: 300, seed: 7 },
    )
    // The trial reaches all the common ends.
    for (const kind of ['fitted', 'no-residual', 'not-identifiable']) expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(5)
    // Sets of a few rows with as many variances, where a likelihood flattens out towards a residual of nothing.
    expect(seen.get('not-converged') ?? 0).toBeLessThan(9)
  })
})
