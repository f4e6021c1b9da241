import { type Rng, type Saying, saying, ThrumError } from '@thrum/model/ground'
import {
  type ColumnDf,
  contrastsOf,
  dfOfSum,
  type Levels,
  type MarginalMean,
  type MeanContrast,
  type MeansAsked,
  marginalMeans,
  type Scale,
} from '@thrum/stats'
import { linkOf, togetherSaying } from './asked.ts'
import { level, limitsOf } from './coefficients.ts'
import type { FitCase } from './fit-case.ts'
import type { Together } from './lists.ts'
import { typedTogether } from './lists.ts'
import type { ModelFit } from './run-model.ts'
import type { ToldComparison, ToldMean, ToldPair } from './told.ts'

/** Columns of more levels than this are compared only if they are asked for: 12 levels make 66 pairs. Ours. */
const mostLevels = 12
/** More means than this are not compared with each other, asked or not: 2,000 pairs would be read by nobody. Ours. */
const mostMeans = 64

function levelsOf({ design }: FitCase, name: string): readonly string[] | null {
  const column = Object.hasOwn(design.of, name) ? design.of[name] : undefined
  return column?.kind === 'levels' ? column.levels : null
}

/**
 * What is compared: what was asked for, else every column of levels in the model, one by one.
 *
 * @throws ThrumError questions/fit/not-compared where it is no column of levels in the model; too-many-means
 */
export function comparedIn(own: FitCase): readonly Together[] {
  const { compare, fixed } = own.asked
  if (compare === null) {
    const columns = [...new Set(fixed.flat())]
    return columns.flatMap((column) => {
      const levels = levelsOf(own, column.name)
      return levels !== null && levels.length <= mostLevels ? [[column]] : []
    })
  }
  for (const columns of compare) {
    const sizes = columns.map(({ name }) => levelsOf(own, name)?.length ?? 0)
    const means = sizes.reduce((product, size) => product * size, 1)
    if (means === 0) {
      const known = [...new Set(fixed.flat())].filter(({ name }) => levelsOf(own, name) !== null)
      throw new ThrumError('questions/fit/not-compared', {
        found: typedTogether(columns),
        count: known.length,
        known: known.map(({ name }) => name).join(', '),
      })
    }
    if (means > mostMeans)
      throw new ThrumError('questions/fit/too-many-means', { found: typedTogether(columns), means, most: mostMeans })
  }
  return compare
}

export function scaleOf({ asked }: FitCase): Scale {
  const link = linkOf(asked.family)
  return link === 'log' ? { link, effort: asked.per } : { link }
}

const levelSaying = (at: Levels): Saying => {
  const levels = Object.values(at).map((text) => saying('text', { text }))
  const [first] = levels
  return levels.length === 1 && first !== undefined ? first : saying('questions/fit/levels-together', { levels })
}

function meanTold(mean: MarginalMean): ToldMean {
  const label = levelSaying(mean.at)
  if (mean.kind === 'not-estimable' || !Number.isFinite(mean.mean)) return { kind: 'not-told', label }
  if (mean.kind === 'no-scatter') return { kind: 'no-scatter', label, value: mean.mean }
  return { kind: 'mean', label, value: mean.mean, limits: limitsOf(mean.meanLimits) }
}

function pairTold(contrast: MeanContrast): ToldPair {
  const label = saying('questions/fit/pair', { of: levelSaying(contrast.of), against: levelSaying(contrast.against) })
  if (contrast.kind !== 'contrast') return { kind: 'not-told', label }
  const { ratio, difference, limits, simultaneous, p, holm } = contrast
  if (!Number.isFinite(ratio?.ratio ?? difference)) return { kind: 'not-told', label }
  return {
    ...{ kind: 'pair', label, p, holm },
    value: ratio?.ratio ?? difference,
    limits: limitsOf(ratio?.limits ?? limits),
    simultaneous: limitsOf(ratio?.simultaneous ?? simultaneous),
  }
}

/** Columns that weigh in any of these rows. */
const weighed = (rows: readonly Float64Array[], columns: number): readonly number[] =>
  Array.from({ length: columns }, (_, j) => Number(rows.some((row) => row[j] !== 0)))

/** Columns in which the rows differ, however rounding fell. */
function differing(rows: readonly Float64Array[], columns: number): readonly number[] {
  const [first] = rows
  return Array.from({ length: columns }, (_, j) =>
    Number(rows.some((row) => Math.abs((row[j] as number) - (first?.[j] ?? 0)) > 1e-12 * Math.abs(row[j] as number))),
  )
}

function heldSayings(numbers: { readonly [column: string]: number }): readonly Saying[] {
  return Object.entries(numbers).map(([column, value]) =>
    saying('questions/fit/held', { column, value: Number.parseFloat(value.toPrecision(4)) }),
  )
}

/** Means at the levels of some columns, and all their pairs. */
export function comparisonTold(
  own: FitCase,
  fit: ModelFit,
  df: readonly ColumnDf[],
  columns: Together,
  rng: Rng,
): ToldComparison {
  const of = columns.map(({ name }) => name)
  const p = own.design.names.length
  const asked = (law: MeansAsked['law']): MeansAsked => ({ of, weights: 'equal', scale: scaleOf(own), law, level })
  const { rows } = marginalMeans(own.design, fit.estimates, asked('normal'))
  const meansDf = dfOfSum(df, weighed(rows, p)).df
  const pairsDf = dfOfSum(df, differing(rows, p)).df
  const { means, numbers } = marginalMeans(own.design, fit.estimates, asked({ df: meansDf }))
  const { contrasts, multiplier } = contrastsOf(
    marginalMeans(own.design, fit.estimates, asked({ df: pairsDf })),
    'all',
    rng.fork(`compare/${of.join('/')}`),
  )
  return {
    of: togetherSaying(columns),
    means: means.map(meanTold),
    meansDf,
    pairs: contrasts.map(pairTold),
    pairsDf,
    held: heldSayings(numbers),
    multiplier: multiplier?.value ?? null,
  }
}
