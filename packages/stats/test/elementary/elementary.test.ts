import { describe, expect, it } from 'vitest'
import { exp, log, log1p } from '../../src/elementary.ts'
import { cell, referenceTable } from '../reference-table.ts'
import { beside, lastPlace } from './bits.ts'
import { elementaryChecksums } from './checksums.ts'

const functions = { exp, log, log1p } as const
type Name = keyof typeof functions

describe('exp, log and log1p', () => {
  it.each([
    ['exp', 401, 0.52],
    ['log', 469, 0.75],
    ['log1p', 410, 0.75],
  ] as const)('oracle: %s at %i doubles of the whole range is within %f of its last place (mpmath)', (name, rows, units) => {
    const table = referenceTable(`elementary/${name}`)
    expect(table.length).toBe(rows)
    for (const row of table) {
      const nearest = cell(row, 'nearest')
      const found = functions[name](cell(row, 'x'))
      const off = (found - nearest) / lastPlace(nearest) - cell(row, 'short')
      expect(Math.abs(off), `${name}(${row.x}) = ${found}`).toBeLessThanOrEqual(units)
    }
  })

  it.each<[Name, number, number]>([
    ['exp', 0, 1],
    ['exp', -0, 1],
    ['exp', Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
    ['exp', Number.NEGATIVE_INFINITY, 0],
    ['exp', Number.NaN, Number.NaN],
    ['exp', 709.7827128933841, Number.POSITIVE_INFINITY],
    ['exp', -745.1332191019412, 0],
    ['exp', -745.1332191019411, 5e-324],
    ['log', 1, 0],
    ['log', 0, Number.NEGATIVE_INFINITY],
    ['log', -0, Number.NEGATIVE_INFINITY],
    ['log', -1, Number.NaN],
    ['log', -5e-324, Number.NaN],
    ['log', Number.NaN, Number.NaN],
    ['log', Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
    ['log', Number.NEGATIVE_INFINITY, Number.NaN],
    ['log1p', 0, 0],
    ['log1p', -0, -0],
    ['log1p', 5e-324, 5e-324],
    ['log1p', -5e-324, -5e-324],
    ['log1p', -1, Number.NEGATIVE_INFINITY],
    ['log1p', -1.5, Number.NaN],
    ['log1p', Number.NaN, Number.NaN],
    ['log1p', Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
  ])('identity: %s of %d is %d', (name, x, value) => {
    expect(functions[name](x)).toBe(value)
  })

  /** How often the function falls from one double to the next, over 41 doubles about a place. */
  function falls(f: (x: number) => number, x: number): number {
    let found = 0
    let before = Number.NEGATIVE_INFINITY
    for (let places = -20; places <= 20; places++) {
      const value = f(beside(x, places))
      if (value < before) found++
      before = value
    }
    return found
  }

  it('identity: exp rises over each seam of its table', () => {
    let found = 0
    // Seams lie half a step of the table from its marks; every 11th from -745 to 709.
    for (let k = -137_000; k < 131_000; k += 11) found += falls(exp, ((k + 0.5) * Math.LN2) / 128)
    expect(found).toBe(0)
  })

  it('identity: log and log1p rise over each seam of their table, and where the power of two changes', () => {
    let found = 0
    for (let i = 91; i <= 182; i++)
      for (let power = -1022; power < 1023; power += 31) found += falls(log, ((i - 0.5) / 128) * 2 ** power)
    for (let power = -1000; power < 1000; power += 7) found += falls(log, Math.SQRT1_2 * 2 ** power)
    for (const t of [1 / 256, -1 / 256, 2 ** -53, -(2 ** -54), Math.SQRT2 - 1, Math.SQRT1_2 - 1, -0.5, 1])
      found += falls(log1p, t)
    expect(found).toBe(0)
  })

  it('identity: they undo each other', () => {
    for (let x = -700; x < 700; x += 0.37) {
      expect(Math.abs(log(exp(x)) - x)).toBeLessThanOrEqual(1.2e-16 + lastPlace(x))
    }
  })

  it('golden: the same bits on every engine, over half a million outputs', () => {
    // Also what V8 11.3 (Node 20), Chromium 156, SpiderMonkey 102 and QuickJS give.
    expect(elementaryChecksums()).toEqual({
      'exp, any size': 3918431234,
      'exp, -746 to 710': 206358527,
      'exp, -3 to 3': 1308077485,
      'log, any size': 113401837,
      'log, 0 to 3': 1209940181,
      'log1p, any size': 128572255,
      'log1p, -1 to 1': 4040280770,
    })
  })
})
