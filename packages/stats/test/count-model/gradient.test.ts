import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { effectsOf } from '../../src/count-model/effects/effects.ts'
import type { Grouping } from '../../src/count-model/effects/grouping.ts'
import { families } from '../../src/count-model/family/families.ts'
import type { FamilyName } from '../../src/count-model/family/family.ts'
import { laplaceOf } from '../../src/count-model/laplace.ts'
import type { Objective } from '../../src/count-model/objective.ts'
import { quadratureOf } from '../../src/count-model/quadrature.ts'
import type { RowProblem } from '../../src/count-model/row-model.ts'
import { drawNormal } from '../../src/index.ts'
import { madeCounts } from './made-counts.ts'

type Structure = (made: {
  readonly field: Grouping
  readonly date: Grouping
  readonly warmth: Float64Array
}) => readonly Grouping[]

const slopes = (warmth: Float64Array, isCorrelated: boolean) => ({ name: 'warmth', values: warmth, isCorrelated })
const structures = {
  none: () => [],
  field: ({ field }) => [field],
  'field and date': ({ field, date }) => [field, date],
  'slopes by field': ({ field, warmth }) => [{ ...field, slope: slopes(warmth, true) }],
  'slopes by field, apart': ({ field, warmth }) => [{ ...field, slope: slopes(warmth, false) }],
  'slopes by field, and date': ({ field, date, warmth }) => [{ ...field, slope: slopes(warmth, true) }, date],
  'slopes by field, apart, and date': ({ field, date, warmth }) => [date, { ...field, slope: slopes(warmth, false) }],
  'field, date and pair of fields': ({ field, date }) => [
    field,
    date,
    { name: 'pair', of: field.of.map((place) => Math.floor(place / 2)), levels: field.levels / 2 },
  ],
  'slopes by field and by date': ({ field, date, warmth }) => [
    { ...field, slope: slopes(warmth, true) },
    { ...date, slope: slopes(warmth, false) },
  ],
} satisfies { readonly [name: string]: Structure }
type StructureName = keyof typeof structures
const isName = (name: string): name is StructureName => name in structures
const allStructures = Object.keys(structures).filter(isName)

function problemOf(name: FamilyName, structure: StructureName, isInflated = false): RowProblem {
  const made = madeCounts({ seed: `${name} ${structure}`, dateSd: 0.3, mean: 4 })
  const { rows: n } = made.design
  const [field, date] = made.groupings
  if (field === undefined || date === undefined) throw new Error('made counts have fields and dates')
  const rng = createRng(`warmth of ${structure}`)
  const warmth = Float64Array.from({ length: n }, () => drawNormal(rng))
  return {
    family: families[name],
    response: {
      counts: Float64Array.from(made.counts),
      trials: name.endsWith('binomial') ? Float64Array.from(made.counts, (count) => count + 3) : null,
    },
    columns: [new Float64Array(n).fill(1), Float64Array.from({ length: n }, (_, i) => (Math.floor(i / 8) % 2) - 0.5)],
    offset: Float64Array.from(made.offset),
    effects: effectsOf(structures[structure]({ field, date, warmth })),
    zeros: isInflated ? [new Float64Array(n).fill(1), Float64Array.from({ length: n }, (_, i) => (i % 5) / 4)] : [],
  }
}

/** Places to look at: all behind the two coefficients at random about `scale`. */
function placesOf(label: string, m: number, scales: readonly number[]): readonly Float64Array[] {
  const rng = createRng(`${label} at random`)
  return scales.map((scale) =>
    Float64Array.from({ length: m }, (_, k) =>
      k < 2 ? 0.5 * drawNormal(rng) + (k === 0 ? 1 : 0) : scale * (0.5 + Math.abs(drawNormal(rng))),
    ),
  )
}

/**
 * Of each parameter, relative to the difference where that is above 1. Differences of the fourth order: wide enough that the modes, which
 * are found to some 1e-10, leave less than 1e-6 in them.
 */
function expectDifferences(objective: Objective, at: Float64Array, within: number): void {
  const m = objective.parameters
  const gradient = new Float64Array(m)
  objective.reset()
  expect(Number.isFinite(objective.evaluate(at, gradient))).toBe(true)
  const width = 2e-4
  for (let k = 0; k < m; k++) {
    const moved = (by: number): number => objective.evaluate(at.with(k, (at[k] as number) + by), null)
    const difference = (8 * (moved(width) - moved(-width)) - (moved(2 * width) - moved(-2 * width))) / (12 * width)
    const apart = Math.abs((gradient[k] as number) - difference) / Math.max(1, Math.abs(difference))
    expect(apart, `parameter ${k} of ${m}`).toBeLessThan(within)
  }
}

const ofDifferences = 1e-6
const inflatable = ['poisson', 'nb1', 'nb2'] as const
const cases = [
  ...([...inflatable, 'binomial', 'beta-binomial'] as const).flatMap((name) =>
    allStructures.map((structure) => [name, structure, false] as const),
  ),
  ...inflatable.flatMap((name) => allStructures.map((structure) => [name, structure, true] as const)),
]

describe('the gradient of the Laplace approximation', () => {
  it.each(cases)(
    'identity: %s, %s, zeros %s: equals central differences, near a variance of zero too',
    (name, structure, isInflated) => {
      const laplace = laplaceOf(problemOf(name, structure, isInflated))
      for (const at of placesOf(name, laplace.parameters, [1, 0.3, 0.01])) expectDifferences(laplace, at, ofDifferences)
    },
  )

  it('identity: a signed standard deviation may have either sign', () => {
    const laplace = laplaceOf(problemOf('nb2', 'field'))
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

  it('identity: a slope that goes with the intercept may have either sign together with it', () => {
    const laplace = laplaceOf(problemOf('nb2', 'slopes by field'))
    // Intercept, treatment, SD of intercepts, slope along, slope apart, root of the dispersion.
    const at = Float64Array.from([1, 0.3, 0.5, 0.2, 0.3, 0.7])
    const value = laplace.evaluate(at, null)
    laplace.reset()
    expect(laplace.evaluate(Float64Array.from([1, 0.3, -0.5, -0.2, -0.3, 0.7]), null)).toBeCloseTo(value, 10)
    laplace.reset()
    expect(Math.abs(laplace.evaluate(Float64Array.from([1, 0.3, 0.5, -0.2, 0.3, 0.7]), null) - value)).toBeGreaterThan(1e-3)
  })
})

describe('quadrature', () => {
  const byNodes = (problem: RowProblem, nodes: number) => quadratureOf(problem.effects, laplaceOf(problem), nodes)
  const all = [
    ...(['poisson', 'nb1', 'nb2', 'binomial', 'beta-binomial'] as const).map((name) => [name, false] as const),
    ...inflatable.map((name) => [name, true] as const),
  ]

  // The gradient is that of the integral: 15 nodes have it to some 1e-5 at the widest of these spreads, 25 as well as differences tell.
  it.each(
    all.flatMap(([name, isInflated]) => [[name, isInflated, 15, 1e-5] as const, [name, isInflated, 25, ofDifferences] as const]),
  )(
    'identity: %s, zeros %s, %i nodes: the gradient equals central differences of the value',
    (name, isInflated, nodes, within) => {
      const quadrature = byNodes(problemOf(name, 'field', isInflated), nodes)
      for (const at of placesOf(name, quadrature.parameters, [0.5, 0.3, 0.01])) expectDifferences(quadrature, at, within)
    },
  )

  it.each(all)('identity: %s, zeros %s: one node is the Laplace approximation', (name, isInflated) => {
    const problem = problemOf(name, 'field', isInflated)
    const laplace = laplaceOf(problem)
    const quadrature = byNodes(problem, 1)
    for (const at of placesOf(name, laplace.parameters, [1, 0.3])) {
      laplace.reset()
      quadrature.reset()
      const value = laplace.evaluate(at, null)
      expect(Math.abs(quadrature.evaluate(at, null) / value - 1)).toBeLessThan(1e-12)
    }
  })

  it.each(all)('identity: %s, zeros %s: 51 nodes say what 25 say', (name, isInflated) => {
    const problem = problemOf(name, 'field', isInflated)
    const [some, more] = [byNodes(problem, 25), byNodes(problem, 51)]
    for (const at of placesOf(name, some.parameters, [0.5, 0.3])) {
      const value = some.evaluate(at, null)
      expect(Math.abs(more.evaluate(at, null) - value), `${value}`).toBeLessThan(1e-9)
    }
  })
})
