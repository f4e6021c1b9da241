import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { effectsOf } from '../../src/count-model/effects/effects.ts'
import { families } from '../../src/count-model/family/families.ts'
import type { FamilyName } from '../../src/count-model/family/family.ts'
import { laplaceOf } from '../../src/count-model/laplace.ts'
import { drawNormal } from '../../src/index.ts'
import { madeCounts } from './made-counts.ts'

const structures = { none: 0, field: 1, 'field and date': 2 } as const

function problemOf(name: FamilyName, structure: keyof typeof structures, isInflated = false) {
  const made = madeCounts({ seed: `${name} ${structure}`, dateSd: structures[structure] === 2 ? 0.3 : 0, mean: 4 })
  const { rows: n } = made.design
  const trials = name.endsWith('binomial') ? Float64Array.from(made.counts, (count) => count + 3) : null
  return laplaceOf({
    family: families[name],
    response: { counts: Float64Array.from(made.counts), trials },
    columns: [new Float64Array(n).fill(1), Float64Array.from({ length: n }, (_, i) => (Math.floor(i / 8) % 2) - 0.5)],
    offset: Float64Array.from(made.offset),
    effects: effectsOf(structure === 'none' ? [] : made.groupings.slice(0, structures[structure])),
    zeros: isInflated ? [new Float64Array(n).fill(1), Float64Array.from({ length: n }, (_, i) => (i % 5) / 4)] : [],
  })
}

describe('the gradient of the Laplace approximation', () => {
  it.each([
    ...(['poisson', 'nb1', 'nb2', 'binomial', 'beta-binomial'] as const).flatMap((name) =>
      (['none', 'field', 'field and date'] as const).map((structure) => [name, structure, false] as const),
    ),
    ...(['poisson', 'nb1', 'nb2'] as const).flatMap((name) =>
      (['none', 'field', 'field and date'] as const).map((structure) => [name, structure, true] as const),
    ),
  ])('identity: %s, %s, zeros %s: equals central differences, near a variance of zero too', (name, structure, isInflated) => {
    const laplace = problemOf(name, structure, isInflated)
    const m = laplace.parameters
    const rng = createRng(`${name} at random`)
    const gradient = new Float64Array(m)
    for (const scale of [1, 0.3, 0.01]) {
      const at = Float64Array.from({ length: m }, (_, k) =>
        k < 2 ? 0.5 * drawNormal(rng) + (k === 0 ? 1 : 0) : scale * (0.5 + Math.abs(drawNormal(rng))),
      )
      laplace.reset()
      const value = laplace.evaluate(at, gradient)
      expect(Number.isFinite(value)).toBe(true)
      for (let k = 0; k < m; k++) {
        const width = 1e-5
        const up = at.slice()
        const down = at.slice()
        up[k] = (at[k] as number) + width
        down[k] = (at[k] as number) - width
        const difference = (laplace.evaluate(up, null) - laplace.evaluate(down, null)) / (2 * width)
        expect(
          Math.abs((gradient[k] as number) - difference) / Math.max(1, Math.abs(difference)),
          `parameter ${k} of ${m}`,
        ).toBeLessThan(2e-6)
      }
    }
  })

  it('identity: a signed standard deviation may have either sign', () => {
    const laplace = problemOf('nb2', 'field')
    const at = Float64Array.from([1, 0.3, 0.5, 0.7])
    const value = laplace.evaluate(at, null)
    laplace.reset()
    expect(
      laplace.evaluate(
        at.map((own, k) => (k < 2 ? own : -own)),
        null,
      ),
    ).toBeCloseTo(value, 10)
  })
})
