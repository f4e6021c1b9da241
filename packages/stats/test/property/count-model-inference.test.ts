import { createRng, InputError, unwatched } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bootstrapCountModel,
  bootstrapLikelihoodRatio,
  type CountModel,
  fitCountModel,
  informationCriteria,
  laplaceError,
  likelihoodRatio,
  matrixOfColumns,
  percentileInterval,
  profileInterval,
  waldInterval,
} from '../../src/index.ts'

// Identity, by fast-check with a fixed seed: of whatever was fitted, what follows from the fit is a number that can be used, or an
// InputError. NaN never comes out. Few insects, one field alone, and levels that draws leave empty are the usual case here.

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value]
  if (value instanceof Float64Array) return [...value]
  if (Array.isArray(value)) return value.flatMap(numbersIn)
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(numbersIn)
  return []
}

async function expectSound(run: () => unknown): Promise<void> {
  let outcome: unknown
  try {
    outcome = await run()
  } catch (error) {
    if (error instanceof InputError) return
    throw error
  }
  for (const value of numbersIn(outcome)) expect(Number.isNaN(value)).toBe(false)
}

const modelOf = (counts: readonly number[], family: string, groups: number): CountModel => {
  const one = counts.map(() => 1)
  const isShare = family.endsWith('binomial')
  return {
    family: family as 'poisson',
    counts,
    ...(isShare ? { trials: counts.map((count) => Math.max(count, 3)) } : {}),
    design: matrixOfColumns(counts.length, [one, counts.map((_, i) => i % 2)]),
    groupings: [{ name: 'field', of: Int32Array.from(counts, (_, i) => i % groups), levels: groups }],
  }
}

describe('what follows from a fit to few insects', () => {
  it('identity: never NaN', async () => {
    let fits = 0
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.oneof(fc.nat(2), fc.constant(0), fc.nat(60)), { minLength: 4, maxLength: 16 }),
        fc.constantFrom('poisson', 'nb1', 'nb2', 'binomial', 'beta-binomial'),
        fc.integer({ min: 1, max: 5 }),
        async (counts, family, groups) => {
          const model = modelOf(counts, family, groups)
          const fit = fitCountModel(model)
          if (fit.kind !== 'fitted') return
          fits++
          await expectSound(() => waldInterval(fit, [0, 1], 3))
          await expectSound(() => informationCriteria(fit))
          await expectSound(() => laplaceError(model, fit))
          for (const profiled of [
            { kind: 'coefficients', weights: [0, 1] },
            { kind: 'deviation', of: 'field' },
          ] as const)
            await expectSound(() => {
              const found = profileInterval(model, fit, profiled)
              expect(found.lower).toBeLessThanOrEqual(found.estimate)
              expect(found.upper).toBeGreaterThanOrEqual(found.estimate)
              return found
            })
          await expectSound(async () => {
            const found = await bootstrapCountModel(model, fit, [[0, 1]], 8, createRng('few'), unwatched)
            const failed = Object.values(found.failed).reduce((sum, own) => sum + own, 0)
            expect((found.sums[0]?.length ?? 0) + failed).toBe(8)
            return [found, percentileInterval(found.sums[0] ?? new Float64Array(0))]
          })
          const flat: CountModel = { ...model, groupings: [] }
          const plain = fitCountModel(flat)
          if (plain.kind !== 'fitted') return
          await expectSound(() => likelihoodRatio(fit, plain, 'one-variance'))
          await expectSound(async () => {
            const found = await bootstrapLikelihoodRatio(
              { model, fit },
              { model: flat, fit: plain },
              5,
              createRng('t'),
              unwatched,
            )
            expect(found.p).toBeGreaterThan(0)
            expect(found.p).toBeLessThanOrEqual(1)
            return found
          })
        },
      ),
      { numRuns: 60, seed: 20261128 },
    )
    expect(fits).toBeGreaterThan(25)
  })
})
