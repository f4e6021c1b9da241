import { describe, expect, it } from 'vitest'
import { earthRadius, greatCircleDistance } from '../../src/place/great-circle.ts'

describe('greatCircleDistance', () => {
  it('identity: one degree along the equator or a meridian is a 360th of the circle, 111,195.05 m', () => {
    const degree = (Math.PI * earthRadius) / 180
    expect(degree).toBeCloseTo(111_195.05, 1)
    // a few ulp of 1e5
    expect(Math.abs(greatCircleDistance([0, 0], [1, 0]) - degree)).toBeLessThan(1e-8)
    expect(Math.abs(greatCircleDistance([20, 51], [20, 52]) - degree)).toBeLessThan(1e-7)
  })

  it('identity: pole to pole and point to opposite point are half a circle', () => {
    const half = Math.PI * earthRadius
    expect(greatCircleDistance([0, 90], [77, -90])).toBeCloseTo(half, 3)
    expect(greatCircleDistance([13, 40], [-167, -40])).toBeCloseTo(half, 0)
  })

  it('identity: agrees with the arc cosine form where that one is well conditioned', () => {
    const from = [12.5, 55.7] as const
    const to = [18.1, 59.3] as const
    const rad = Math.PI / 180
    const arc = Math.acos(
      Math.sin(from[1] * rad) * Math.sin(to[1] * rad) +
        Math.cos(from[1] * rad) * Math.cos(to[1] * rad) * Math.cos((to[0] - from[0]) * rad),
    )
    expect(Math.abs(greatCircleDistance(from, to) / (earthRadius * arc) - 1)).toBeLessThan(1e-10)
  })

  it('is 0 for one point, the same both ways, and goes the short way round the 180th meridian', () => {
    expect(greatCircleDistance([5, 5], [5, 5])).toBe(0)
    expect(greatCircleDistance([5, 6], [7, 8])).toBe(greatCircleDistance([7, 8], [5, 6]))
    expect(greatCircleDistance([179.9, 0], [-179.9, 0])).toBeCloseTo(greatCircleDistance([0, 0], [0.2, 0]), 6)
  })

  it('is exact for places a metre apart', () => {
    const metre = 1 / ((Math.PI * earthRadius) / 180)
    // 0.1 micrometre: what is left of 16 digits after the degrees of longitude
    expect(greatCircleDistance([20, 0], [20 + metre, 0])).toBeCloseTo(1, 7)
  })

  it.each([[[]], [[1]], [[Number.NaN, 2]], [[2, 91]]])('refuses %j', (position) => {
    expect(() => greatCircleDistance(position, [0, 0])).toThrow(/itude is NaN/)
  })
})
