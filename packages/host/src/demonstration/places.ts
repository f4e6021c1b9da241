import type { Point } from '@thrum/model'
import type { Crop } from './calendar.ts'

/** A field of the valley as it was invented. */
export interface PlantedField {
  readonly name: string
  readonly crop: Crop
  readonly cultivar: string
  readonly point: Point
  readonly hectares: number
  /** How far its outline is turned [degrees]. */
  readonly turned: number
}

const orchard = { crop: 'sweet cherry', cultivar: 'Ostrel Dark' } as const
const seedField = { crop: 'sunflower', cultivar: 'Vale 7' } as const

/**
 * Eight fields in the middle of the northern Atlantic, hundreds of kilometres from any land, where the sun is that of 47
 * degrees north and clocks of UTC-2 tell solar time. The fields lie more than 3 km apart, beyond the range in which honey
 * bees of one are those of the other.
 */
export const plantedFields: readonly PlantedField[] = [
  { ...orchard, name: 'Averlusk Orchard', point: { latitude: 47.52, longitude: -30.12 }, hectares: 2.4, turned: 10 },
  { ...orchard, name: 'Brunnoxel Orchard', point: { latitude: 47.548, longitude: -30.062 }, hectares: 3.1, turned: 55 },
  { ...orchard, name: 'Cadrimoth Orchard', point: { latitude: 47.575, longitude: -30.002 }, hectares: 1.8, turned: 130 },
  { ...orchard, name: 'Dorvenna Orchard', point: { latitude: 47.604, longitude: -29.945 }, hectares: 2.7, turned: 85 },
  { ...seedField, name: 'Fennorax Field', point: { latitude: 47.462, longitude: -30.09 }, hectares: 6.2, turned: 20 },
  { ...seedField, name: 'Gilvoran Field', point: { latitude: 47.49, longitude: -30.03 }, hectares: 8.5, turned: 70 },
  { ...seedField, name: 'Hesskary Field', point: { latitude: 47.518, longitude: -29.972 }, hectares: 5.4, turned: 160 },
  { ...seedField, name: 'Ithmelow Field', point: { latitude: 47.546, longitude: -29.912 }, hectares: 7.3, turned: 115 },
]

/** Minutes that every clock in the valley is ahead of UTC. */
export const clockOffset = -120

/** A blunt-cornered shape around its middle, counter-clockwise; only its form matters. */
const outline: readonly (readonly [number, number])[] = [
  [1, -0.55],
  [1.15, 0.4],
  [0.2, 0.75],
  [-0.95, 0.6],
  [-1.1, -0.35],
  [-0.3, -0.85],
]

/** Metres of one degree of latitude on the sphere; enough for drawing an outline. */
const metresPerDegree = 111_195

function areaOf(corners: readonly (readonly [number, number])[]): number {
  return corners.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = corners[(k + 1) % corners.length] ?? [0, 0]
    return sum + (x * nextY - nextX * y) / 2
  }, 0)
}

const toSixPlaces = (degrees: number): number => Math.round(degrees * 1e6) / 1e6

/** A point so many metres east and north of another. */
export function pointBeside(point: Point, east: number, north: number): Point {
  const shrink = Math.cos((point.latitude * Math.PI) / 180)
  return {
    latitude: toSixPlaces(point.latitude + north / metresPerDegree),
    longitude: toSixPlaces(point.longitude + east / (metresPerDegree * shrink)),
  }
}

/** Corners of a field as [longitude, latitude], around its point and of its hectares. */
export function outlineOf(field: PlantedField): [number, number][] {
  const scale = Math.sqrt((field.hectares * 10_000) / areaOf(outline))
  const turn = (field.turned * Math.PI) / 180
  return outline.map(([x, y]) => {
    const east = scale * (x * Math.cos(turn) - y * Math.sin(turn))
    const north = scale * (x * Math.sin(turn) + y * Math.cos(turn))
    const { latitude, longitude } = pointBeside(field.point, east, north)
    return [longitude, latitude]
  })
}
