import type { Look } from '../look.ts'

const bands = 10

/**
 * Distance of Kolmogorov and Smirnov of the residuals from evenness.
 *
 * @source Kolmogorov A.N. (1933) (distance; from memory). Its law is taken from refits, not from tables: what was estimated and rows of one
 *   field change it
 */
export function uniformityLook(rows: number): Look {
  return {
    subject: { kind: 'uniformity' },
    against: 'above',
    scale: 'ratio',
    lines: Array.from({ length: bands }, (_, k) => ({
      label: { kind: 'quantiles', low: k / bands, high: (k + 1) / bands },
      rows,
    })),
    at: ({ quantiles }) => {
      const found = new Array<number>(bands).fill(0)
      for (const value of quantiles) {
        const band = Math.min(Math.floor(value * bands), bands - 1)
        found[band] = (found[band] as number) + 1
      }
      return { statistic: distanceFromEven(quantiles), fitted: 0, found, expected: found.map(() => rows / bands) }
    },
  }
}

/** @check 0.1, 0.2, 0.9: 0.466667 (R 4.2.2, ks.test against punif) */
export function distanceFromEven(quantiles: Float64Array): number {
  const sorted = quantiles.toSorted()
  const n = sorted.length
  return sorted.reduce((most, value, i) => Math.max(most, (i + 1) / n - value, value - i / n), 0)
}
