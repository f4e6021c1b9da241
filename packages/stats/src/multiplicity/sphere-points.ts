import type { Rng } from '@thrum/model/ground'
import { cos, log, sin } from '../elementary.ts'

/** The first prime numbers. */
function primes(howMany: number): readonly number[] {
  const found: number[] = []
  for (let n = 2; found.length < howMany; n++) if (found.every((prime) => n % prime !== 0)) found.push(n)
  return found
}

/** The logarithm of a radius is taken: it keeps this far from 0 and 1. */
const edge = 2 ** -53

/**
 * Directions spread evenly over the sphere of a space, one after another: a lattice in the unit cube, moved by a random shift, is
 * turned into normal numbers in pairs, and these into a direction. Any number of them from the start on is spread evenly.
 *
 * @param dimensions of the space, at least 2
 * @param rng draws the shift and nothing else
 * @returns a function that overwrites and returns one array of that length, a vector of length 1
 * @source Lattice of square roots of primes: Richtmyer R.D. (1951) Los Alamos report LA-1342; random shifts: Cranley R., Patterson T.N.L.
 *   (1976) SIAM J. Numer. Anal. 13, 904-914; pairs: Box G.E.P., Muller M.E. (1958) Ann. Math. Stat. 29, 610-611. From memory.
 * @check in two dimensions the angles are i sqrt(2) of a turn and a shift
 */
export function spherePoints(dimensions: number, rng: Rng): () => Float64Array {
  const pairs = Math.ceil(dimensions / 2)
  const steps = primes(2 * pairs).map((prime) => Math.sqrt(prime) % 1)
  const at = steps.map(() => rng.uniform())
  const point = new Float64Array(dimensions)
  return () => {
    let square = 0
    for (let k = 0; k < 2 * pairs; k++) at[k] = ((at[k] as number) + (steps[k] as number)) % 1
    for (let pair = 0; pair < pairs; pair++) {
      const angle = 2 * Math.PI * (at[2 * pair] as number)
      // Folded, so that what is integrated has no jump from one side of the cube to the other; the angle has none.
      const folded = Math.abs(2 * (at[2 * pair + 1] as number) - 1)
      const radius = Math.sqrt(-2 * log(Math.min(Math.max(folded, edge), 1 - edge)))
      point[2 * pair] = radius * cos(angle)
      if (2 * pair + 1 < dimensions) point[2 * pair + 1] = radius * sin(angle)
    }
    for (let k = 0; k < dimensions; k++) square += (point[k] as number) ** 2
    const length = Math.sqrt(square)
    for (let k = 0; k < dimensions; k++) point[k] = (point[k] as number) / length
    return point
  }
}
