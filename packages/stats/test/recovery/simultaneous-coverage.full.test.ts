import { createRng, type Rng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { contrastsOf, designOf, drawNormal, type Law, leastSquares, marginalMeans, type Pairs } from '../../src/index.ts'
import { kindOf } from '../near.ts'

// Recovery: 2,000 seeded sets a cell; four Monte Carlo standard errors (1.9 points at 95 %) on either side.
const sets = 2000
const slack = 4 * Math.sqrt((0.95 * 0.05) / sets)

/** Share of sets in which every true difference lies within its limits: those of all at once, and those of each alone. */
function covered(sizes: readonly number[], pairs: Pairs, seed: string): { readonly atOnce: number; readonly alone: number } {
  const levels = sizes.map((_, k) => `level ${k}`)
  const truth = (level: string | undefined): number => 0.7 * levels.indexOf(level ?? '')
  const of = Int32Array.from(sizes.flatMap((size, k) => Array.from({ length: size }, () => k)))
  const values = Float64Array.from(of, (_, i) => (i * 5) % 7)
  const columns = { level: { kind: 'levels', levels, of }, hour: { kind: 'number', values } } as const
  const design = kindOf(designOf(columns, [['level'], ['hour']]), 'design')
  const one = (rng: Rng): { readonly atOnce: boolean; readonly alone: boolean } => {
    const response = values.map((hour, i) => truth(levels[of[i] ?? 0]) + 0.2 * hour + drawNormal(rng))
    const { coefficients, covariance, aliased, residualSd, df } = kindOf(
      leastSquares({ design: design.matrix, response }),
      'fitted',
    )
    const law: Law = { df }
    const estimates = { coefficients, aliased, covariance: covariance.map((value) => value * residualSd ** 2) }
    const asked = { of: ['level'], weights: 'equal', scale: { link: 'identity' }, law } as const
    const contrasts = contrastsOf(marginalMeans(design, estimates, asked), pairs, rng).contrasts.map((own) => ({
      ...kindOf(own, 'contrast'),
      true: truth(own.of.level) - truth(own.against.level),
    }))
    const holds = (which: 'simultaneous' | 'limits') =>
      contrasts.every((own) => own[which].lower <= own.true && own.true <= own[which].upper)
    return { atOnce: holds('simultaneous'), alone: holds('limits') }
  }
  const rng = createRng(seed)
  const all = Array.from({ length: sets }, (_, set) => one(rng.fork(`${set}`)))
  return { atOnce: all.filter((own) => own.atOnce).length / sets, alone: all.filter((own) => own.alone).length / sets }
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
