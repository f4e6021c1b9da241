import type { Look } from '../look.ts'
import type { Standing } from '../standing.ts'
import { binsByMean } from './by-mean.ts'

/**
 * Rows in which nothing was counted, against the sum of their chances.
 *
 * More zeros than expected are a reason for zeros of another origin only below p = 0.01, and where such an origin can be named (methods 2.7).
 *
 * @param observed of the fit to be checked
 */
export function zerosLook(observed: Standing): Look {
  const bins = binsByMean(observed)
  return {
    subject: { kind: 'zeros' },
    against: 'both',
    scale: 'ratio',
    lines: bins.map(({ label, rows }) => ({ label, rows: rows.length })),
    at: ({ counts, laws }) => {
      const found = bins.map(({ rows }) => rows.reduce((sum, i) => sum + Number(counts[i] === 0), 0))
      const expected = bins.map(({ rows }) => rows.reduce((sum, i) => sum + (laws[i]?.chanceOfZero ?? 0), 0))
      const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)
      return { statistic: total(found), fitted: total(expected), found, expected }
    },
  }
}
