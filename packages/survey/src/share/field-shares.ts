import { goodmanIntervals, type Interval, oddsExact, oddsOfShare, shareOfSums, type UnitShare } from '@thrum/stats'

/** One kind's part of all visitors, field by field. */
export interface ShareData {
  readonly kind: string
  readonly parts: readonly number[]
  readonly wholes: readonly number[]
}

export interface FieldShare {
  readonly kind: string
  readonly share: number
  readonly limits: Interval
  /** Fields whose scatter made the limits; null: visits taken as independent, these watches only. */
  readonly fields: number | null
  readonly part: number
  readonly whole: number
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/**
 * Shares of kinds among all visitors (methods 2.9): logit-t over three fields or more; else, and at 0 or 1, Goodman's
 * simultaneous intervals, which treat visits as independent. Visitors of kinds not asked about are one class more.
 *
 * @returns one a kind, or none where nothing was counted, or where one kind is all there is
 */
export function fieldShares(data: readonly ShareData[], level = 0.95): readonly FieldShare[] {
  const parts = data.map((own) => sum(own.parts))
  const whole = sum(data[0]?.wholes ?? [])
  const rest = whole - sum(parts)
  const classes = rest > 0 ? [...parts, rest] : parts
  if (whole === 0 || classes.length < 2) return []
  const goodman = goodmanIntervals(classes, level)
  return data.map((own, k) => {
    const found: UnitShare = shareOfSums({ parts: own.parts, wholes: own.wholes, level })
    const part = parts[k] as number
    if (found.kind === 'share')
      return { kind: own.kind, share: found.share, limits: found.limits, fields: found.units, part, whole }
    const { lower, upper } = goodman[k] ?? { lower: 0, upper: 1 }
    return { kind: own.kind, share: part / whole, limits: { lower, upper }, fields: null, part, whole }
  })
}

/** How many of one kind for each of another, in the same watches (methods 2.9a). */
export interface RelativeCount {
  readonly odds: number
  readonly limits: (level: number) => Interval
  /** Fields whose scatter made the limits; null: visits taken as independent, these watches only. */
  readonly fields: number | null
  readonly first: number
  readonly second: number
}

/**
 * Odds of one kind against another: the share of the first in both, carried over to odds; exact binomial limits where fewer
 * than three fields stand or one kind is missing.
 *
 * @returns null where neither was counted
 */
export function relativeCount(first: readonly number[], second: readonly number[]): RelativeCount | null {
  const wholes = first.map((value, k) => value + (second[k] ?? 0))
  const [a, b] = [sum(first), sum(second)]
  if (a + b === 0) return null
  const found = shareOfSums({ parts: first, wholes })
  if (found.kind !== 'share') {
    return {
      odds: a / b,
      limits: (level) => oddsExact(a, b, level),
      fields: null,
      first: a,
      second: b,
    }
  }
  return {
    odds: oddsOfShare(found.share),
    limits: (level) => {
      const at = shareOfSums({ parts: first, wholes, level })
      const limits = at.kind === 'share' ? at.limits : { lower: 0, upper: 1 }
      return { lower: oddsOfShare(limits.lower), upper: oddsOfShare(limits.upper) }
    },
    fields: found.units,
    first: a,
    second: b,
  }
}
