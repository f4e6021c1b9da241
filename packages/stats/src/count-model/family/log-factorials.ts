import { logFactorial } from '../../distribution/log-gamma.ts'
import type { Response } from './family.ts'

/** log y! of each row; each number is worked out once. */
export function logFactorials(counts: Float64Array): Float64Array {
  const known = new Map<number, number>()
  return counts.map((count) => {
    const before = known.get(count)
    if (before !== undefined) return before
    const value = logFactorial(count)
    known.set(count, value)
    return value
  })
}

/** log of the number of ways to have so many of all, for each row. */
export function logWays({ counts, trials }: Response): Float64Array {
  return counts.map((count, i) => {
    const all = trials?.[i] ?? 1
    return logFactorial(all) - logFactorial(count) - logFactorial(all - count)
  })
}
