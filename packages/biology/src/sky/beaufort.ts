import { InputError } from '@thrum/model/ground'

/** Highest mean wind of each Beaufort step from 0 to 11 [m/s]; above the last is 12. From memory: World Meteorological Organization scale. */
export const beaufortUpperBounds: readonly number[] = [0.2, 1.5, 3.3, 5.4, 7.9, 10.7, 13.8, 17.1, 20.7, 24.4, 28.4, 32.6]

/**
 * Beaufort step of a mean wind speed.
 *
 * The printed table leaves gaps of 0.1 m/s between steps (7.9, then 8.0); a speed inside a gap belongs to the upper step.
 *
 * @param metresPerSecond mean wind, 0 or more [m/s]
 * @returns whole number from 0 to 12 [Beaufort]
 * @throws InputError biology/input/wind for a negative or endless speed
 * @source World Meteorological Organization, Guide to Instruments and Methods of Observation, Beaufort table. From memory.
 * @check 6.0 m/s is Beaufort 4 and 8.0 m/s is Beaufort 5
 */
export function beaufortOf(metresPerSecond: number): number {
  if (!(metresPerSecond >= 0 && Number.isFinite(metresPerSecond))) {
    throw new InputError('biology/input/wind', `metresPerSecond is ${metresPerSecond}; expected a wind speed, 0 or more`)
  }
  const step = beaufortUpperBounds.findIndex((bound) => metresPerSecond <= bound)
  return step === -1 ? 12 : step
}
