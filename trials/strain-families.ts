import { createRng, type Rng } from '@thrum/model/ground'
import { type CountModel, drawGamma, drawNormal, drawPoisson, type FamilyName, matrixOfColumns } from '@thrum/stats'

/** Fields visited on dates, half of the fields treated; what is drawn, and what is fitted to it. */
export interface StrainFamily {
  readonly name: string
  readonly fields: number
  readonly visits: number
  /** Mean of a row at the reference level. */
  readonly mean: number
  /** theta of the draws; Infinity for Poisson. */
  readonly theta: number
  readonly fieldSd: number
  readonly dateSd: number
  /** Chance of a zero of another origin. */
  readonly zeros: number
  readonly fitted: FamilyName
  readonly isCrossed: boolean
  readonly withZeros: boolean
  readonly withSlope: boolean
}

const usual = {
  fields: 12,
  visits: 8,
  mean: 6,
  theta: 2,
  fieldSd: 0.4,
  dateSd: 0,
  zeros: 0,
  fitted: 'nb2',
  isCrossed: false,
  withZeros: false,
  withSlope: false,
} as const
const none = Number.POSITIVE_INFINITY

/** The families that a search of this kind is known to fail in, and those of models with more in them. */
export const strainFamilies: readonly StrainFamily[] = [
  { ...usual, name: 'typical' },
  { ...usual, name: 'no variance between fields', fieldSd: 0 },
  { ...usual, name: 'Poisson fitted as NB2', theta: none },
  { ...usual, name: 'neither variance nor overdispersion', fieldSd: 0, theta: none },
  { ...usual, name: 'rare', mean: 0.3 },
  { ...usual, name: 'very rare', mean: 0.04, fields: 8 },
  { ...usual, name: 'large counts', mean: 600 },
  { ...usual, name: 'fields far apart', fieldSd: 2 },
  { ...usual, name: 'five fields, six visits', fields: 5, visits: 6 },
  { ...usual, name: 'crossed', isCrossed: true, dateSd: 0.4 },
  { ...usual, name: 'crossed, no variance of dates', isCrossed: true },
  { ...usual, name: 'crossed, no variance of fields', isCrossed: true, fieldSd: 0, dateSd: 0.4 },
  { ...usual, name: 'crossed, no variance at all', isCrossed: true, fieldSd: 0 },
  { ...usual, name: 'Poisson', fitted: 'poisson', theta: none },
  { ...usual, name: 'NB1', fitted: 'nb1' },
  { ...usual, name: 'Poisson fitted as NB1', fitted: 'nb1', theta: none },
  { ...usual, name: 'zeros of another origin', zeros: 0.3, withZeros: true, fields: 20 },
  { ...usual, name: 'zeros of another origin fitted where there are none', withZeros: true, theta: none, fitted: 'poisson' },
  { ...usual, name: 'shares', fitted: 'binomial' },
  { ...usual, name: 'scattered shares', fitted: 'beta-binomial' },
  { ...usual, name: 'a slope for each field', withSlope: true },
]

/** One set of counts with the model that is fitted to it. */
export function strainedModel(family: StrainFamily, seed: string): CountModel {
  const rng = createRng(seed)
  const fields = Array.from({ length: family.fields }, () => family.fieldSd * drawNormal(rng))
  const dates = Array.from({ length: family.visits }, () => family.dateSd * drawNormal(rng))
  const rows = fields.flatMap((field, f) =>
    dates.map((date, d) => ({ f, d, level: f % 2, effort: 5 + ((f + d) % 3) * 5, shift: field + date })),
  )
  const counts = rows.map(({ level, effort, shift }) => {
    const mean = family.mean * (effort / 10) * 1.5 ** level * Math.exp(shift)
    return rng.uniform() < family.zeros ? 0 : drawScattered(rng, mean, family.theta)
  })
  const isShare = family.fitted === 'binomial' || family.fitted === 'beta-binomial'
  const days = rows.map(({ d }) => d / family.visits)
  const n = rows.length
  return {
    family: family.fitted,
    counts,
    ...(isShare ? { trials: counts.map((count) => count + drawScattered(rng, family.mean, family.theta) + 1) } : {}),
    design: matrixOfColumns(n, [rows.map(() => 1), rows.map(({ level }) => level), rows.map(({ d }) => 20_000 + d * 7)]),
    ...(isShare ? {} : { offset: rows.map(({ effort }) => Math.log(effort / 10)) }),
    groupings: [
      {
        name: 'field',
        of: Int32Array.from(rows, ({ f }) => f),
        levels: family.fields,
        ...(family.withSlope ? { slope: { name: 'day', values: days } } : {}),
      },
      ...(family.isCrossed ? [{ name: 'date', of: Int32Array.from(rows, ({ d }) => d), levels: family.visits }] : []),
    ],
    ...(family.withZeros ? { zeros: matrixOfColumns(n, [rows.map(() => 1)]) } : {}),
  }
}

const drawScattered = (rng: Rng, mean: number, theta: number): number =>
  drawPoisson(rng, theta === none ? mean : (mean * drawGamma(rng, theta)) / theta)
