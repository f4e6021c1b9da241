import type { Found, ShownLine } from '../look.ts'
import type { SimulatedResiduals } from '../simulated-residuals.ts'

/** Rows beyond all draws, above and below, of what was counted and of each drawn set among the others. */
export interface OutliersSeen {
  readonly lines: readonly ShownLine[]
  readonly observed: Found
  readonly drawn: readonly Found[]
  /** Rows in which what was counted lies above, or below, all draws. */
  readonly rows: readonly number[]
}

/**
 * Counts outside everything that was drawn for their row, random effects anew. Some are expected among many rows: as many as a drawn set has
 * among the other draws.
 */
export function outliersSeen(counts: ArrayLike<number>, { drawn, draws }: SimulatedResiduals): OutliersSeen {
  const n = counts.length
  const above = new Float64Array(draws)
  const below = new Float64Array(draws)
  const outside: number[] = []
  let isAbove = 0
  for (let i = 0; i < n; i++) {
    const own = drawn.subarray(i * draws, (i + 1) * draws)
    const most = own.reduce((high, value) => Math.max(high, value), 0)
    const least = own.reduce((low, value) => Math.min(low, value), most)
    takeAlone(own, most, above)
    takeAlone(own, least, below)
    const count = counts[i] as number
    if (count > most) isAbove++
    if (count > most || count < least) outside.push(i)
  }
  const foundOf = (found: readonly number[]): Found => ({
    statistic: (found[0] ?? 0) + (found[1] ?? 0),
    fitted: 0,
    found,
    expected: [mean(above), mean(below)],
  })
  return {
    lines: (['above', 'below'] as const).map((side) => ({ label: { kind: 'beyond', side }, rows: n })),
    observed: foundOf([isAbove, outside.length - isAbove]),
    drawn: Array.from(above, (value, k) => foundOf([value, below[k] as number])),
    rows: outside,
  }
}

/** A draw is outside the others if it alone has the end value. */
function takeAlone(own: Uint32Array, end: number, into: Float64Array): void {
  const first = own.indexOf(end)
  if (first === own.lastIndexOf(end)) into[first] = (into[first] as number) + 1
}

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / Math.max(values.length, 1)
