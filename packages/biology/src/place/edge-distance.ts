import { InputError } from '@thrum/model/ground'
import { earthRadius, type Position, radiansPerDegree, readPosition } from './great-circle.ts'

/** A place as GeoJSON writes it: positions are longitude, latitude; a polygon's first ring is its edge, further rings are holes. */
export type Shape =
  | { readonly type: 'Point'; readonly coordinates: Position }
  | { readonly type: 'LineString'; readonly coordinates: readonly Position[] }
  | { readonly type: 'Polygon'; readonly coordinates: readonly (readonly Position[])[] }
  | { readonly type: 'MultiPolygon'; readonly coordinates: readonly (readonly (readonly Position[])[])[] }

type Flat = readonly [east: number, north: number]
type Chain = readonly Flat[]
interface FlatShape {
  /** Open lines, closed rings and lone points, all as chains. */
  readonly chains: readonly Chain[]
  /** Rings that enclose ground, holes with them: the even-odd rule tells what is inside. */
  readonly areas: readonly (readonly Chain[])[]
}

function chainsOf(shape: Shape): {
  readonly lines: readonly (readonly Position[])[]
  readonly areas: readonly (readonly (readonly Position[])[])[]
} {
  switch (shape.type) {
    case 'Point':
      return { lines: [[shape.coordinates]], areas: [] }
    case 'LineString':
      return { lines: [shape.coordinates], areas: [] }
    case 'Polygon':
      return { lines: [], areas: [shape.coordinates] }
    case 'MultiPolygon':
      return { lines: [], areas: shape.coordinates }
  }
}

const positionsOf = (shape: Shape): readonly Position[] => {
  const { lines, areas } = chainsOf(shape)
  return [...lines, ...areas.flat()].flat()
}

/** Lays both shapes on one plane around their middle latitude, east and north in metres. */
function flatten(shape: Shape, origin: Position, middleLatitude: number): FlatShape {
  const eastScale = earthRadius * Math.cos(middleLatitude * radiansPerDegree) * radiansPerDegree
  const northScale = earthRadius * radiansPerDegree
  const at = readPosition(origin)
  const place = (position: Position): Flat => {
    const { longitude, latitude } = readPosition(position)
    // The shorter way round, so that fields on both sides of the 180th meridian are neighbours.
    const turn = ((((longitude - at.longitude + 180) % 360) + 360) % 360) - 180
    return [turn * eastScale, (latitude - at.latitude) * northScale]
  }
  const close = (ring: Chain): Chain => (ring[0] === undefined ? ring : [...ring, ring[0]])
  const { lines, areas } = chainsOf(shape)
  const flatAreas = areas.map((rings) => rings.map((ring) => close(ring.map(place))))
  return { chains: [...lines.map((line) => line.map(place)), ...flatAreas.flat()], areas: flatAreas }
}

function isInside(areas: readonly (readonly Chain[])[], [east, north]: Flat): boolean {
  return areas.some((rings) => {
    let inside = false
    for (const ring of rings) {
      for (let i = 1; i < ring.length; i++) {
        const [ax, ay] = ring[i - 1] as Flat
        const [bx, by] = ring[i] as Flat
        if (ay > north !== by > north && east < ax + ((bx - ax) * (north - ay)) / (by - ay)) inside = !inside
      }
    }
    return inside
  })
}

function pointToSegment([px, py]: Flat, [ax, ay]: Flat, [bx, by]: Flat): number {
  const dx = bx - ax
  const dy = by - ay
  const length2 = dx * dx + dy * dy
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length2))
  return Math.hypot(px - ax - along * dx, py - ay - along * dy)
}

const side = ([ax, ay]: Flat, [bx, by]: Flat, [cx, cy]: Flat): number => (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)

function segmentDistance(a: Flat, b: Flat, c: Flat, d: Flat): number {
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0
  return Math.min(pointToSegment(a, c, d), pointToSegment(b, c, d), pointToSegment(c, a, b), pointToSegment(d, a, b))
}

function chainDistance(one: Chain, other: Chain): number {
  let nearest = Number.POSITIVE_INFINITY
  for (let i = one.length > 1 ? 1 : 0; i < one.length; i++) {
    for (let j = other.length > 1 ? 1 : 0; j < other.length; j++) {
      const distance = segmentDistance(
        one[Math.max(0, i - 1)] as Flat,
        one[i] as Flat,
        other[Math.max(0, j - 1)] as Flat,
        other[j] as Flat,
      )
      if (distance < nearest) nearest = distance
    }
  }
  return nearest
}

/**
 * Shortest distance from the edge of one place to the edge of another; 0 where they touch, cross or one holds the other.
 * A place inside a hole of another is outside of it.
 *
 * Both are laid on a plane around their middle latitude (equirectangular), which is meant for fields of one region: up to
 * 50 km apart and 65 degrees from the equator it is within 0.1 % of the great circle. Further off it is a rough figure, and so
 * far beyond any insect's range that nothing hangs on it.
 *
 * @param one a point, line or polygon; rings may be closed or not
 * @param other the same
 * @returns metres
 * @throws InputError biology/input/shape for a shape without positions, ground/input/out-of-range for a bad position
 * @source Plane geometry; equirectangular projection: Snyder J.P. (1987) Map Projections, USGS Prof. Paper 1395, 90-91.
 * @check two squares 0.01 degrees wide, 0.01 degrees apart on the equator: 1,111.95 m
 */
export function edgeDistance(one: Shape, other: Shape): number {
  const positions = [positionsOf(one), positionsOf(other)]
  const origin = positions[0]?.[0]
  if (origin === undefined || positions[1]?.[0] === undefined) {
    throw new InputError('biology/input/shape', 'a place has no positions; expected at least one longitude and latitude')
  }
  const latitudes = positions.flat().map((position) => readPosition(position).latitude)
  const middle = (latitudes.reduce((low, x) => Math.min(low, x), 90) + latitudes.reduce((high, x) => Math.max(high, x), -90)) / 2
  const a = flatten(one, origin, middle)
  const b = flatten(other, origin, middle)
  const holds = (areas: FlatShape['areas'], chains: readonly Chain[]): boolean =>
    chains.some((chain) => chain[0] !== undefined && isInside(areas, chain[0]))
  if (holds(a.areas, b.chains) || holds(b.areas, a.chains)) return 0
  let nearest = Number.POSITIVE_INFINITY
  for (const chain of a.chains) for (const against of b.chains) nearest = Math.min(nearest, chainDistance(chain, against))
  return nearest
}
