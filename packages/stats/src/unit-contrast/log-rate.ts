import { requireCount, requirePositive } from '@thrum/model/ground'
import { log } from '../elementary.ts'

/**
 * Log rate of a unit: ln((count + 1/2) / effort), the half always in so that 0 has a place.
 *
 * @param count whole number, at least 0 [count]
 * @param effort above 0
 * @throws InputError ground/input/out-of-range
 * @source Anscombe F.J. (1948) Biometrika 35, 246-254, for the half; methods 2.8.
 * @check 62 in 200 gives -1.163151
 */
export function logRate(count: number, effort: number): number {
  requireCount('count', count)
  requirePositive('effort', effort)
  return log((count + 0.5) / effort)
}

/**
 * Log odds of a unit: ln((first + 1/2) / (second + 1/2)), "first per second".
 *
 * @throws InputError ground/input/out-of-range
 * @source Haldane J.B.S. (1956) Ann. Hum. Genet. 20, 309-311.
 * @check 40 to 22 gives ln(40.5 / 22.5) = 0.587787
 */
export function logOdds(first: number, second: number): number {
  requireCount('first', first)
  requireCount('second', second)
  return log((first + 0.5) / (second + 0.5))
}
