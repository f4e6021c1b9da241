import { describe, expect, it } from 'vitest'
import { inflation, partialR2, residualRange, residualsAfter, varianceInflation } from '../../src/least-squares/inflation.ts'
import { expectNear, expectRelative, sixDecimals } from '../near.ts'
import { referenceValues } from '../reference-table.ts'

// Oracle: R 4.2.2 solve(crossprod(X)), reference/least-squares; the handbook prints the same numbers with six decimals.
const oracle = referenceValues('least-squares/values')
const one = (name: string): number => oracle(name)[0] ?? Number.NaN
const ones = (n: number): number[] => new Array<number>(n).fill(1)
const arm = [0, 0, 0, 0, 1, 1, 1, 1]
const date = [2, 4, 5, 7, 6, 8, 9, 11]

describe('inflation of a contrast', () => {
  it('oracle: date, no blocks', () => {
    const problem = { base: [ones(8), arm], contrast: 1, nuisance: [date] }
    expectRelative(inflation(problem), one('inflation-date'), 1e-12)
    expectNear(inflation(problem), 2.230769, sixDecimals)
    expectNear(partialR2(problem), 0.551724, sixDecimals)
  })

  it('oracle: dates wholly apart', () => {
    expectRelative(
      inflation({ base: [ones(8), arm], contrast: 1, nuisance: [[1, 2, 3, 4, 8, 9, 10, 11]] }),
      one('inflation-apart'),
      1e-12,
    )
    expectNear(one('inflation-apart'), 10.8, 1e-12)
  })

  it('oracle: two blocks, kept and (the trap) forgotten', () => {
    const block = [0, 0, 0, 0, 1, 1, 1, 1]
    const inBlocks = [0, 0, 1, 1, 0, 0, 1, 1]
    const nuisance = [[10, 12, 13, 15, 60, 63, 64, 66]]
    expectNear(inflation({ base: [ones(8), block, inBlocks], contrast: 2, nuisance }), 2.988235, sixDecimals)
    expectNear(inflation({ base: [ones(8), inBlocks], contrast: 1, nuisance }), 1.004093, sixDecimals)
  })

  it('oracle: share of an observer', () => {
    expectNear(
      inflation({ base: [ones(8), arm], contrast: 1, nuisance: [[0.5, 0.5, 0.25, 0, 1, 0.75, 0.5, 0.25]] }),
      1.403226,
      sixDecimals,
    )
  })

  it('oracle: before and after, from the 12 cells and from the six differences', () => {
    const field = [0, 1, 2, 3, 4, 5, 0, 1, 2, 3, 4, 5]
    const period = field.map((_, row) => Number(row >= 6))
    const treatedAfter = field.map((f, row) => Number(f > 2 && row >= 6))
    const fields = [1, 2, 3, 4, 5].map((f) => field.map((own) => Number(own === f)))
    const stage = [62, 63, 61, 63, 62, 64, 66, 67, 65, 69, 68, 69]
    expectRelative(inflation({ base: [ones(12), ...fields, period, treatedAfter], contrast: 7, nuisance: [stage] }), 7.25, 1e-12)
    expectRelative(inflation({ base: [ones(6), [0, 0, 0, 1, 1, 1]], contrast: 1, nuisance: [[4, 4, 4, 6, 6, 5]] }), 7.25, 1e-12)
  })

  it('oracle: edge against centre from the counts, and (the trap) infinite from the cells', () => {
    const field = Array.from({ length: 40 }, (_, row) => Math.floor(row / 10))
    const edge = field.map((_, row) => Number(row % 10 < 5))
    const hour = field.map((_, row) => ([0, 1, 2, 5, 6].includes(row % 10) ? -2 : 2))
    const fields = [1, 2, 3].map((f) => field.map((own) => Number(own === f)))
    expectNear(inflation({ base: [ones(40), ...fields, edge], contrast: 4, nuisance: [hour] }), 1.041667, sixDecimals)
    const cellField = [0, 0, 1, 1, 2, 2, 3, 3]
    const cellFields = [1, 2, 3].map((f) => cellField.map((own) => Number(own === f)))
    const cellEdge = [1, 0, 1, 0, 1, 0, 1, 0]
    const share = cellEdge.map((e) => (e === 1 ? 0.6 : 0.4))
    expect(inflation({ base: [ones(8), ...cellFields, cellEdge], contrast: 4, nuisance: [share] })).toBe(Number.POSITIVE_INFINITY)
  })

  it('identity: 1 without nuisance, unmoved by an unrelated one, by scale and by a far origin', () => {
    expect(inflation({ base: [ones(8), arm], contrast: 1, nuisance: [] })).toBe(1)
    expectNear(inflation({ base: [ones(8), arm], contrast: 1, nuisance: [[1, -1, 1, -1, 1, -1, 1, -1]] }), 1, 1e-12)
    const far = date.map((d) => 20000 + d)
    expectRelative(inflation({ base: [ones(8), arm], contrast: 1, nuisance: [far] }), one('inflation-date'), 1e-9)
    expectRelative(
      inflation({ base: [ones(8), arm], contrast: 1, nuisance: [far.map((d) => d * 1440)] }),
      one('inflation-date'),
      1e-9,
    )
    expectRelative(inflation({ base: [ones(8), far], contrast: 1, nuisance: [arm] }), one('inflation-date'), 1e-9)
  })

  it('rank lost: infinite, and partial R2 is 1', () => {
    const lost = { base: [ones(8), arm], contrast: 1, nuisance: [arm.map((a) => 3 - 2 * a)] }
    expect(inflation(lost)).toBe(Number.POSITIVE_INFINITY)
    expect(partialR2(lost)).toBe(1)
    // Already lost in the base: the arm is the block.
    expect(inflation({ base: [ones(8), arm, arm], contrast: 2, nuisance: [date] })).toBe(Number.POSITIVE_INFINITY)
    // More nuisances than rows can tell.
    const many = Array.from({ length: 8 }, (_, k) => Array.from({ length: 8 }, (_, i) => Number(i === k)))
    expect(inflation({ base: [ones(8), arm], contrast: 1, nuisance: many })).toBe(Number.POSITIVE_INFINITY)
  })

  it('refuses a contrast that is no column', () => {
    expect(() => inflation({ base: [ones(2)], contrast: 1, nuisance: [] })).toThrow(/contrast is 1/)
  })
})

describe('residuals and their range', () => {
  it('oracle: by hand', () => {
    const got = residualsAfter([1, 2, 4], [ones(3)])
    ;[-4 / 3, -1 / 3, 5 / 3].forEach((value, i) => {
      expectNear(got[i] ?? 0, value, 1e-15)
    })
    const blocks = [ones(4), [0, 0, 1, 1]]
    expectNear(residualRange([2, 4, 10, 13], blocks), 3, 1e-13)
  })

  it('identity: nothing is left of a column that the others hold, even far from 0', () => {
    expect(residualRange([20000, 20000, 20003, 20003], [ones(4), [0, 0, 1, 1]])).toBe(0)
    expect(residualRange([5, 5, 5], [ones(3)])).toBe(0)
    expect(residualRange([0, 0, 0], [ones(3)])).toBe(0)
    expect(residualRange([4], [ones(1)])).toBe(0)
    expectNear(residualRange([20000.5, 20000, 20003, 20003.25], [ones(4), [0, 0, 1, 1]]), 0.5, 1e-11)
  })

  it('identity: with no others it is the column itself', () => {
    expect([...residualsAfter([3, -1], [])]).toEqual([3, -1])
    expect(residualRange([3, -1], [])).toBe(4)
  })
})

describe('varianceInflation', () => {
  const x1 = [1, 2, 3, 4, 5, 6, 7, 8]
  const x2 = [1.1, 1.9, 3.2, 3.9, 5.1, 6.2, 6.8, 8.1]
  const x3 = [2, 1, 2, 1, 2, 1, 2, 1]

  it('oracle: three columns', () => {
    const got = varianceInflation([[x1], [x2], [x3]])
    ;[266.8068, 266.1924, 1.0564].forEach((printed, k) => {
      expectNear(got[k]?.gvif ?? 0, printed, 0.00005)
      expectRelative(got[k]?.gvif ?? 0, oracle('vif')[k] ?? 0, 1e-10)
      expect(got[k]?.perFreedom).toBe(got[k]?.gvif)
    })
  })

  it('oracle: a factor of three levels beside a measured column (determinants of correlation matrices)', () => {
    const b = [0, 0, 1, 1, 1, 0, 0, 0]
    const c = [0, 0, 0, 0, 0, 1, 1, 1]
    const [factor, measured] = varianceInflation([[b, c], [[1, 2, 2, 4, 3, 5, 7, 6]]])
    expect(factor?.df).toBe(2)
    expectRelative(factor?.gvif ?? 0, one('gvif-factor'), 1e-12)
    // (GVIF^(1/4))^2 for 2 df.
    expectRelative(factor?.perFreedom ?? 0, Math.sqrt(one('gvif-factor')), 1e-12)
    expectRelative(measured?.gvif ?? 0, one('gvif-factor'), 1e-12)
  })

  it('identity: a determined column is infinite, a lone one is 1, a constant one has no freedom', () => {
    expect(varianceInflation([[x1], [x1.map((x) => 2 * x + 1)]])[0]?.gvif).toBe(Number.POSITIVE_INFINITY)
    expect(varianceInflation([[x1]])[0]?.gvif).toBeCloseTo(1, 14)
    expect(varianceInflation([[x1], [x1.map(() => 4)]])[1]).toEqual({ term: 1, df: 0, gvif: 1, perFreedom: 1 })
    expect(varianceInflation([])).toEqual([])
  })
})
