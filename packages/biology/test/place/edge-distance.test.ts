import { describe, expect, it } from 'vitest'
import { edgeDistance, type Shape } from '../../src/place/edge-distance.ts'
import { greatCircleDistance, type Position } from '../../src/place/great-circle.ts'

const square = (west: number, south: number, size: number): Position[] => [
  [west, south],
  [west + size, south],
  [west + size, south + size],
  [west, south + size],
  [west, south],
]
const field = (west: number, south: number, size: number): Shape => ({
  type: 'Polygon',
  coordinates: [square(west, south, size)],
})
const point = (longitude: number, latitude: number): Shape => ({ type: 'Point', coordinates: [longitude, latitude] })

describe('edgeDistance', () => {
  it('identity: two squares on the equator, a hundredth of a degree apart', () => {
    expect(edgeDistance(field(0, -0.005, 0.01), field(0.02, -0.005, 0.01))).toBeCloseTo(1111.95, 2)
  })

  it('measures to the middle of an edge, not to a corner', () => {
    expect(edgeDistance(field(0, -0.05, 0.1), point(0.11, 0))).toBeCloseTo(1111.95, 2)
  })

  it('is 0 where places touch, cross, or hold each other', () => {
    expect(edgeDistance(field(0, 0, 1), field(1, 0, 1))).toBe(0)
    expect(edgeDistance(field(0, 0, 1), field(0.5, 0.5, 1))).toBe(0)
    expect(edgeDistance(field(0, 0, 1), field(0.4, 0.4, 0.1))).toBe(0)
    expect(edgeDistance(field(0.4, 0.4, 0.1), field(0, 0, 1))).toBe(0)
    expect(edgeDistance(field(0, 0, 1), point(0.5, 0.5))).toBe(0)
    // a cross: no corner of either lies in the other
    const wide: Shape = {
      type: 'Polygon',
      coordinates: [
        [
          [-2, -1],
          [2, -1],
          [2, 1],
          [-2, 1],
          [-2, -1],
        ],
      ],
    }
    const tall: Shape = {
      type: 'Polygon',
      coordinates: [
        [
          [-1, -2],
          [1, -2],
          [1, 2],
          [-1, 2],
          [-1, -2],
        ],
      ],
    }
    expect(edgeDistance(wide, tall)).toBe(0)
  })

  it('a place in the hole of another is outside of it', () => {
    const ring: Shape = { type: 'Polygon', coordinates: [square(0, 0, 0.3), square(0.1, 0.1, 0.1)] }
    const inner = point(0.15, 0.13)
    expect(edgeDistance(ring, inner)).toBeCloseTo(greatCircleDistance([0.15, 0.13], [0.15, 0.1]), 3)
    expect(edgeDistance(ring, point(0.05, 0.05))).toBe(0)
  })

  it('takes the nearest part of many, an open ring, and a line', () => {
    const parts: Shape = { type: 'MultiPolygon', coordinates: [[square(5, 0, 0.1)], [square(0, -0.05, 0.1).slice(0, 4)]] }
    expect(edgeDistance(parts, point(0.11, 0))).toBeCloseTo(1111.95, 2)
    expect(edgeDistance(point(0.11, 0), parts)).toBeCloseTo(1111.95, 2)
    const hedge: Shape = {
      type: 'LineString',
      coordinates: [
        [0.11, -1],
        [0.11, 1],
      ],
    }
    expect(edgeDistance(field(0, -0.05, 0.1), hedge)).toBeCloseTo(1111.95, 2)
  })

  it('joins fields on both sides of the 180th meridian', () => {
    expect(edgeDistance(field(179.98, 0, 0.01), field(-180, 0, 0.01))).toBeCloseTo(1111.95, 1)
  })

  // The documented accuracy: 0.1 % up to 50 km apart and 65 degrees from the equator, in every direction.
  it.each([0, 30, 51, 65])('oracle: the great circle within 0.1 %%, at latitude %i', (latitude) => {
    for (const kilometres of [0.1, 3, 20, 50]) {
      for (const bearing of [0, 30, 60, 90, 140, 250]) {
        const north = (kilometres / 111.195) * Math.cos((bearing * Math.PI) / 180)
        const east = ((kilometres / 111.195) * Math.sin((bearing * Math.PI) / 180)) / Math.cos((latitude * Math.PI) / 180)
        const to = [10 + east, latitude + north] as const
        const exact = greatCircleDistance([10, latitude], to)
        expect(Math.abs(edgeDistance(point(10, latitude), point(...to)) / exact - 1)).toBeLessThan(0.001)
      }
    }
  })

  it('refuses a place without positions', () => {
    expect(() => edgeDistance({ type: 'Polygon', coordinates: [] }, point(0, 0))).toThrow(/no positions/)
    expect(() => edgeDistance(point(0, 0), { type: 'LineString', coordinates: [] })).toThrow(/no positions/)
  })
})
