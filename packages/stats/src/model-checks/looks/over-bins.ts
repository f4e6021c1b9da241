import type { Bin } from '../bins.ts'
import type { CheckSubject, Look } from '../look.ts'

/**
 * Whether residuals lie to one side in some bin of a covariate, or at some level: the largest deviation of a bin's mean from one half, in
 * standard errors of as many independent uniforms.
 */
export function overBinsLook(subject: CheckSubject, bins: readonly Bin[]): Look {
  return {
    subject,
    against: 'above',
    scale: 'ratio',
    lines: bins.map(({ label, rows }) => ({ label, rows: rows.length })),
    at: ({ counts, laws, quantiles }) => ({
      statistic: bins.reduce((most, { rows }) => {
        const sum = rows.reduce((whole, i) => whole + (quantiles[i] as number) - 0.5, 0)
        return Math.max(most, Math.abs(sum) * Math.sqrt(12 / rows.length))
      }, 0),
      fitted: 0,
      found: bins.map(({ rows }) => rows.reduce((sum, i) => sum + (counts[i] as number), 0)),
      expected: bins.map(({ rows }) => rows.reduce((sum, i) => sum + (laws[i]?.mean ?? 0), 0)),
    }),
  }
}
