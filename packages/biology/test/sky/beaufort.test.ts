import { describe, expect, it } from 'vitest'
import { beaufortOf, beaufortUpperBounds } from '../../src/sky/beaufort.ts'

describe('beaufortOf', () => {
  it.each([
    [6, 4],
    [8, 5],
    [0, 0],
    [0.2, 0],
    [0.25, 1],
    [7.9, 4],
    [7.95, 5],
    [32.6, 11],
    [32.7, 12],
    [60, 12],
  ])('published: %d m/s is Beaufort %i', (speed, step) => {
    expect(beaufortOf(speed)).toBe(step)
  })

  it('identity: every bound belongs to its own step', () => {
    expect(beaufortUpperBounds.map(beaufortOf)).toEqual(beaufortUpperBounds.map((_, i) => i))
  })

  it.each([-0.1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d and says what it found', (speed) => {
    expect(() => beaufortOf(speed)).toThrow(`metresPerSecond is ${speed}`)
  })
})
