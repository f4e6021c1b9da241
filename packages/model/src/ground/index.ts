// Errors, and sentences as data
export { InputError, ThrumError } from './errors.ts'
export { type Saying, type SayingValue, saying, type Words } from './saying.ts'
// Contracts of arguments
export { requireCount, requireFinite, requireOpenUnit, requirePositive, requireSameLength } from './require.ts'
// Units
export type { ClockMinutes, DayNumber, Metres, Minutes, Quantity, SquareMetres } from './quantity.ts'
// Randomness, hashing, canonical text
export { canonicalJson } from './canonical-json.ts'
export { sha256Hex, sha256Stream } from './hash.ts'
export { createRng, type Rng, rngAlgorithm, xoshiro128pp } from './rng.ts'
// Time and long work
export type { Clock } from './clock.ts'
export { type AbortSignal, type LongWork, type Progress, unwatched } from './work.ts'
