import { logFactorial } from '../../distribution/log-gamma.ts'
import type { Response } from './family.ts'

/** log y! of each row. */
export const logFactorials = (counts: Float64Array): Float64Array => counts.map((count) => logFactorial(count))

/** log of the number of ways to have so many of all, for each row. */
export function logWays({ counts, trials }: Response): Float64Array {
  return counts.map((count, i) => {
    const all = trials?.[i] ?? 1
    return logFactorial(all) - logFactorial(count) - logFactorial(all - count)
  })
}
