import { createRng } from '@thrum/model/ground'
import {
  type CountModel,
  drawGamma,
  drawNormal,
  drawPoisson,
  type FamilyName,
  fitCountModel,
  matrixOfColumns,
} from '../../src/index.ts'

export interface Watched {
  readonly seed: string
  readonly fields?: number
  readonly visits?: number
  readonly mean?: number
  /** theta; Infinity for Poisson. */
  readonly theta?: number
  readonly fieldSd?: number
  /** Slope on warmth, a standard normal covariate. */
  readonly warmth?: number
  /** Chance of a zero of another origin. */
  readonly extraZeros?: number
  /** SD of a swing that goes on from visit to visit, and how much of it does. */
  readonly swing?: number
  readonly goesOn?: number
  /** Field 1, a treated one, holds so many times as many. */
  readonly wild?: number
}

export interface WatchedCounts {
  readonly model: Omit<CountModel, 'family'>
  readonly warmth: readonly number[]
  readonly dates: readonly number[]
  readonly fields: Int32Array
  readonly visits: Int32Array
}

/** Counts of fields by visits, every second field treated, with one thing gone wrong if asked. */
export function watched({
  seed,
  fields = 10,
  visits = 8,
  mean = 5,
  theta = Number.POSITIVE_INFINITY,
  fieldSd = 0.4,
  warmth = 0,
  extraZeros = 0,
  swing = 0,
  goesOn = 0,
  wild = 1,
}: Watched): WatchedCounts {
  const rng = createRng(seed)
  const rows = Array.from({ length: fields }, (_, f) => {
    const field = fieldSd * drawNormal(rng)
    let state = drawNormal(rng)
    return Array.from({ length: visits }, (_, v) => {
      state = goesOn * state + Math.sqrt(1 - goesOn * goesOn) * drawNormal(rng)
      const warm = drawNormal(rng)
      const eta = field + (f % 2) * 0.4 + warmth * warm + swing * state + (f === 1 ? Math.log(wild) : 0)
      const mu = mean * Math.exp(eta)
      const isZero = rng.uniform() < extraZeros
      const count = drawPoisson(rng, theta === Number.POSITIVE_INFINITY ? mu : (mu * drawGamma(rng, theta)) / theta)
      return { f, v, warm, count: isZero ? 0 : count }
    })
  }).flat()
  const of = Int32Array.from(rows, ({ f }) => f)
  return {
    model: {
      counts: rows.map(({ count }) => count),
      design: matrixOfColumns(rows.length, [rows.map(() => 1), rows.map(({ f }) => f % 2)]),
      groupings: [{ name: 'field', of, levels: fields }],
    },
    warmth: rows.map(({ warm }) => warm),
    dates: rows.map(({ v }) => 20_000 + 3 * v),
    fields: of,
    visits: Int32Array.from(rows, (_, i) => i),
  }
}

/** A model of a family with its fit. */
export function fitted(model: Omit<CountModel, 'family'>, family: FamilyName) {
  const whole: CountModel = { ...model, family }
  const fit = fitCountModel(whole)
  if (fit.kind !== 'fitted') throw new Error(`the fit is ${fit.kind}`)
  return { model: whole, fit }
}
