import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { cholesky, solveCholesky } from '../../src/count-model/symmetric.ts'
import { drawNormal, type LinearMixedModel } from '../../src/index.ts'
import { prepareModel } from '../../src/linear-mixed/prepared-model.ts'
import { profileOf } from '../../src/linear-mixed/profile.ts'
import { entryOf } from '../../src/linear-mixed/random-terms.ts'
import { relativeScatterOf } from '../../src/linear-mixed/relative-scatter.ts'
import { type MadeMeasures, madeMeasures } from './made-measures.ts'

const structures: { readonly [name: string]: Omit<MadeMeasures, 'seed'> } = {
  'one grouping': {},
  'crossed, more dates than fields': { isCrossed: true, fields: 4, dates: 9, isUneven: true },
  'nested and crossed': { isCrossed: true, plots: 3, fields: 6, dates: 4, isUneven: true },
  'a slope that goes with its intercept': { slope: 'free', isUneven: true },
  'a slope apart': { slope: 'apart', isUneven: true },
  'a slope of the lesser grouping': { slope: 'free', isCrossed: true, plots: 4, fields: 4, dates: 5, isUneven: true },
  'a slope of the greater grouping': { slope: 'free', isCrossed: true, fields: 8, dates: 5, isUneven: true },
}
const cases = Object.entries(structures).flatMap(([name, asked]) =>
  (['full', 'restricted'] as const).map((likelihood) => ({ name, asked, likelihood })),
)

const prepared = (seed: string, asked: Omit<MadeMeasures, 'seed'>, likelihood: LinearMixedModel['likelihood']) => {
  const model = { ...madeMeasures({ seed, ...asked }), likelihood }
  return { model, problem: prepareModel(model, Float64Array.from(model.response)).problem }
}

/** The log likelihood from the whole variance matrix, n by n. */
function straight(
  model: LinearMixedModel,
  problem: ReturnType<typeof prepared>['problem'],
  blocks: readonly Float64Array[],
): number {
  const { rows: n, columns: p } = model.design
  const factor = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      let sum = Number(i === j)
      problem.terms.forEach((term, k) => {
        if (term.of[i] !== term.of[j]) return
        const { width } = term
        for (let c = 0; c < width; c++) {
          let left = 0
          let right = 0
          for (let a = 0; a < width; a++) {
            left += entryOf(term, a, i) * (blocks[k]?.[a * width + c] as number)
            right += entryOf(term, a, j) * (blocks[k]?.[a * width + c] as number)
          }
          sum += left * right
        }
      })
      factor[i * n + j] = sum
    }
  expect(cholesky(factor, n)).toBe(true)
  const solve = (x: ArrayLike<number>): Float64Array => {
    const own = Float64Array.from(x)
    solveCholesky(factor, n, own)
    return own
  }
  const dot = (one: ArrayLike<number>, other: ArrayLike<number>): number =>
    Array.from(one).reduce((sum, value, i) => sum + value * (other[i] as number), 0)
  const columns = Array.from({ length: p }, (_, j) =>
    Array.from({ length: n }, (_, i) => model.design.values[i * p + j] as number),
  )
  const information = Float64Array.from(columns.flatMap((one) => columns.map((other) => dot(one, solve(other)))))
  const right = Float64Array.from(columns, (column) => dot(column, solve(model.response)))
  const whole = information.slice()
  expect(cholesky(information, p)).toBe(true)
  const b = right.slice()
  solveCholesky(information, p, b)
  const left = Array.from(
    model.response,
    (y, i) => y - columns.reduce((sum, column, j) => sum + (column[i] as number) * (b[j] as number), 0),
  )
  const freedom = model.likelihood === 'full' ? n : n - p
  const logOf = (triangle: Float64Array, size: number): number =>
    Array.from({ length: size }, (_, i) => 2 * Math.log(triangle[i * size + i] as number)).reduce((sum, value) => sum + value, 0)
  const extra = model.likelihood === 'full' ? 0 : logOf(information, p)
  expect(whole.length).toBe(p * p)
  return -(logOf(factor, n) + extra + freedom * (1 + Math.log((2 * Math.PI * dot(left, solve(left))) / freedom))) / 2
}

describe('the profiled likelihood of a linear mixed model', () => {
  it.each(cases)(
    'identity: $name, $likelihood: equals the likelihood of the whole variance matrix',
    ({ name, asked, likelihood }) => {
      const { model, problem } = prepared(name, asked, likelihood)
      const scatter = relativeScatterOf(problem.terms)
      const rng = createRng(name)
      for (const scale of [0.1, 1, 3]) {
        const blocks = scatter.blocksAt(Float64Array.from({ length: scatter.parameters }, () => scale * drawNormal(rng)))
        const expected = straight(model, problem, blocks)
        expect(Math.abs((profileOf(problem).at(blocks, null)?.logLikelihood ?? 0) - expected)).toBeLessThan(1e-8)
      }
    },
  )

  it.each(cases)(
    'identity: $name, $likelihood: its gradient equals central differences, near zero too',
    ({ name, asked, likelihood }) => {
      const { problem } = prepared(name, asked, likelihood)
      const scatter = relativeScatterOf(problem.terms)
      const profile = profileOf(problem)
      const slopes = problem.terms.map(({ width }) => new Float64Array(width * width))
      const gradient = new Float64Array(scatter.parameters)
      const valueAt = (at: Float64Array): number => profile.at(scatter.blocksAt(at), null)?.logLikelihood ?? Number.NaN
      const rng = createRng(`${name} differences`)
      for (const scale of [1.5, 0.3, 0.01]) {
        const at = Float64Array.from({ length: scatter.parameters }, () => scale * (0.5 + Math.abs(drawNormal(rng))))
        expect(profile.at(scatter.blocksAt(at), slopes)).not.toBeNull()
        scatter.fillGradient(at, slopes, gradient)
        for (let k = 0; k < at.length; k++) {
          const width = 1e-5
          const moved = (by: number): Float64Array => at.map((value, l) => (k === l ? value + by : value))
          const difference = (valueAt(moved(width)) - valueAt(moved(-width))) / (2 * width)
          expect(
            Math.abs((gradient[k] as number) - difference) / Math.max(1, Math.abs(difference)),
            `parameter ${k}`,
          ).toBeLessThan(1e-6)
        }
      }
    },
  )

  it('identity: a signed scatter may have either sign', () => {
    const { problem } = prepared('signs', structures['a slope of the greater grouping'] ?? {}, 'restricted')
    const scatter = relativeScatterOf(problem.terms)
    const valueAt = (...at: number[]): number =>
      profileOf(problem).at(scatter.blocksAt(Float64Array.from(at)), null)?.logLikelihood ?? Number.NaN
    const value = valueAt(0.7, 0.2, 0.5, 0.4)
    expect(valueAt(-0.7, -0.2, 0.5, 0.4)).toBeCloseTo(value, 10)
    expect(valueAt(0.7, 0.2, -0.5, -0.4)).toBeCloseTo(value, 10)
  })

  it('identity: scatter without end keeps its digits: fields at random become fields in the columns', () => {
    const { model, problem } = prepared('fixed', { isUneven: true }, 'full')
    const block = Float64Array.of(1e5)
    const random = profileOf(problem).at([block], null)
    const n = model.design.rows
    // Treatment lies between fields: taken out with them.
    const { of, levels } = problem.terms[0] ?? { of: new Int32Array(0), levels: 0 }
    let square = 0
    const within = (values: readonly number[]): number[] => {
      const sums = new Float64Array(levels)
      const counts = new Float64Array(levels)
      for (let i = 0; i < n; i++) {
        sums[of[i] as number] = (sums[of[i] as number] as number) + (values[i] as number)
        counts[of[i] as number] = (counts[of[i] as number] as number) + 1
      }
      return values.map((value, i) => value - (sums[of[i] as number] as number) / (counts[of[i] as number] as number))
    }
    const y = within(Array.from(model.response))
    const x = within(Array.from({ length: n }, (_, i) => model.design.values[i * 3 + 2] as number))
    const slope =
      x.reduce((sum, value, i) => sum + value * (y[i] as number), 0) / x.reduce((sum, value) => sum + value * value, 0)
    for (let i = 0; i < n; i++) square += ((y[i] as number) - slope * (x[i] as number)) ** 2
    expect((problem.unit ** 2 * (random?.residualVariance as number)) / (square / n)).toBeCloseTo(1, 7)
  })
})
