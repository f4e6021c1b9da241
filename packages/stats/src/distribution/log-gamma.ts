import { requirePositive } from '@thrum/model/ground'
import { log, log1p } from '../elementary.ts'

/** log(2 pi) / 2. */
export const halfLogTwoPi = 0.9189385332046728

/** 1 - Euler's constant, and zeta(k) - 1 for k = 2, 3, ...: the Taylor coefficients of log gamma at 2. Computed with 40 digits. */
const oneMinusEuler = 0.42278433509846713
const zetaMinusOne: readonly number[] = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914, 0.008349277381922827,
  0.00407735619794434, 0.0020083928260822143, 0.0009945751278180853, 0.0004941886041194645, 0.0002460865533080483,
  0.00012271334757848915, 6.124813505870483e-5, 3.058823630702049e-5, 1.528225940865187e-5, 7.637197637899763e-6,
  3.81729326499984e-6, 1.908212716553939e-6, 9.539620338727962e-7, 4.769329867878064e-7, 2.38450502727733e-7,
  1.1921992596531106e-7, 5.960818905125948e-8, 2.980350351465228e-8, 1.4901554828365043e-8, 7.45071178983543e-9,
  3.725334024788457e-9, 1.862659723513049e-9,
]

/** Coefficients B(2k) / (2k (2k - 1)) of Stirling's series. Abramowitz & Stegun 1964, 6.1.40 (exact fractions). */
const stirling: readonly number[] = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400]

/** From here on Stirling's series with eight terms is exact to the last bit or two. */
const stirlingFrom = 10

function stirlingTail(x: number): number {
  const square = 1 / (x * x)
  let sum = 0
  for (let k = stirling.length - 1; k >= 0; k--) sum = sum * square + (stirling[k] ?? 0)
  return sum / x
}

/** log gamma(2 + z) for |z| <= 1/2, exact in relative terms near its zero at z = 0. */
function logGammaNearTwo(z: number): number {
  let sum = 0
  for (let k = zetaMinusOne.length + 1; k >= 2; k--) {
    const coefficient = (zetaMinusOne[k - 2] ?? 0) / k
    sum = (k % 2 === 0 ? coefficient : -coefficient) + z * sum
  }
  return z * (oneMinusEuler + z * sum)
}

/** log gamma(1 + z) for -1/2 < z, exact in relative terms near its zeros at z = 0 and z = 1. */
export function logGammaOnePlus(z: number): number {
  if (z <= 0.5) return logGammaNearTwo(z) - log1p(z)
  if (z <= 1.5) return logGammaNearTwo(z - 1)
  return logGammaFrom(1 + z)
}

/** log gamma(x) for x above 2.5: products below 10, Stirling's series from there. */
function logGammaFrom(x: number): number {
  if (x >= stirlingFrom) return (x - 0.5) * log(x) - x + halfLogTwoPi + stirlingTail(x)
  let product = 1
  let rest = x
  while (rest > 2.5) {
    rest -= 1
    product *= rest
  }
  return log(product) + logGammaNearTwo(rest - 2)
}

/**
 * Natural log of the gamma function.
 *
 * @param x finite, above 0
 * @returns log gamma(x), relative error about 1e-15, also near the zeros at 1 and 2
 * @throws InputError ground/input/out-of-range
 * @source Abramowitz M. & Stegun I.A. (1964) Handbook of Mathematical Functions, 6.1.33 and 6.1.40.
 * @check logGamma(0.5) is log(pi) / 2 = 0.5723649429247001
 */
export function logGamma(x: number): number {
  requirePositive('x', x)
  if (x <= 0.5) return logGammaNearTwo(x) - log1p(x) - log(x)
  if (x <= 2.5) return logGammaOnePlus(x - 1)
  return logGammaFrom(x)
}

/** log(n!) for n above -1/2. */
export function logFactorial(n: number): number {
  return logGammaOnePlus(n)
}

/**
 * What Stirling's formula misses: log gamma(x + 1) - (x + 1/2) log x + x - log(2 pi) / 2.
 *
 * @source Loader C. (2000) Fast and accurate computation of binomial probabilities (note, Bell Labs).
 */
export function stirlingError(x: number): number {
  if (x >= stirlingFrom) return stirlingTail(x)
  return logGammaOnePlus(x) - (x + 0.5) * log(x) + x - halfLogTwoPi
}

/**
 * Half the unit deviance of a count against its mean: x log(x / mean) + mean - x, without loss where the two are near.
 *
 * @param x at least 0
 * @param mean above 0
 * @source Loader C. (2000), as above.
 */
export function halfDeviance(x: number, mean: number): number {
  const gap = x - mean
  if (x === 0) return mean
  if (Math.abs(gap) >= 0.1 * (x + mean)) return x * log(x / mean) - gap
  // With v = (x - mean) / (x + mean), log(x / mean) = 2 (v + v^3 / 3 + v^5 / 5 + ...).
  const v = gap / (x + mean)
  const square = v * v
  let sum = gap * v
  let term = 2 * x * v
  for (let k = 1; k < 1000; k++) {
    term *= square
    const next = sum + term / (2 * k + 1)
    if (next === sum) break
    sum = next
  }
  return sum
}
