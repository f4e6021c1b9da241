import { binomialLogPmf } from '../distribution/binomial.ts'
import { exp, log } from '../elementary.ts'

/** Mean and variance of ln(B + 1) for B of a binomial law: what is known of a count that was watched for a part of its effort. */
export interface ThinnedLog {
  readonly mean: number
  readonly variance: number
}

/** Chances below this part of the greatest are left out of a sum. */
const negligible = 1e-18
/** Logarithms of so many whole numbers are kept. */
const kept = 4096
const logs = new Float64Array(kept)
for (let k = 1; k < kept; k++) logs[k] = log(k)
const logOf = (k: number): number => (k < kept ? (logs[k] as number) : log(k))

/**
 * Mean and variance of ln(B + 1), B ~ binomial(count, part): summed outwards from the likeliest value.
 *
 * @param count whole number, at least 0
 * @param part above 0, at most 1
 * @check count 10, part 1: ln 11 and 0; count 4, part 1/2: 1.032430 and 0.149154 (R 4.2.2, sums of dbinom)
 */
export function thinnedLog(count: number, part: number): ThinnedLog {
  if (part >= 1 || count === 0) return { mean: logOf(count + 1), variance: 0 }
  const odds = part / (1 - part)
  const top = Math.min(Math.floor((count + 1) * part), count)
  const first = exp(binomialLogPmf(top, count, part))
  const centre = logOf(top + 1)
  let mass = first
  let sum = 0
  let square = 0
  const add = (k: number, p: number): void => {
    const off = logOf(k + 1) - centre
    mass += p
    sum += p * off
    square += p * off * off
  }
  let p = first
  for (let k = top; k < count && p > negligible * first; k++) {
    p *= ((count - k) / (k + 1)) * odds
    add(k + 1, p)
  }
  p = first
  for (let k = top; k > 0 && p > negligible * first; k--) {
    p *= k / ((count - k + 1) * odds)
    add(k - 1, p)
  }
  const off = sum / mass
  return { mean: centre + off, variance: Math.max(0, square / mass - off * off) }
}
