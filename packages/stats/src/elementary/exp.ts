import { powerRests, powerStepHigh, powerStepLow, powers, scales, stepsPerUnit } from './tables.ts'

/** Adding and taking away this rounds a double to a whole number. */
const rounding = 6755399441055744
/** Beyond these e^x is Infinity, or 0. */
const largest = 709.782712893384
const least = -745.1332191019411

/**
 * e^x from sums, products and a table: the same bits on every engine.
 *
 * x = (128 m + j) log 2 / 128 + r with |r| below 0.0028; e^x = 2^m 2^(j / 128) e^r. Within 0.52 of the last digit's unit.
 *
 * @source Tang P.T.P. (1989) ACM Trans. Math. Softw. 15, 144-157 (the way by a table; from memory)
 */
export function exp(x: number): number {
  if (!(x <= largest)) return x > largest ? Number.POSITIVE_INFINITY : x
  if (x < least) return 0
  const z = x * stepsPerUnit + rounding - rounding
  const r = x - z * powerStepHigh - z * powerStepLow
  const k = z | 0
  const j = k & 127
  const m = k >> 7
  const t = powers[j] as number
  const rest = r + r * r * (0.5 + r * (0.16666666666666666 + r * (0.041666666666666664 + r * 0.008333333333333333)))
  const value = t + ((powerRests[j] as number) + t * rest)
  if (m > -1022) return m < 1024 ? value * (scales[m + 1074] as number) : value * 2 * (scales[2097] as number)
  // Below the least normal double: scaled in two steps, so that it is rounded once.
  return value * (scales[m + 1138] as number) * (scales[1010] as number)
}
