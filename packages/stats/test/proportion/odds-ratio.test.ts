import { describe, expect, it } from 'vitest'
import { oddsRatioExact } from '../../src/proportion/odds-ratio.ts'
import { expectNear, expectRelative, kindOf, sixDecimals } from '../near.ts'
import { cell, referenceTable } from '../reference-table.ts'

describe('oddsRatioExact', () => {
  it("oracle: 34, 12 against 15, 9, as R's fisher.test prints it", () => {
    const got = kindOf(oddsRatioExact(34, 12, 15, 9), 'ratio')
    // fisher.test stops its search at .Machine$double.eps^0.25 = 1.2e-4; the row below holds the same equations solved to 1e-14.
    const uniroot = 1.25e-4
    expectNear(got.ratio, 1.686717, uniroot)
    expectNear(got.limits.lower, 0.510288, uniroot)
    expectNear(got.limits.upper, 5.508323, uniroot)
    expectNear(got.p, 0.411719, sixDecimals)
  })

  it('oracle: nine tables at two levels, equations of fisher.test solved to 1e-14 (R)', () => {
    for (const row of referenceTable('classical-tests/odds-ratio')) {
      const what = JSON.stringify(row)
      const got = kindOf(
        oddsRatioExact(cell(row, 'a'), cell(row, 'b'), cell(row, 'c'), cell(row, 'd'), cell(row, 'level')),
        'ratio',
      )
      for (const [found, oracle] of [
        [got.ratio, cell(row, 'ratio')],
        [got.limits.lower, cell(row, 'lower')],
        [got.limits.upper, cell(row, 'upper')],
      ] as const) {
        if (oracle === 0 || oracle === Number.POSITIVE_INFINITY) expect(found, what).toBe(oracle)
        else expectRelative(found, oracle, 1e-10, what)
      }
      expectRelative(got.p, cell(row, 'p'), 1e-10, what)
    }
  })

  it('identity: exchanging rows inverts it, transposing leaves it', () => {
    const one = kindOf(oddsRatioExact(10, 2, 3, 15), 'ratio')
    const swapped = kindOf(oddsRatioExact(3, 15, 10, 2), 'ratio')
    const turned = kindOf(oddsRatioExact(10, 3, 2, 15), 'ratio')
    expectRelative(one.ratio * swapped.ratio, 1, 1e-11)
    expectRelative(one.limits.lower * swapped.limits.upper, 1, 1e-11)
    expectRelative(turned.ratio, one.ratio, 1e-11)
    expectRelative(turned.p, one.p, 1e-11)
  })

  it('a table whose margins leave one cell only has nothing to say', () => {
    expect(oddsRatioExact(3, 0, 4, 0)).toEqual({ kind: 'margins-fix-all' })
    expect(oddsRatioExact(0, 0, 4, 2)).toEqual({ kind: 'margins-fix-all' })
    expect(oddsRatioExact(0, 0, 0, 0)).toEqual({ kind: 'margins-fix-all' })
  })

  it('refuses a cell that is no count', () => {
    expect(() => oddsRatioExact(1, 2, -3, 4)).toThrow(/c is -3/)
    expect(() => oddsRatioExact(1, 2, 3, 4, 0)).toThrow(/level is 0/)
  })
})
