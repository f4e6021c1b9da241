import type { CheckSubject, Found, Look, NotLooked, ShownLabel, ShownLine } from './look.ts'

/** Common practice, no source. */
export const lookBelow = 0.05
export const suspectBelow = 0.01

export type CheckVerdict = 'fine' | 'look' | 'suspect'

/** A line of a figure: what was found, what is expected, and between which ends 95 of 100 drawn sets lie. */
export interface Shown extends ShownLine {
  readonly label: ShownLabel
  readonly found: number
  readonly expected: number
  readonly least: number
  readonly most: number
}

/** Rows as points: where they lie, and their residual between 0 and 1. */
export interface Points {
  readonly at: Float64Array
  readonly quantiles: Float64Array
}

export interface CheckMade {
  readonly kind: 'checked'
  readonly check: CheckSubject
  readonly statistic: number
  /** Between these lie 95 of 100 drawn sets; where only large values count against the model, from 0. */
  readonly expected: { readonly low: number; readonly high: number }
  /** By the drawn sets, what was counted among them: never 0. Two-sided where both sides count against the model. */
  readonly p: number
  /** The same after Holm, over all checks that were made. */
  readonly holm: number
  /** suspect: p < 0.01; look: p < 0.05. By the raw p. */
  readonly verdict: CheckVerdict
  /** On which side of what is expected the statistic lies. */
  readonly side: 'above' | 'below'
  readonly scale: Look['scale']
  readonly lines: readonly Shown[]
  /** Along a covariate or in time; null for other checks. */
  readonly points: Points | null
  /** Rows to look at first; outliers alone name them. */
  readonly rows: readonly number[]
}

export type Check = CheckMade | { readonly kind: 'not-checked'; readonly check: CheckSubject; readonly because: NotLooked }

/** What the drawn sets said of a look. */
export interface LookSeen {
  readonly look: Pick<Look, 'subject' | 'against' | 'scale' | 'lines'>
  readonly observed: Found
  readonly drawn: readonly Found[]
  readonly points: Points | null
  readonly rows: readonly number[]
}

/** With fewer drawn sets there is no law to hold a statistic against. */
export const fewestSets = 39

/** A number compared with its like: what differs by rounding alone is equal. */
const dust = 1e-9

/** A check by its drawn sets; `holm` is that of this check alone. */
export function checkBy({ look, observed, drawn, points, rows }: LookSeen): Check {
  if (drawn.length < fewestSets) return { kind: 'not-checked', check: look.subject, because: 'few-refits' }
  const own = observed.statistic - observed.fitted
  const others = Float64Array.from(drawn, ({ statistic, fitted }) => statistic - fitted).sort()
  const atOrAbove = others.reduce((sum, value) => sum + Number(value >= own - dust), 0)
  const atOrBelow = others.reduce((sum, value) => sum + Number(value <= own + dust), 0)
  const part = (count: number): number => (1 + count) / (others.length + 1)
  const isOneSided = look.against === 'above'
  // Counts and sums of squares are never below 0.
  const least = look.scale === 'ratio' ? 0 : Number.NEGATIVE_INFINITY
  const p = isOneSided ? part(atOrAbove) : Math.min(1, 2 * part(Math.min(atOrAbove, atOrBelow)))
  return {
    kind: 'checked',
    check: look.subject,
    statistic: observed.statistic,
    expected: isOneSided
      ? { low: 0, high: observed.fitted + quantileOf(others, 0.95) }
      : { low: Math.max(least, observed.fitted + quantileOf(others, 0.025)), high: observed.fitted + quantileOf(others, 0.975) },
    p,
    holm: p,
    verdict: p < suspectBelow ? 'suspect' : p < lookBelow ? 'look' : 'fine',
    side: atOrAbove <= atOrBelow ? 'above' : 'below',
    scale: look.scale,
    lines: look.lines.map((line, k) => shownLine(line, k, least, observed, drawn)),
    points,
    rows,
  }
}

function shownLine(line: ShownLine, k: number, end: number, observed: Found, drawn: readonly Found[]): Shown {
  const beyond = Float64Array.from(drawn, ({ found, expected }) => (found[k] as number) - (expected[k] as number)).sort()
  const expected = observed.expected[k] as number
  return {
    ...line,
    found: observed.found[k] as number,
    expected,
    least: Math.max(end, expected + quantileOf(beyond, 0.025)),
    most: expected + quantileOf(beyond, 0.975),
  }
}

/** Of ascending values, between the two that lie about it. */
function quantileOf(sorted: Float64Array, part: number): number {
  const place = part * (sorted.length - 1)
  const below = Math.floor(place)
  const low = sorted[below] as number
  return low + (place - below) * ((sorted[Math.min(below + 1, sorted.length - 1)] as number) - low)
}
