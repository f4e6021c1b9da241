import type { Look } from '../look.ts'
import type { Standing } from '../standing.ts'
import { binsByMean } from './by-mean.ts'

/**
 * Mean squared Pearson residual: how far counts lie from what the fit expects of each row, in the variance it gives the row.
 *
 * @param observed of the fit to be checked
 */
export function dispersionLook(observed: Standing): Look {
  const bins = binsByMean(observed)
  return {
    subject: { kind: 'dispersion' },
    against: 'both',
    scale: 'ratio',
    lines: bins.map(({ label, rows }) => ({ label, rows: rows.length })),
    at: ({ counts, laws }) => {
      const squares = laws.map(({ mean, variance }, i) =>
        variance > 0 ? (((counts[i] as number) - mean) * ((counts[i] as number) - mean)) / variance : 0,
      )
      return {
        statistic: squares.reduce((sum, square) => sum + square, 0) / squares.length,
        fitted: 1,
        found: bins.map(({ rows }) => rows.reduce((sum, i) => sum + (squares[i] as number), 0) / rows.length),
        expected: bins.map(() => 1),
      }
    },
  }
}
