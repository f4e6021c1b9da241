import { createRng, type Rng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { multiplierOf } from '../../src/distribution/law.ts'
import {
  contrastsOf,
  designOf,
  drawNormal,
  type Estimates,
  type Law,
  type Levels,
  leastSquares,
  marginalMeans,
  type Pairs,
  predictionsOf,
} from '../../src/index.ts'
import { kindOf } from '../near.ts'

// Recovery: 2,000 seeded sets a cell; four Monte Carlo standard errors (1.9 points at 95 %) on either side.
const sets = 2000
const slack = 4 * Math.sqrt((0.95 * 0.05) / sets)

/** Share of sets in which every true difference lies within its limits: those of all at once, and those of each alone. */
function covered(sizes: readonly number[], pairs: Pairs, seed: string): { readonly atOnce: number; readonly alone: number } {
  const rng = createRng(seed)
  const levels = sizes.map((_, k) => `level ${k}`)
  const truth = ({ level }: Levels): number => 0.7 * levels.indexOf(level ?? '')
  const of = Int32Array.from(sizes.flatMap((size, k) => Array.from({ length: size }, () => k)))
  const values = Float64Array.from(of, (_, i) => (i * 5) % 7)
  const columns = { level: { kind: 'levels', levels, of }, hour: { kind: 'number', values } } as const
  const design = kindOf(designOf(columns, [['level'], ['hour']]), 'design')
  const drawn = (own: Rng): { readonly estimates: Estimates; readonly law: Law } => {
    const response = values.map((hour, i) => truth({ level: levels[of[i] ?? 0] ?? '' }) + 0.2 * hour + drawNormal(own))
    const { coefficients, covariance, aliased, residualSd, df } = kindOf(
      leastSquares({ design: design.matrix, response }),
      'fitted',
    )
    return { estimates: { coefficients, aliased, covariance: covariance.map((value) => value * residualSd ** 2) }, law: { df } }
  }
  const meansOf = ({ estimates, law }: ReturnType<typeof drawn>) =>
    marginalMeans(design, estimates, { of: ['level'], weights: 'equal', scale: { link: 'identity' }, law })

  // The correlation of the differences hangs on the design alone, and so does their multiplier: it is worked out once.
  const first = meansOf(drawn(rng.fork('first')))
  const { contrasts, multiplier } = contrastsOf(first, pairs, rng)
  const rowOf = ({ level }: Levels): Float64Array => first.rows[levels.indexOf(level ?? '')] ?? new Float64Array(0)
  const atOnce = multiplier?.value ?? Number.NaN
  const alone = multiplierOf(first.asked.law, 0.95)
  const reaches = Array.from({ length: sets }, (_, set) => {
    const { estimates, law } = drawn(rng.fork(`${set}`))
    const rows = contrasts.map(({ of: one, against }) => rowOf(one).map((weight, j) => weight - (rowOf(against)[j] ?? 0)))
    const { predictions } = predictionsOf(design, estimates, rows, { scale: { link: 'identity' }, law })
    return Math.max(
      ...predictions.map((own, k) => {
        const { predictor, se } = kindOf(own, 'prediction')
        const { of: one, against } = contrasts[k] ?? { of: {}, against: {} }
        return Math.abs(predictor - truth(one) + truth(against)) / se
      }),
    )
  })
  const share = (reach: number): number => reaches.filter((own) => own <= reach).length / sets
  return { atOnce: share(atOnce), alone: share(alone) }
}

describe('simultaneous limits cover all true differences at once, in 95 of 100 sets', () => {
  it.each<[string, readonly number[], Pairs]>([
    ['all pairs of three groups of 3, 5 and 9', [3, 5, 9], 'all'],
    ['four groups of 3, 4, 4 and 8, each against the first', [3, 4, 4, 8], { against: { level: 'level 0' } }],
  ])('recovery: %s', (name, sizes, pairs) => {
    const { atOnce, alone } = covered(sizes, pairs, name)
    expect(atOnce).toBeGreaterThan(0.95 - slack)
    expect(atOnce).toBeLessThan(0.95 + slack)
    // Limits of each alone do not: that is what the others are for.
    expect(alone).toBeLessThan(0.95 - slack)
  })
})
