import { createRng, InputError } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as stats from '../../src/index.ts'

// Identity, by fast-check with a fixed seed: whatever is asked, the outcome is a number that can be used, a named refusal, or an
// InputError. NaN never comes out.
const seeded = { seed: 20260101, numRuns: 300 } as const

/** Every number in a value, at any depth. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value]
  if (value instanceof Float64Array) return [...value]
  if (Array.isArray(value)) return value.flatMap(numbersIn)
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(numbersIn)
  return []
}

/** Runs it; holds that no NaN came out, or that the refusal was an InputError. */
function expectSound(run: () => unknown): void {
  let outcome: unknown
  try {
    outcome = run()
  } catch (error) {
    if (error instanceof InputError) return
    throw error
  }
  for (const value of numbersIn(outcome)) expect(Number.isNaN(value)).toBe(false)
}

// Sizes from 1e-100 to 1e100, and both infinities: beyond, products of two arguments overflow, and no count or minute is there.
const oddNumber = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 0.5, 1e-100, 1e100, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY),
  fc.integer({ min: -3, max: 40 }),
  fc.double({ min: -1e100, max: 1e100 }).filter((x) => x === 0 || Math.abs(x) > 1e-100),
)
const count = fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 0, max: 30 }) }, { weight: 1, arbitrary: oddNumber })
const level = fc.constantFrom(0.5, 0.9, 0.95, 0.9995)

describe('nothing gives NaN', () => {
  it('distributions', () => {
    fc.assert(
      fc.property(oddNumber, oddNumber, oddNumber, (a, b, c) => {
        expectSound(() => stats.logGamma(a))
        expectSound(() => stats.normalTails(a))
        expectSound(() => stats.normalQuantile(a))
        expectSound(() => stats.studentTails(a, Math.min(b, 1e6)))
        expectSound(() => stats.studentQuantile(a, Math.min(b, 1e6)))
        expectSound(() => stats.chiSquareTails(a, Math.min(b, 1e6)))
        expectSound(() => stats.poissonTails(a, Math.min(b, 1e6)))
        expectSound(() => stats.binomialTails(a, b, c))
        expectSound(() => stats.negativeBinomialLogPmf(a, b, c))
      }),
      seeded,
    )
  })

  it('counts and shares', () => {
    fc.assert(
      fc.property(count, count, count, count, level, (a, b, c, d, coverage) => {
        expectSound(() => stats.poissonInterval(a, coverage))
        expectSound(() => stats.rateRatioExact({ count1: a, effort1: b, count2: c, effort2: d, level: coverage }))
        expectSound(() => stats.rateRatioMidP({ count1: a, effort1: b, count2: c, effort2: d, level: coverage }))
        expectSound(() => stats.oddsRatioExact(a, b, c, d, coverage))
        expectSound(() => stats.oddsExact(a, b, coverage))
        expectSound(() => stats.wilsonInterval(a, b, coverage))
        expectSound(() => stats.goodmanIntervals([a, b, c, d], coverage))
      }),
      seeded,
    )
  })

  it('several units, from none to nine', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(count, count), { maxLength: 9 }), level, (units, coverage) => {
        const parts = units.map(([a]) => a)
        const wholes = units.map(([a, b]) => a + b)
        expectSound(() => stats.ratioOfSums({ totals: parts, efforts: units.map(([, b]) => b), level: coverage }))
        expectSound(() => stats.meanOfRates({ totals: parts, efforts: units.map(([, b]) => b), level: coverage }))
        expectSound(() => stats.shareOfSums({ parts, wholes, level: coverage }))
        expectSound(() => stats.poissonDispersion(parts, stats.expectedAtOneRate(parts, wholes)))
      }),
      seeded,
    )
  })

  const unit = fc.record({
    z: fc.oneof({ weight: 12, arbitrary: fc.constantFrom(0, 1, 1, 2.5, -0.3) }, { weight: 1, arbitrary: oddNumber }),
    level: fc.integer({ min: 0, max: 2 }),
    block: fc.integer({ min: 0, max: 2 }),
    nuisance: fc.constantFrom(0, 1, 20000, 20003, 5),
  })

  it('contrasts of units: ties, one level, one unit, levels lost in blocks', () => {
    fc.assert(
      fc.property(fc.array(unit, { maxLength: 9 }), (units) => {
        const z = units.map((u) => u.z)
        const level = units.map((u) => u.level)
        const block = units.map((u) => u.block)
        const nuisance = [units.map((u) => u.nuisance)]
        const rng = createRng('degenerate')
        expectSound(() => stats.betweenUnits({ z, level, block, nuisance }))
        expectSound(() => stats.betweenUnits({ z, level }))
        expectSound(() => stats.withinUnits({ first: z, second: z.toReversed(), nuisance }))
        expectSound(() => stats.unitSlope({ z, value: nuisance[0] ?? [], block }))
        expectSound(() => stats.withinSlopes({ z, value: nuisance[0] ?? [], unit: block }))
        expectSound(() => stats.testByReassignment({ z, level, block, nuisance, rng, enumerate: 200, draws: 50 }))
        expectSound(() => stats.testBySignFlips({ differences: z, nuisance, rng, enumerate: 200, draws: 50 }))
      }),
      seeded,
    )
  })

  it('least squares: designs that lose rank, columns empty, constant or repeated', () => {
    const entry = fc.constantFrom(0, 0, 1, 1, 2, -1, 20000, 1e-9, 1e9)
    const designs = fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 6 }))
      .chain(([n, p]) => fc.array(fc.array(entry, { minLength: n, maxLength: n }), { minLength: p, maxLength: p }))
    fc.assert(
      fc.property(designs, (columns) => {
        const n = columns[0]?.length ?? 0
        const response = Array.from({ length: n }, (_, i) => Math.sin(i + 1))
        const design = stats.matrixOfColumns(n, columns)
        expectSound(() => {
          const fit = stats.leastSquares({ design, response })
          return [
            fit,
            columns.map((_, j) =>
              stats.contrastInterval(
                fit,
                columns.map((__, k) => Number(j === k)),
              ),
            ),
          ]
        })
        expectSound(() => stats.varianceInflation(columns.map((column) => [column])))
        expectSound(() => stats.inflation({ base: columns, contrast: 0, nuisance: columns.slice(1) }))
        expectSound(() => columns.map((column) => stats.residualRange(column, columns)))
      }),
      seeded,
    )
  })

  it('terms of a model, its means, contrasts and predictions', () => {
    const place = fc.oneof(
      { weight: 40, arbitrary: fc.integer({ min: 0, max: 2 }) },
      { weight: 1, arbitrary: fc.constantFrom(-1, 3) },
    )
    const name = fc.oneof(
      { weight: 40, arbitrary: fc.constantFrom('strip', 'stage', 'day') },
      { weight: 1, arbitrary: fc.constant('hives') },
    )
    const cells = fc.array(fc.tuple(place, fc.integer({ min: 0, max: 2 }), count, count), {
      maxLength: 20,
    })
    const terms = fc.array(fc.uniqueArray(name, { minLength: 1, maxLength: 3 }), { maxLength: 3 })
    const scale = fc.oneof(
      fc.constant({ link: 'identity' } as const),
      fc.constant({ link: 'logit' } as const),
      fc.record({ link: fc.constant('log' as const), effort: count, variances: fc.array(count, { maxLength: 2 }) }),
    )
    fc.assert(
      fc.property(cells, terms, scale, oddNumber, level, (rows, asked, told, number, coverage) => {
        expectSound(() => {
          const of = (k: 0 | 1) => Int32Array.from(rows, (row) => row[k])
          const columns = {
            strip: { kind: 'levels', levels: ['none', 'sown', 'old'], of: of(0) },
            stage: { kind: 'levels', levels: ['early', 'full', 'late'], of: of(1) },
            day: { kind: 'number', values: rows.map(([, , day]) => day) },
          } as const
          const design = stats.designOf(columns, asked)
          if (design.kind !== 'design') return design
          const fit = stats.leastSquares({ design: design.matrix, response: rows.map(([, , , own]) => own) })
          const telling = { scale: told, law: number > 0 ? { df: Math.min(number, 1e6) } : 'normal', level: coverage } as const
          const levels = Object.keys(design.of).filter((name) => name !== 'day')
          const means = stats.marginalMeans(design, fit, { ...telling, of: levels, weights: 'rows' })
          const equal = stats.marginalMeans(design, fit, { ...telling, of: levels.slice(0, 1), weights: 'equal' })
          const predictions = stats.predictionsOf(design, fit, means.rows, telling)
          return [means.means, equal.means, predictions, stats.contrastsOf(equal, 'all', createRng('pairs'))]
        })
      }),
      seeded,
    )
  })
})

describe('what must hold whatever is counted', () => {
  it('limits hold their estimate and are wider at a higher level', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 1, max: 5000 }), (a, b) => {
        const narrow = stats.poissonInterval(a, 0.9)
        const wide = stats.poissonInterval(a, 0.99)
        expect(narrow.lower).toBeLessThanOrEqual(a)
        expect(narrow.upper).toBeGreaterThan(a)
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower)
        expect(wide.upper).toBeGreaterThan(narrow.upper)
        const share = stats.clopperPearsonInterval(Math.min(a, b), b)
        expect(share.lower).toBeLessThanOrEqual(share.estimate)
        expect(share.upper).toBeGreaterThanOrEqual(share.estimate)
      }),
      seeded,
    )
  })

  it('an aliased column is the combination that it is said to equal', () => {
    const small = fc.integer({ min: -3, max: 3 })
    fc.assert(
      fc.property(
        fc.array(fc.array(small, { minLength: 6, maxLength: 6 }), { minLength: 3, maxLength: 3 }),
        fc.tuple(small, small, small),
        ([a = [], b = [], c = []], [wa, wb, wc]) => {
          const sum = a.map((v, i) => wa * v + wb * (b[i] ?? 0) + wc * (c[i] ?? 0))
          const columns = [a, b, c, sum]
          const fit = stats.leastSquares({ design: stats.matrixOfColumns(6, columns), response: [1, 2, 0, 3, 1, 5] })
          expect(fit.aliased.map((alias) => alias.column)).toContain(3)
          for (const { column, equals } of fit.aliased) {
            for (let i = 0; i < 6; i++) {
              const built = equals.reduce((total, term) => total + term.weight * (columns[term.column]?.[i] ?? 0), 0)
              expect(Math.abs(built - (columns[column]?.[i] ?? 0))).toBeLessThan(1e-9)
            }
          }
        },
      ),
      seeded,
    )
  })

  it('a permutation p is at least the smallest one of the design, and never above 1', () => {
    const rng = createRng('bounds')
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 1 })), { minLength: 2, maxLength: 9 }),
        (units) => {
          const z = units.map(([value]) => value)
          const dealt = units.map(([, own]) => own)
          const got = stats.testByReassignment({ z, level: dealt, rng })
          if (got.kind !== 'tested') return
          expect(got.p).toBeGreaterThanOrEqual(got.smallestP)
          expect(got.p).toBeLessThanOrEqual(1)
          expect(got.smallestP).toBe(stats.smallestReassignmentP(dealt))
        },
      ),
      seeded,
    )
  })
})
