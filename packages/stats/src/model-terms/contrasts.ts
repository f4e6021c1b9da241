import { InputError, type Rng, requireOpenUnit } from '@thrum/model/ground'
import { type Law, multiplierOf, twoSidedPOf } from '../distribution/law.ts'
import { exp } from '../elementary.ts'
import type { Interval } from '../interval.ts'
import { holm } from '../multiplicity/holm.ts'
import { type SimultaneousMultiplier, simultaneousMultiplier } from '../multiplicity/simultaneous-multiplier.ts'
import { type LinearSum, linearSum, type NotEstimable } from './linear-sum.ts'
import type { Levels, MarginalMeans } from './marginal-means.ts'

/** Which means are compared: each with each before it, or each with one. */
export type Pairs = 'all' | { readonly against: Levels }

/** Two means that are compared: `of` less `against`. */
export interface Pair {
  readonly of: Levels
  readonly against: Levels
}

/** exp of a difference: a ratio of means under a log link, of odds under a logit link. */
export interface RatioTold {
  readonly ratio: number
  readonly limits: Interval
  readonly simultaneous: Interval
}

/** A difference of two means, or why there is none. */
export type MeanContrast = Pair &
  (
    | {
        readonly kind: 'contrast'
        readonly difference: number
        readonly se: number
        /** Difference by standard error. */
        readonly statistic: number
        readonly p: number
        /** p after Holm, over all contrasts of this kind. */
        readonly holm: number
        /** Limits that hold for this contrast alone. */
        readonly limits: Interval
        /** Limits that hold for all contrasts of this kind at once. */
        readonly simultaneous: Interval
        /** Null under an identity link. */
        readonly ratio: RatioTold | null
      }
    /** There is no standard error to judge it by: its variance is none, or lost in rounding. */
    | { readonly kind: 'no-scatter'; readonly difference: number }
    | NotEstimable
  )

export interface MeanContrasts {
  readonly contrasts: readonly MeanContrast[]
  /** Half the width of the simultaneous limits in standard errors; null where no contrast has any. */
  readonly multiplier: SimultaneousMultiplier | null
}

type Asked = Pair & { readonly weights: Float64Array; readonly sum: LinearSum }
type Scattered = Asked & { readonly sum: Extract<LinearSum, { kind: 'sum' }> }

/** Places of the means that are compared: of, against. */
function placesOf({ means }: MarginalMeans, pairs: Pairs): readonly (readonly [number, number])[] {
  if (pairs === 'all')
    return means.flatMap((_, later) => Array.from({ length: later }, (_, earlier) => [later, earlier] as const))
  const { against } = pairs
  const place = means.findIndex(({ at }) => {
    const names = Object.keys(at)
    return (
      names.length === Object.keys(against).length &&
      names.every((name) => Object.hasOwn(against, name) && against[name] === at[name])
    )
  })
  if (place < 0) {
    const told = Object.entries(against).map(([name, level]) => `${name}: ${level}`)
    throw new InputError('ground/input/out-of-range', `there is no mean of [${told.join(', ')}] to compare with`)
  }
  return means.flatMap((_, other) => (other === place ? [] : [[other, place] as const]))
}

/** Correlation of sums of coefficients, row major. */
function correlationOf(scattered: readonly Scattered[], covariance: Float64Array): Float64Array {
  const m = scattered.length
  const out = new Float64Array(m * m)
  const turned = scattered.map(({ weights }) => {
    const p = weights.length
    return weights.map((_, j) => weights.reduce((sum, weight, k) => sum + weight * (covariance[k * p + j] as number), 0))
  })
  scattered.forEach(({ weights, sum }, a) => {
    for (let b = 0; b < a; b++) {
      const other = scattered[b] as Scattered
      const both = (turned[b] as Float64Array).reduce((total, value, j) => total + value * (weights[j] as number), 0)
      const correlation = Math.min(Math.max(both / sum.se / other.sum.se, -1), 1)
      out[a * m + b] = correlation
      out[b * m + a] = correlation
    }
    out[a * m + a] = 1
  })
  return out
}

/** The limits on either side, on the scale of the difference or as a ratio. */
function told(difference: number, se: number, alone: number, atOnce: number, isRatio: boolean) {
  const around = (multiplier: number): Interval => ({ lower: difference - multiplier * se, upper: difference + multiplier * se })
  const ratioOf = ({ lower, upper }: Interval): Interval => ({ lower: exp(lower), upper: exp(upper) })
  const limits = around(alone)
  const simultaneous = around(atOnce)
  const ratio = isRatio ? { ratio: exp(difference), limits: ratioOf(limits), simultaneous: ratioOf(simultaneous) } : null
  return { limits, simultaneous, ratio }
}

/** p values of all, each alone and after Holm. */
function tested(scattered: readonly Scattered[], law: Law) {
  const statistics = scattered.map(({ sum }) => sum.estimate / sum.se)
  const alone = statistics.map((statistic) => twoSidedPOf(law, statistic))
  const together = holm(alone)
  return statistics.map((statistic, k) => ({ statistic, p: alone[k] as number, holm: together[k] as number }))
}

/**
 * Differences between marginal means, each with its own limits and with limits that hold for all of them at once.
 *
 * A difference may be told even where both its means are not estimable. Under a log link it is the log of a ratio, in which effort and
 * variances of random intercepts cancel. Law and level are those of the means.
 *
 * @param pairs which means: under `all` each with each before it, so that a first level stays what others are held against
 * @param rng for the multiplier of the simultaneous limits; it is forked by a label
 * @throws InputError where there is no mean to compare with
 * @source Hothorn T., Bretz F., Westfall P. (2008) Biom. J. 50, 346-363; Holm (1979), as in `holm`. From memory.
 * @check one contrast: the simultaneous limits are its own limits
 */
export function contrastsOf(means: MarginalMeans, pairs: Pairs, rng: Rng): MeanContrasts {
  const { design, estimates, rows, asked } = means
  const { law, level = 0.95, scale } = asked
  requireOpenUnit('level', level)
  const all = placesOf(means, pairs).map(([one, other]): Asked => {
    const weights = (rows[one] as Float64Array).map((weight, j) => weight - ((rows[other] as Float64Array)[j] as number))
    return {
      of: means.means[one]?.at ?? {},
      against: means.means[other]?.at ?? {},
      weights,
      sum: linearSum(design, estimates, weights),
    }
  })
  const scattered = all.filter((own): own is Scattered => own.sum.kind === 'sum')
  const m = scattered.length
  const multiplier =
    m === 0 ? null : simultaneousMultiplier({ correlation: correlationOf(scattered, estimates.covariance), m, law, level, rng })
  const alone = multiplierOf(law, level)
  const tests = new Map(tested(scattered, law).map((test, k) => [scattered[k] as Asked, test]))
  const contrasts = all.map((own): MeanContrast => {
    const { of, against, sum } = own
    if (sum.kind === 'not-estimable') return { of, against, ...sum }
    const { estimate: difference } = sum
    const test = tests.get(own)
    if (sum.kind === 'no-scatter' || test === undefined || multiplier === null)
      return { kind: 'no-scatter', of, against, difference }
    const { se } = sum
    const limits = told(difference, se, alone, multiplier.value, scale.link !== 'identity')
    return { kind: 'contrast', of, against, difference, se, ...test, ...limits }
  })
  return { contrasts, multiplier }
}
