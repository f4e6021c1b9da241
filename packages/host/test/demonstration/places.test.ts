import { edgeDistance, localSolarTime, type Shape } from '@thrum/biology'
import { describe, expect, it } from 'vitest'
import { clockOffset, outlineOf, plantedFields } from '../../src/demonstration/places.ts'

const shapeOf = (field: (typeof plantedFields)[number]): Shape => ({ type: 'Polygon', coordinates: [outlineOf(field)] })

/** Area of an outline on the plane around its point [ha]. */
function hectaresOf(field: (typeof plantedFields)[number]): number {
  const metres = 111_195
  const shrink = Math.cos((field.point.latitude * Math.PI) / 180)
  const corners = outlineOf(field).map(([east, north]) => [east * metres * shrink, north * metres] as const)
  const twice = corners.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = corners[(k + 1) % corners.length] ?? [0, 0]
    return sum + (x * nextY - nextX * y)
  }, 0)
  return twice / 2 / 10_000
}

describe('the places of the valley', () => {
  it('lie more than 3 km apart, edge to edge', () => {
    for (const [k, one] of plantedFields.entries()) {
      for (const other of plantedFields.slice(k + 1)) {
        expect(edgeDistance(shapeOf(one), shapeOf(other)), `${one.name}, ${other.name}`).toBeGreaterThan(3000)
      }
    }
  })

  it('lie in open ocean, where there is neither island nor coast', () => {
    // The northern Atlantic between 45 and 50 degrees north, 35 to 25 west, is deep water throughout.
    for (const { point } of plantedFields) {
      expect(point.latitude).toBeGreaterThan(45)
      expect(point.latitude).toBeLessThan(50)
      expect(point.longitude).toBeGreaterThan(-35)
      expect(point.longitude).toBeLessThan(-25)
    }
  })

  it('identity: outlines enclose their hectares, counter-clockwise', () => {
    // Six decimals of a degree are 0.1 m: on a side of 150 m that is below 0.2 % of the area.
    for (const field of plantedFields) expect(hectaresOf(field) / field.hectares).toBeCloseTo(1, 2)
  })

  it('tell solar time by their clocks, but for the unevenness of the sun', () => {
    for (const { point } of plantedFields) {
      const found = localSolarTime({ day: 22_480, clockMinutes: 720, utcOffset: clockOffset, longitude: point.longitude })
      // The equation of time stays within 17 minutes.
      expect(Math.abs((found?.hour ?? 0) - 12)).toBeLessThan(17 / 60 + 0.01)
    }
  })

  it('bear no name of a country, nor of a city that the time zone database knows', () => {
    const cities = Intl.supportedValuesOf('timeZone').flatMap((zone) => zone.toLowerCase().split(/[/_]/u))
    const regions = new Intl.DisplayNames('en', { type: 'region' })
    const letters = Array.from({ length: 26 }, (_, k) => String.fromCharCode(65 + k))
    const countries = letters.flatMap((a) => letters.map((b) => (regions.of(a + b) ?? '').toLowerCase()))
    const known = new Set([...cities, ...countries.flatMap((name) => name.split(' '))])
    expect(known.has('lisbon')).toBe(true)
    expect(known.has('norway')).toBe(true)
    const words = ['Ostrel', ...plantedFields.flatMap(({ name }) => name.split(' '))]
    for (const word of words) expect(known.has(word.toLowerCase()), word).toBe(false)
  })
})
