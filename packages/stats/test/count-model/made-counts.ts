import { createRng } from '@thrum/model/ground'
import { type CountModel, drawGamma, drawNormal, drawPoisson, matrixOfColumns } from '../../src/index.ts'

export interface MadeCounts {
  readonly seed: string
  readonly groups?: number
  readonly visits?: number
  /** Mean of a row at the reference level. */
  readonly mean?: number
  /** theta; Infinity for Poisson. */
  readonly theta?: number
  readonly fieldSd?: number
  readonly dateSd?: number
  readonly ratio?: number
}

/** Counts of fields visited on dates, half of the fields treated: fields and dates cross. */
export function madeCounts({
  seed,
  groups = 12,
  visits = 8,
  mean = 6,
  theta = 2,
  fieldSd = 0.4,
  dateSd = 0,
  ratio = 1.5,
}: MadeCounts): Required<Pick<CountModel, 'counts' | 'design' | 'offset' | 'groupings'>> {
  const rng = createRng(seed)
  const fields = Array.from({ length: groups }, () => fieldSd * drawNormal(rng))
  const dates = Array.from({ length: visits }, () => dateSd * drawNormal(rng))
  const rows = fields.flatMap((field, f) =>
    dates.map((date, d) => ({ f, d, level: f % 2, effort: 5 + ((f + d) % 3) * 5, field, date })),
  )
  const counts = rows.map(({ level, effort, field, date }) => {
    const mu = mean * (effort / 10) * ratio ** level * Math.exp(field + date)
    return drawPoisson(rng, theta === Number.POSITIVE_INFINITY ? mu : (mu * drawGamma(rng, theta)) / theta)
  })
  return {
    counts,
    design: matrixOfColumns(rows.length, [
      rows.map(() => 1),
      rows.map(({ level }) => level),
      rows.map(({ d }) => 20_000 + d * 7),
    ]),
    offset: rows.map(({ effort }) => Math.log(effort / 10)),
    groupings: [
      { name: 'field', of: Int32Array.from(rows, ({ f }) => f), levels: groups },
      ...(dateSd > 0 ? [{ name: 'date', of: Int32Array.from(rows, ({ d }) => d), levels: visits }] : []),
    ],
  }
}
