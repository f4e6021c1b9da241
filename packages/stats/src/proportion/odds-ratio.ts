import { requireCount, requireOpenUnit } from '@thrum/model/ground'
import { type NoncentralHypergeometric, noncentralHypergeometric } from '../distribution/noncentral-hypergeometric.ts'
import { solveMonotone } from '../distribution/solve-monotone.ts'
import { exp, log } from '../elementary.ts'
import type { Interval } from '../interval.ts'
import { probabilityTie } from './binomial-test.ts'

/** An odds ratio given the margins, or word that the margins leave nothing to vary. */
export type OddsRatio =
  | { readonly kind: 'ratio'; readonly ratio: number; readonly limits: Interval; readonly p: number }
  | { readonly kind: 'margins-fix-all' }

/**
 * Odds ratio (a / b) / (c / d) of a 2 x 2 table given its margins: conditional maximum likelihood, exact limits, exact p.
 *
 * The estimate is not the plain ad / (bc); it lies a little nearer to 1. Cells count independent events.
 *
 * @param a first row, first column; then b beside it, c below it, d across [count]
 * @param level two-sided coverage [1]
 * @returns ratio 0 or Infinity when the observed cell is at an end of its range; p by the rule of least likelihood
 * @throws InputError ground/input/out-of-range
 * @source Cornfield J. (1956) Proc. 3rd Berkeley Symp. 4, 135-148; Fisher R.A. (1935) J. R. Stat. Soc. 98, 39-82.
 * @check 34, 12, 15, 9 gives 1.686663, 0.510283 to 5.508440, p 0.411719 (R 4.2.2, the equations of fisher.test solved to 1e-14;
 *   fisher.test itself stops its search early and prints 1.686717, 0.510288 to 5.508323)
 */
export function oddsRatioExact(a: number, b: number, c: number, d: number, level = 0.95): OddsRatio {
  for (const [name, cell] of Object.entries({ a, b, c, d })) requireCount(name, cell)
  requireOpenUnit('level', level)
  const law = noncentralHypergeometric(a + b, c + d, a + c)
  if (law.least === law.most) return { kind: 'margins-fix-all' }
  const beyond = (1 - level) / 2
  const atLeast = a === law.least
  const atMost = a === law.most
  const start = log((a + 0.5) / (b + 0.5)) - log((c + 0.5) / (d + 0.5))
  const place = a - law.least
  return {
    kind: 'ratio',
    ratio: atLeast ? 0 : atMost ? Number.POSITIVE_INFINITY : exp(solveMean(law, a, start)),
    limits: {
      lower: atLeast ? 0 : exp(solveTail(law, place, 'upper', beyond, start)),
      upper: atMost ? Number.POSITIVE_INFINITY : exp(solveTail(law, place, 'lower', beyond, start)),
    },
    p: leastLikelihoodP(law.probabilities(0), place),
  }
}

function leastLikelihoodP(probabilities: Float64Array, place: number): number {
  const ceiling = (probabilities[place] ?? 0) * (1 + probabilityTie)
  let p = 0
  for (const probability of probabilities) if (probability <= ceiling) p += probability
  return Math.min(1, p)
}

/** Log odds ratio at which the mean of the first cell is `a`. */
function solveMean(law: NoncentralHypergeometric, a: number, start: number): number {
  const at = (logRatio: number) => {
    const { mean, variance } = momentsOf(law.probabilities(logRatio), 0)
    return { value: mean + law.least - a, slope: variance }
  }
  return solveMonotone({ at, start, reach: 0.5 })
}

/** Log odds ratio at which `beyond` lies at the observed cell and on the named side of it. */
function solveTail(law: NoncentralHypergeometric, place: number, side: 'lower' | 'upper', beyond: number, start: number): number {
  const target = log(beyond)
  const direction = side === 'upper' ? 1 : -1
  const at = (logRatio: number) => {
    const probabilities = law.probabilities(logRatio)
    const tail = side === 'upper' ? probabilities.subarray(place) : probabilities.subarray(0, place + 1)
    const { mass, mean } = momentsOf(tail, side === 'upper' ? place : 0)
    if (mass === 0) return { value: Number.NEGATIVE_INFINITY, slope: direction }
    // d log(tail) is the mean within the tail less the mean of all.
    return { value: log(mass) - target, slope: mean - momentsOf(probabilities, 0).mean }
  }
  return solveMonotone({ at, start, reach: 0.5 })
}

/** Mass, and mean and variance within it, of probabilities at places first, first + 1, ... */
function momentsOf(
  probabilities: Float64Array,
  first: number,
): { readonly mass: number; readonly mean: number; readonly variance: number } {
  let mass = 0
  let weighted = 0
  probabilities.forEach((probability, k) => {
    mass += probability
    weighted += probability * (first + k)
  })
  if (mass === 0) return { mass, mean: first, variance: 0 }
  const mean = weighted / mass
  let squares = 0
  probabilities.forEach((probability, k) => {
    squares += probability * (first + k - mean) ** 2
  })
  return { mass, mean, variance: squares / mass }
}
