import { type Rng, requireCount, requireOpenUnit } from '@thrum/model/ground'
import { type Law, multiplierOf } from '../distribution/law.ts'
import { solveMonotone } from '../distribution/solve-monotone.ts'
import { exp, log } from '../elementary.ts'
import { type CorrelationFactor, factorOfCorrelation } from './correlation-factor.ts'
import { type Radius, type RadiusBeyond, radiusOf, tabulated } from './radius.ts'
import { spherePoints } from './sphere-points.ts'

/** Half the width, in standard errors, of intervals that hold all at once. */
export interface SimultaneousMultiplier {
  readonly value: number
  /** Three standard errors of `value` over the random shifts; 0 where it is exact. */
  readonly error: number
  /** Directions it was averaged over; 0 where it is exact. */
  readonly directions: number
}

/** What is asked: `correlation` of m estimates by m (row major), the law of one alone, and the coverage of all together. */
export interface SimultaneousProblem {
  readonly correlation: Float64Array
  readonly m: number
  readonly law: Law
  readonly level: number
  /** Forked by a label: the same seed gives the same multiplier, whatever was drawn from it before. */
  readonly rng: Rng
}

/** Lattices of one shift each: their scatter tells the error. */
const shifts = 12
const firstDirections = 256
const mostDirections = 65_536
/** Directions are doubled until the error is below this part of the multiplier, or there are the most of them. */
const wanted = 8e-4

/** Largest of the estimates along a direction of length 1. */
function largestAlong({ rank, rows }: CorrelationFactor, m: number, direction: Float64Array): number {
  let largest = 0
  for (let i = 0; i < m; i++) {
    let sum = 0
    for (let k = 0; k < rank; k++) sum += (rows[i * rank + k] as number) * (direction[k] as number)
    largest = Math.max(largest, Math.abs(sum))
  }
  return largest
}

/** The same of the largest estimate at c, as a mean over directions. */
function beyondAt(c: number, largest: readonly number[], radius: Radius): RadiusBeyond {
  let beyond = 0
  let fall = 0
  for (const most of largest) {
    const at = radius(c / most)
    beyond += at.beyond
    fall += at.fall
  }
  return { beyond: beyond / largest.length, fall: fall / largest.length }
}

/**
 * The c with P(|T_1| <= c, ..., |T_m| <= c) = level, for estimates by their standard errors that are jointly normal, or t with one
 * common scale, and correlated as said.
 *
 * A normal vector is a direction and a length that know nothing of each other. Along a direction the largest |T_i| is the length by a
 * factor, and the law of the length is known: chi, or the root of an F. So only directions are averaged over, by lattices with random
 * shifts, and the same directions serve for every c. Contrasts that hang on each other need no care: their space has fewer dimensions.
 * One estimate, and several that are the same but for their signs, have the multiplier of one, exactly.
 *
 * @throws InputError on a matrix that is no correlation, no estimate, a level or df out of range
 * @source Deak I. (1980) Numer. Math. 35, 369-380 (direction and length); Somerville P.N. (1998) J. Comput. Graph. Stat. 7, 529-544
 *   (simultaneous t); Genz A., Bretz F. (2009) Computation of Multivariate Normal and t Probabilities, Springer. From memory. For one
 *   probability their separation of variables is quicker (abstract of Genz & Bretz 2002, J. Comput. Graph. Stat. 11, 950-971); a
 *   quantile asks for many, and these directions give them all.
 * @check all pairs of three means of one variance, 12 df, level 0.95: 2.667859, the studentised range 3.772929 (R 4.2.2 qtukey) by root 2
 */
export function simultaneousMultiplier({ correlation, m, law, level, rng }: SimultaneousProblem): SimultaneousMultiplier {
  requireCount('m', m, { min: 1 })
  requireOpenUnit('level', level)
  const factor = factorOfCorrelation(correlation, m)
  const alone = multiplierOf(law, level)
  if (factor.rank === 1) return { value: alone, error: 0, directions: 0 }

  const own = rng.fork('simultaneous-multiplier')
  const lattices = Array.from({ length: shifts }, (_, k) => ({
    next: spherePoints(factor.rank, own.fork(`shift/${k}`)),
    largest: [] as number[],
  }))
  const target = log(1 - level)
  let start = log(alone)
  for (let each = firstDirections; ; each *= 2) {
    for (const { next, largest } of lattices) while (largest.length < each) largest.push(largestAlong(factor, m, next()))
    const all = lattices.flatMap(({ largest }) => largest)
    // No multiplier is below that of one estimate, and none above that of as many with nothing in common.
    const least = all.reduce((least, most) => Math.min(least, most), 1)
    const radius = tabulated(radiusOf(factor.rank, law), alone, multiplierOf(law, 1 - (1 - level) / m) / least)
    const at = (u: number) => {
      const { beyond, fall } = beyondAt(exp(u), all, radius)
      return beyond === 0
        ? { value: Number.NEGATIVE_INFINITY, slope: -1 }
        : { value: log(beyond) - target, slope: -fall / beyond }
    }
    start = solveMonotone({ at, start, reach: 0.1 })
    const value = exp(start)
    const parts = lattices.map(({ largest }) => beyondAt(value, largest, radius))
    const mean = parts.reduce((sum, { beyond }) => sum + beyond, 0) / shifts
    const fall = parts.reduce((sum, part) => sum + part.fall, 0) / shifts
    const variance = parts.reduce((sum, { beyond }) => sum + (beyond - mean) ** 2, 0) / (shifts - 1) / shifts
    const error = (3 * Math.sqrt(variance) * value) / fall
    if (error < wanted * value || each >= mostDirections) return { value, error, directions: all.length }
  }
}
