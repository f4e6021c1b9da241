import { InputError, requireOpenUnit, requireSameLength } from '@thrum/model/ground'
import { inverseLogit, logit } from '../distribution/beta.ts'
import { studentMultiplier } from '../distribution/student.ts'
import type { Interval } from '../interval.ts'

/** Parts of wholes in independent units. */
export interface UnitParts {
  /** Length F, each from 0 to its whole. */
  readonly parts: readonly number[]
  /** Length F, each at least 0; a unit with a whole of 0 has nothing to say of a share and is left out. */
  readonly wholes: readonly number[]
  /** Two-sided coverage, 0.95 unless said. */
  readonly level?: number
}

/** A share with its scatter between units, or why it has none. `units` counts those whose whole is above 0. */
export type UnitShare =
  | {
      readonly kind: 'share'
      readonly share: number
      readonly se: number
      readonly limits: Interval
      readonly df: number
      readonly units: number
    }
  | {
      readonly kind: 'too-few-units'
      readonly share: number
      readonly part: number
      readonly whole: number
      readonly units: number
    }
  /** The share is 0 or 1 in all units together: nothing scatters. */
  | { readonly kind: 'at-an-end'; readonly share: 0 | 1; readonly part: number; readonly whole: number; readonly units: number }
  | { readonly kind: 'nothing-counted' }

/** Smallest number of units whose scatter is used. Methods 2.9. */
const leastUnits = 3

/**
 * Share of a part in a whole over several independent units: ratio of sums, limits on the logit scale with t.
 *
 * For visits by one group among all visits, where visits within a unit go together. Treating visits as independent would
 * cover far too rarely. Where the answer has no scatter to use, fall back to `goodmanIntervals` or `clopperPearsonInterval`
 * and say that visits are treated as independent.
 *
 * @throws InputError ground/input/out-of-range, ground/input/lengths-differ
 * @source Cochran W.G. (1977) Sampling Techniques, 3rd ed., 3.12 (cluster proportions), on the logit scale.
 * @check parts 30, 12, 25, 8, 40, 18 of 50, 30, 36, 20, 55, 39 give 0.578261, se 0.057918, 0.426817 to 0.716289;
 *   14, 3, 22, 9, 5, 17 of 61, 40, 58, 52, 33, 70 give 0.222930, se 0.040030, 0.136735 to 0.341939 (R 4.2.2)
 */
export function shareOfSums({ parts, wholes, level = 0.95 }: UnitParts): UnitShare {
  requireSameLength({ parts, wholes })
  requireOpenUnit('level', level)
  let part = 0
  let whole = 0
  let units = 0
  for (let f = 0; f < parts.length; f++) {
    const a = parts[f] ?? 0
    const n = wholes[f] ?? 0
    if (!(a >= 0 && a <= n && Number.isFinite(n))) {
      throw new InputError('ground/input/out-of-range', `part ${a} of ${n}; expected a part from 0 to its whole`)
    }
    part += a
    whole += n
    if (n > 0) units += 1
  }
  if (whole === 0) return { kind: 'nothing-counted' }
  const share = part / whole
  if (part === 0 || part === whole) return { kind: 'at-an-end', share: part === 0 ? 0 : 1, part, whole, units }
  if (units < leastUnits) return { kind: 'too-few-units', share, part, whole, units }

  let squares = 0
  for (let f = 0; f < parts.length; f++) squares += ((parts[f] ?? 0) - share * (wholes[f] ?? 0)) ** 2
  const se = Math.sqrt((units / (units - 1)) * squares) / whole
  const reach = (studentMultiplier(level, units - 1) * se) / (share * (1 - share))
  const centre = logit(share)
  return {
    kind: 'share',
    share,
    se,
    limits: { lower: inverseLogit(centre - reach), upper: inverseLogit(centre + reach) },
    df: units - 1,
    units,
  }
}

/**
 * Odds p / (1 - p) of a share: "A per B" from the share of A in A + B. A share of 1 has infinite odds.
 *
 * @param share from 0 to 1
 * @throws InputError ground/input/out-of-range
 * @check 0.75 gives 3
 */
export function oddsOfShare(share: number): number {
  if (!(share >= 0 && share <= 1))
    throw new InputError('ground/input/out-of-range', `share is ${share}; expected a number from 0 to 1`)
  return share / (1 - share)
}
