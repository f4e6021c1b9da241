import { createRng } from '@thrum/model/ground'
import { beforeAll, describe, expect, it } from 'vitest'
import {
  type CalibrationCell,
  calibrationCells,
  factorNames,
  longEffort,
  smallestTotal,
} from '../../../../trials/calibration-cells.ts'
import { decide, designOf } from '../../../../trials/calibration-decide.ts'
import { fillTotals, placesOfCell } from '../../../../trials/calibration-draw.ts'
import { runCell } from '../../../../trials/calibration-run.ts'
import { barsOf, enoughTotal, medianOf, type ScoredCell } from '../../../../trials/calibration-score.ts'

const sampled = 800
const cells = calibrationCells(createRng('calibration/cells'), sampled)

/** A cell in which nothing is out of the ordinary, to be changed in one thing or another. */
const plain: CalibrationCell = {
  layout: 'between-fields',
  fields: 6,
  visits: 4,
  mean: 5,
  theta: 2,
  fieldSd: 0.3,
  periodSd: 0,
  visitSd: 0,
  ratio: 1,
  effort: 'even',
  zeroChance: 0,
}

describe('cells of the trial', () => {
  it('identity: every level of every factor stands beside every level of every other, at least eight times', () => {
    const sample = cells.slice(0, sampled)
    for (const one of factorNames)
      for (const other of factorNames.filter((name) => name > one)) {
        const levels = new Set(sample.map((cell) => cell[one])).size * new Set(sample.map((cell) => cell[other])).size
        const met = new Map<string, number>()
        for (const cell of sample) {
          const pair = `${cell[one]} / ${cell[other]}`
          met.set(pair, (met.get(pair) ?? 0) + 1)
        }
        expect(met.size).toBe(levels)
        expect(Math.min(...met.values())).toBeGreaterThanOrEqual(8)
      }
  })

  it('identity: the smallest total counts effort, ratio and zeros', () => {
    expect(smallestTotal(plain)).toBe(20)
    expect(smallestTotal({ ...plain, ratio: 1 / 4, zeroChance: 0.5 })).toBe(2.5)
    expect(smallestTotal({ ...plain, ratio: 1 / 4, effort: 'second' })).toBe(20)
    expect(smallestTotal({ ...plain, ratio: 1 / 4, effort: 'first' })).toBe(5)
    expect(smallestTotal({ ...plain, layout: 'before-after-control', ratio: 1 / longEffort, effort: 'second' })).toBe(20)
  })
})

describe('totals of a cell', () => {
  it.each<[string, Partial<CalibrationCell>]>([
    ['one level watched longer, zeros', { effort: 'second', zeroChance: 0.3 }],
    ['visits that differ, an effect', { visitSd: 0.3, ratio: 3, effort: 'mixed' }],
    [
      'Poisson, periods that differ',
      { layout: 'before-after-control', theta: Number.POSITIVE_INFINITY, periodSd: 0.3, ratio: 1 / 3 },
    ],
  ])('recovery: mean and variance are those of the model (%s)', (_what, change) => {
    const cell = { ...plain, ...change }
    const places = placesOfCell(cell)
    const totals = new Float64Array(places.length)
    const rng = createRng('totals of a cell')
    const sets = 40_000
    const last = places.length - 1
    const drawn = Float64Array.from({ length: sets }, () => {
      fillTotals(rng, cell, places, totals)
      return totals[last] as number
    })
    // A visit: Poisson of mu * gamma * lognormals, present or not. Second moments of factors with expectation 1.
    const mu = places[last]?.mean ?? Number.NaN
    const present = 1 - cell.zeroChance
    const shared = Math.exp(cell.fieldSd ** 2 + cell.periodSd ** 2)
    const own = Math.exp(cell.visitSd ** 2) * (1 + 1 / cell.theta)
    const mean = cell.visits * mu * present
    const sumSquared = cell.visits * present * own + cell.visits * (cell.visits - 1) * present ** 2
    const variance = mean + mu * mu * shared * sumSquared - mean * mean
    const found = drawn.reduce((sum, y) => sum + y, 0) / sets
    const scatter = drawn.reduce((sum, y) => sum + (y - found) ** 2, 0) / (sets - 1)
    // Four Monte Carlo standard errors of a mean; the variance of such skewed totals is good to a tenth.
    expect(Math.abs(found - mean)).toBeLessThan(4 * Math.sqrt(variance / sets))
    expect(Math.abs(scatter / variance - 1)).toBeLessThan(0.1)
  })
})

describe('what is said to a cell', () => {
  it('oracle: the t of pairs, and no t where there are too few insects', () => {
    const cell: CalibrationCell = { ...plain, layout: 'within-fields', fields: 5, visits: 1 }
    const places = placesOfCell(cell)
    const design = designOf(cell, places)
    // R 4.2.2 t.test on log(counts + 0.5) of 52, 38, 61, 44, 30 and 40, 31, 49, 42, 16, here with even effort.
    const said = decide(cell, design, places, Float64Array.of(52, 40, 38, 31, 61, 49, 44, 42, 30, 16))
    expect(said.refusal).toBeNull()
    expect(said.contrast?.t).toBeCloseTo(-2.8480584, 6)
    expect(said.contrast?.estimate).toBeCloseTo(-0.2675195624, 9)
    expect(said.contrast).toEqual(said.plain)
    const few = decide(cell, design, places, Float64Array.of(1, 2, 3, 1, 2, 2, 1, 4, 2, 1))
    expect(few.refusal).toBeNull()
    const none = decide(cell, design, places, Float64Array.of(1, 0, 3, 0, 2, 0, 1, 0, 2, 0))
    expect(none.refusal).toBe('level-without-insects')
  })
})

describe('a fixed share of the trial', () => {
  // Every fiftieth cell with totals that are not small, corners and unequal efforts among them; the whole: docs/trials/calibration.md.
  const share = cells.filter((cell) => smallestTotal(cell) >= enoughTotal).filter((_, k) => k % 50 === 0)
  const sets = 2000
  let scored: readonly ScoredCell[] = []
  beforeAll(() => {
    scored = share.map((cell) => ({ cell, found: runCell(cell, sets, 'full tests') }))
  }, 120_000)
  const errors = (share: number, of = sets): number => 4 * Math.sqrt((share * (1 - share)) / of)

  it('recovery: intervals hold the truth, and what is there at S or not at all is rarely said to be otherwise', () => {
    expect(scored.length).toBeGreaterThan(15)
    for (const { cell, found } of scored) {
      expect(found.covered / found.answered, JSON.stringify(cell)).toBeGreaterThan(0.93 - errors(0.93, found.answered))
      if (cell.ratio === 1) {
        expect(found.shown / found.answered).toBeLessThan(0.065 + errors(0.065, found.answered))
        expect(found.shownOrLeaning / found.answered).toBeLessThan(0.115 + errors(0.115, found.answered))
      } else expect(found.alike / found.answered).toBeLessThan(0.035 + errors(0.035, found.answered))
    }
    const covered = medianOf(scored.map(({ found }) => found.covered / found.answered))
    expect(covered).toBeGreaterThan(0.945)
    expect(covered).toBeLessThan(0.96)
  })

  it('recovery: refusing costs little', () => {
    const pooled = barsOf(scored).filter(({ name, cells: each }) => name.startsWith('(d)') && each.length === 0)
    expect(pooled).toHaveLength(3)
    for (const bar of pooled) expect(bar, bar.name).toMatchObject({ clears: true })
  })

  it('identity: the same seed and cell make the same sets, whatever else was run', () => {
    const [cell] = share
    expect(cell).toBeDefined()
    if (cell !== undefined) expect(runCell(cell, 50, 'again')).toEqual(runCell(cell, 50, 'again'))
  })
})
