import { requireFinite } from '@thrum/model/ground'

/** Longitude, then latitude, WGS 84 [°]; anything after (a height) is not read. */
export type Position = readonly number[]

/** Radius of the sphere with the area of the WGS 84 ellipsoid [m]. Published: Moritz (1980) Geodetic Reference System, R2. */
export const earthRadius = 6_371_007.2

export const radiansPerDegree = Math.PI / 180

/** A position taken apart and checked: finite, and a latitude that exists. */
export function readPosition(position: Position): { readonly longitude: number; readonly latitude: number } {
  const longitude = position[0] ?? Number.NaN
  const latitude = position[1] ?? Number.NaN
  requireFinite('longitude', longitude)
  requireFinite('latitude', Math.abs(latitude) <= 90 ? latitude : Number.NaN)
  return { longitude, latitude }
}

/**
 * Great-circle distance on a sphere.
 *
 * @param from longitude, latitude [°]
 * @param to longitude, latitude [°]
 * @returns metres; within 0.6 % of the distance on the ellipsoid, whatever the direction
 * @throws InputError ground/input/out-of-range for a position without two finite numbers, or beyond a pole
 * @source Haversine form: Sinnott R.W. (1984) Sky & Telescope 68, 158. Exact to rounding also for close points.
 * @check one degree along the equator is 111,195.05 m; pole to pole is pi times the radius
 */
export function greatCircleDistance(from: Position, to: Position): number {
  const a = readPosition(from)
  const b = readPosition(to)
  const halfNorth = Math.sin(((b.latitude - a.latitude) * radiansPerDegree) / 2)
  const halfEast = Math.sin(((b.longitude - a.longitude) * radiansPerDegree) / 2)
  const cosines = Math.cos(a.latitude * radiansPerDegree) * Math.cos(b.latitude * radiansPerDegree)
  const haversine = halfNorth * halfNorth + cosines * halfEast * halfEast
  // Rounding may lift the square root a hair above 1 for opposite points.
  return 2 * earthRadius * Math.asin(Math.min(1, Math.sqrt(haversine)))
}
