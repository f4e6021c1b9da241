import { normalQuantile } from '../../distribution/normal.ts'
import type { Look } from '../look.ts'

/** Pairs of a correlation. Common practice, no source. */
const fewestPairs = 10
/** Told beside the first. */
const furthestApart = 3

/**
 * Whether visits that follow one another in a field go astray to the same side: correlation of normal scores at lag 1, over all fields.
 *
 * Rows of one field and date (its plots) are averaged first. Effects of the fields are taken off, so that some negative correlation is
 * expected of few visits; refits show how much.
 *
 * @param fields place of each row's field; -1 where it is not known
 * @param dates of each row [days]; not finite where it is not known
 * @returns null on fewer than 10 pairs of visits
 */
export function autocorrelationLook(fields: ArrayLike<number>, dates: ArrayLike<number>): Look | null {
  const series = seriesOf(fields, dates)
  const pairsApart = (visits: number): number => series.reduce((sum, own) => sum + Math.max(0, own.length - visits), 0)
  if (pairsApart(1) < fewestPairs) return null
  const lags = Array.from({ length: furthestApart }, (_, k) => k + 1).filter((visits) => pairsApart(visits) >= fewestPairs)
  return {
    subject: { kind: 'autocorrelation' },
    against: 'both',
    scale: 'plain',
    lines: lags.map((visits) => ({ label: { kind: 'apart', visits }, rows: pairsApart(visits) })),
    at: ({ quantiles }) => {
      const scores = quantiles.map((value) => normalQuantile(value))
      const means = series.map((own) => own.map((rows) => rows.reduce((sum, i) => sum + (scores[i] as number), 0) / rows.length))
      const found = lags.map((visits) => correlation(means, visits))
      return { statistic: found[0] ?? 0, fitted: 0, found, expected: found.map(() => 0) }
    },
  }
}

/** For each field its visits in the order of time, each as the places of its rows. */
function seriesOf(fields: ArrayLike<number>, dates: ArrayLike<number>): readonly (readonly (readonly number[])[])[] {
  const byField = new Map<number, Map<number, number[]>>()
  for (let i = 0; i < fields.length; i++) {
    const field = fields[i] as number
    const date = dates[i] as number
    if (field < 0 || !Number.isFinite(date)) continue
    const visits = byField.get(field) ?? new Map<number, number[]>()
    visits.set(date, [...(visits.get(date) ?? []), i])
    byField.set(field, visits)
  }
  return [...byField.values()].map((visits) => [...visits].sort((a, b) => a[0] - b[0]).map(([, rows]) => rows))
}

function correlation(series: readonly (readonly number[])[], visits: number): number {
  let together = 0
  let pairs = 0
  let square = 0
  let all = 0
  for (const own of series)
    own.forEach((value, t) => {
      square += value * value
      all++
      const before = own[t - visits]
      if (before === undefined) return
      together += value * before
      pairs++
    })
  return square > 0 ? together / pairs / (square / all) : 0
}
