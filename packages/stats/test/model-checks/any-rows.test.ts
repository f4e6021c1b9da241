import { createRng } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CountModel, checkCountModel, fitCountModel, influenceOf, matrixOfColumns, suspectsOf } from '../../src/index.ts'

// Identity, by fast-check with a fixed seed: whatever rows are fitted, each check ends in numbers that can be used, or says why not.
const seeded = { seed: 20260611, numRuns: 40 } as const

const row = fc.record({
  count: fc.oneof({ weight: 5, arbitrary: fc.integer({ min: 0, max: 9 }) }, { weight: 1, arbitrary: fc.constantFrom(0, 60) }),
  field: fc.integer({ min: -1, max: 3 }),
  date: fc.oneof(fc.integer({ min: 20_000, max: 20_009 }), fc.constantFrom(Number.NaN, 20_000)),
  warmth: fc.oneof(fc.double({ min: -30, max: 50, noNaN: true }), fc.constantFrom(Number.NaN, 0, Number.POSITIVE_INFINITY)),
})
const family = fc.constantFrom('poisson', 'nb1', 'nb2', 'binomial', 'beta-binomial', 'inflated')
const seen = { fitted: 0, checked: 0 }

type Rows = readonly (typeof row extends fc.Arbitrary<infer Row> ? Row : never)[]
type Name = typeof family extends fc.Arbitrary<infer Own> ? Own : never

function modelOf(rows: Rows, name: Name): CountModel {
  const isShare = name === 'binomial' || name === 'beta-binomial'
  const ones = rows.map(() => 1)
  return {
    family: name === 'inflated' ? 'poisson' : name,
    counts: rows.map(({ count }) => count),
    design: matrixOfColumns(rows.length, [ones, rows.map((_, i) => i % 2)]),
    groupings: [{ name: 'field', of: Int32Array.from(rows, ({ field }) => field + 1), levels: 5 }],
    ...(isShare ? { trials: rows.map(({ count }, i) => count + (i % 4)) } : {}),
    ...(name === 'inflated' ? { zeros: matrixOfColumns(rows.length, [ones]) } : {}),
  }
}

describe('checks of any rows', () => {
  it('identity: usable numbers or a reason', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 20 }), family, async (rows, name) => {
        const model = modelOf(rows, name)
        const fit = fitCountModel(model)
        if (fit.kind !== 'fitted') return
        seen.fitted++
        const fields = rows.map(({ field }) => field)
        const result = await checkCountModel(model, fit, {
          rng: createRng('any'),
          covariates: [
            { kind: 'numbers', name: 'warmth', values: rows.map(({ warmth }) => warmth) },
            { kind: 'levels', name: 'field', of: fields, levels: ['a', 'b', 'c', 'd'] },
          ],
          dates: rows.map(({ date }) => date),
          fields,
          draws: 25,
          refits: 40,
        })
        expect(result.checks.length).toBe(8)
        expect(result.refits.fitted + result.refits.failed).toBe(rows.length < 10 ? 0 : 40)
        for (const residual of [...result.residuals.anew, ...result.residuals.atModes]) {
          expect(residual).toBeGreaterThan(0)
          expect(residual).toBeLessThan(1)
        }
        for (const check of result.checks) {
          if (check.kind === 'not-checked') continue
          seen.checked++
          for (const value of [check.statistic, check.expected.low, check.expected.high])
            expect(Number.isFinite(value)).toBe(true)
          expect(check.p).toBeGreaterThan(0)
          expect(check.holm).toBeGreaterThanOrEqual(check.p)
          expect(check.holm).toBeLessThanOrEqual(1)
          for (const line of check.lines)
            for (const value of [line.found, line.expected, line.least, line.most]) expect(Number.isFinite(value)).toBe(true)
        }
        const influence = await influenceOf(model, fit, fit.aliased.length === 0 ? [{ name: 'odd', weights: [0, 1] }] : [], [
          { name: 'field', of: fields, levels: ['a', 'b', 'c', 'd'] },
        ])
        expect(influence.leftOut.length).toBe(influence.asked)
        for (const part of influence.leftOut)
          if (part.kind === 'refitted')
            for (const sum of part.sums) if (sum.kind === 'estimated') expect(Number.isNaN(sum.change)).toBe(false)
        expect(suspectsOf(result, influence).length).toBeLessThanOrEqual(9)
      }),
      seeded,
    )
    // The property is not empty.
    expect(seen.fitted).toBeGreaterThan(10)
    expect(seen.checked).toBeGreaterThan(30)
  })
})
