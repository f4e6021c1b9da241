import { readFileSync } from 'node:fs'
import { createRng } from '@thrum/model/ground'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  betweenUnits,
  contrastLimits,
  drawGamma,
  drawPoisson,
  logRate,
  type ThinnedCell,
  type ThinnedProblem,
  thinnedContrast,
} from '../../src/index.ts'
import { thinnedLog } from '../../src/unit-contrast/thinned-log.ts'

type Row = { readonly [column: string]: number | string }
function table(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(new URL(`../reference/thinned-contrast/${name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
  const number = (cell: string): number | string =>
    cell.trim() === 'NA' || Number.isNaN(Number(cell)) ? cell.trim() : Number(cell)
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [head.split(',')[k] ?? '', number(cell)])))
}
const at = (row: Row, column: string): number => row[column] as number

const ones = (n: number): Float64Array => new Float64Array(n).fill(1)
function between(name: string, companyOf: (row: Row) => number): ThinnedProblem {
  const rows = table(name)
  const blocks = rows.map((row) => Number(row.block ?? 0))
  return {
    isPaired: false,
    cells: rows.map((row, unit) => ({
      unit,
      total: at(row, 'total'),
      effort: at(row, 'effort'),
      sign: 1,
      isAsked: row.level === 1,
      company: companyOf(row),
    })),
    columns: {
      base: [ones(rows.length), ...(blocks.some(Boolean) ? [Float64Array.from(blocks)] : [])],
      nuisance: [],
      contrasts: [Float64Array.from(rows, (row) => at(row, 'level'))],
    },
  }
}
function paired(name: string, isControlled: boolean): ThinnedProblem {
  const rows = table(name)
  const cells = rows.flatMap((row, unit): readonly ThinnedCell[] => {
    const company = isControlled ? 0 : unit
    const isAsked = !isControlled || row.level === 1
    return [
      { unit, total: at(row, 'total1'), effort: at(row, 'effort1'), sign: -1, isAsked: false, company },
      { unit, total: at(row, 'total2'), effort: at(row, 'effort2'), sign: 1, isAsked, company },
    ]
  })
  const level = Float64Array.from(rows, (row) => Number(row.level ?? 1))
  return {
    isPaired: !isControlled,
    cells,
    columns: { base: isControlled ? [ones(rows.length)] : [], nuisance: [], contrasts: [level] },
  }
}

const problems: { readonly [name: string]: ThinnedProblem } = {
  blocks: between('blocks', (row) => at(row, 'block')),
  few: between('few', () => 0),
  pairs: paired('pairs', false),
  'few-pairs': paired('few-pairs', false),
  'before-after': paired('before-after', true),
  endless: between('endless', () => 0),
}

describe('a contrast by thinning', () => {
  it.each(table('values').map((row) => [String(row.case), row] as const))('oracle: %s, beside R', (name, told) => {
    const contrast = thinnedContrast(problems[name] as ThinnedProblem)
    if (contrast === null) throw new Error('no contrast')
    const near = (value: number, column: string): void => {
      if (told[column] === 'NA') expect(Number.isFinite(value)).toBe(false)
      else expect(Math.abs(value - at(told, column)), `${column} ${value}`).toBeLessThan(1e-7)
    }
    near(contrast.estimate, 'estimate')
    expect(Math.abs(contrast.df - at(told, 'df'))).toBeLessThan(1e-5)
    for (const level of [0.95, 0.9]) {
      const { lower, upper } = contrastLimits(contrast, level)
      near(lower, `lower${100 * level}`)
      near(upper, `upper${100 * level}`)
    }
  })

  it('identity: with many insects and equal effort it is the contrast of logarithms', () => {
    const totals = [40_210, 52_300, 47_115, 61_020, 88_412, 79_300, 95_021, 102_314]
    const level = totals.map((_, k) => Number(k >= 4))
    const cells = totals.map((total, unit): ThinnedCell => ({ unit, total, effort: 60, sign: 1, isAsked: unit >= 4, company: 0 }))
    const columns = { base: [ones(8)], nuisance: [], contrasts: [Float64Array.from(level)] }
    const thinned = thinnedContrast({ cells, columns, isPaired: false })
    const plain = betweenUnits({ z: totals.map((total) => logRate(total, 60)), level })
    if (thinned === null || plain.kind !== 'fitted' || plain.contrasts[0] === undefined) throw new Error('no fit')
    expect(thinned.estimate).toBeCloseTo(plain.contrasts[0].estimate, 4)
    expect(contrastLimits(thinned).lower).toBeCloseTo(contrastLimits(plain.contrasts[0]).lower, 3)
  })

  it('identity: the unit of effort says nothing, and exchanged levels mirror the limits', () => {
    const problem = problems.few as ThinnedProblem
    const contrast = thinnedContrast(problem)
    const hours = thinnedContrast({ ...problem, cells: problem.cells.map((cell) => ({ ...cell, effort: cell.effort / 60 })) })
    const turned = thinnedContrast({
      ...problem,
      cells: problem.cells.map((cell) => ({ ...cell, isAsked: !cell.isAsked })),
      columns: { ...problem.columns, contrasts: [Float64Array.from(problem.columns.contrasts[0] ?? [], (level) => 1 - level)] },
    })
    if (contrast === null || hours === null || turned === null) throw new Error('no contrast')
    expect(hours.estimate).toBeCloseTo(contrast.estimate, 7)
    expect(turned.estimate).toBeCloseTo(-contrast.estimate, 7)
    expect(contrastLimits(turned).lower).toBeCloseTo(-contrastLimits(contrast).upper, 6)
  })

  it('recovery: five times the effort on one side, half a ln ratio of truth: no bias where the t is off by a third', () => {
    const rng = createRng('thinned recovery')
    let thinnedSum = 0
    let plainSum = 0
    const sets = 400
    for (let set = 0; set < sets; set++) {
      const cells = Array.from({ length: 40 }, (_, unit): ThinnedCell => {
        const isAsked = unit >= 20
        const effort = isAsked ? 1 : 5
        const total = drawPoisson(rng, 1.5 * effort * (isAsked ? Math.exp(0.5) : 1) * drawGamma(rng, 0.8, 1 / 0.8))
        return { unit, total, effort, sign: 1, isAsked, company: 0 }
      })
      const level = cells.map(({ isAsked }) => Number(isAsked))
      const thinned = thinnedContrast({
        cells,
        isPaired: false,
        columns: { base: [ones(40)], nuisance: [], contrasts: [Float64Array.from(level)] },
      })
      const plain = betweenUnits({ z: cells.map(({ total, effort }) => logRate(total, effort)), level })
      thinnedSum += (thinned?.estimate ?? Number.NaN) - 0.5
      plainSum += (plain.kind === 'fitted' ? (plain.contrasts[0]?.estimate ?? Number.NaN) : Number.NaN) - 0.5
    }
    // Four Monte Carlo standard errors: the estimate scatters by some 0.45.
    expect(Math.abs(thinnedSum / sets)).toBeLessThan(0.09)
    expect(Math.abs(plainSum / sets)).toBeGreaterThan(0.2)
  })

  it('lost contrasts and too few units have no answer', () => {
    const cells = [1, 2, 3].map(
      (total, unit): ThinnedCell => ({ unit, total, effort: 1, sign: 1, isAsked: unit > 1, company: 0 }),
    )
    const columns = { base: [ones(3)], nuisance: [], contrasts: [Float64Array.of(0, 0, 1)] }
    expect(thinnedContrast({ cells, columns, isPaired: false })).toBeNull()
    const four = [...cells, { ...(cells[0] as ThinnedCell), unit: 3 }]
    const twice = { base: [ones(4), Float64Array.of(0, 0, 1, 0)], nuisance: [], contrasts: [Float64Array.of(0, 0, 1, 0)] }
    expect(thinnedContrast({ cells: four, columns: twice, isPaired: false })).toBeNull()
  })

  it('identity: whatever is counted, limits hold the estimate between them, and a higher level holds a lower', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.oneof(fc.nat(4), fc.nat(300)), fc.integer({ min: 1, max: 100 })), { minLength: 4, maxLength: 12 }),
        (fields) => {
          const level = fields.map((_, k) => k % 2)
          if (![0, 1].every((own) => fields.some(([total], k) => level[k] === own && total > 0))) return
          const contrast = thinnedContrast({
            isPaired: false,
            cells: fields.map(([total, effort], unit) => ({ unit, total, effort, sign: 1, isAsked: unit % 2 === 1, company: 0 })),
            columns: { base: [ones(fields.length)], nuisance: [], contrasts: [Float64Array.from(level)] },
          })
          if (contrast === null) return
          const wide = contrastLimits(contrast, 0.95)
          const narrow = contrastLimits(contrast, 0.9)
          for (const value of [contrast.estimate, contrast.se, contrast.df, contrast.p]) expect(value).not.toBeNaN()
          expect(narrow.lower).toBeLessThanOrEqual(contrast.estimate + 1e-6)
          expect(narrow.upper).toBeGreaterThanOrEqual(contrast.estimate - 1e-6)
          expect(wide.lower).toBeLessThanOrEqual(narrow.lower + 1e-6)
          expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper - 1e-6)
        },
      ),
      { numRuns: 200, seed: 11 },
    )
  })
})

describe('the log of a thinned count', () => {
  it('oracle: four by halves, and whole counts (sums of dbinom in R)', () => {
    expect(thinnedLog(4, 0.5).mean).toBeCloseTo(1.0324298632, 9)
    expect(thinnedLog(4, 0.5).variance).toBeCloseTo(0.1491538549, 9)
    expect(thinnedLog(10, 1)).toEqual({ mean: Math.log(11), variance: 0 })
    expect(thinnedLog(0, 0.3)).toEqual({ mean: 0, variance: 0 })
  })

  it('identity: large counts follow the expansion about their mean', () => {
    const { mean, variance } = thinnedLog(200_000, 0.3)
    const m = 60_001
    const v = 200_000 * 0.3 * 0.7
    expect(mean).toBeCloseTo(Math.log(m) - v / (2 * m * m), 9)
    expect(variance).toBeCloseTo(v / (m * m), 9)
  })
})
