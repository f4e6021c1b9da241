// Errors, and sentences as data

// Randomness, hashing, canonical text
export { canonicalJson } from './canonical-json.ts'
// Time and long work
export type { Clock } from './clock.ts'
export { InputError, ThrumError } from './errors.ts'
export { sha256Hex, sha256Stream } from './hash.ts'
// Units
export type { ClockMinutes, DayNumber, Metres, Minutes, Quantity, SquareMetres } from './quantity.ts'
// Contracts of arguments
export { requireCount, requireFinite, requireOpenUnit, requirePositive, requireSameLength } from './require.ts'
export { createRng, type Rng, rngAlgorithm, xoshiro128pp } from './rng.ts'
export { type Saying, type SayingValue, saying, type Words } from './saying.ts'
export { type AbortSignal, type LongWork, type Progress, unwatched } from './work.ts'
