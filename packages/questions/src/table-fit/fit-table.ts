import { createRng, type LongWork, rngAlgorithm, type Saying, saying } from '@thrum/model/ground'
import { informationCriteria } from '@thrum/stats'
import type { Receipt } from '../receipt/receipt.ts'
import { type FitAsked, type FitWords, linkOf, readFitAsked, togetherSaying } from './asked.ts'
import { cautionsTold } from './cautions.ts'
import { checksTold } from './checks.ts'
import { coefficientsTold, zerosTold } from './coefficients.ts'
import { type FitCase, fitCase } from './fit-case.ts'
import { comparedIn, comparisonTold } from './means.ts'
import { rowsUsed } from './rows-used.ts'
import { runModel } from './run-model.ts'
import { scatterTold } from './scatter.ts'
import type { FitTable } from './table.ts'
import { tableFitReceipt } from './table-fit-receipt.ts'
import type { TableFit, TableFitted, ToldAsked } from './told.ts'
import { withoutTold } from './without.ts'

export interface FitOutcome {
  readonly told: TableFit
  /** Rows and R script; null of a refusal, where there is nothing to recompute. */
  readonly receipt: Receipt | null
}

function aboutSaying({ response, family, fixed, random, zerosBy }: FitAsked, rows: number): Saying {
  return saying('questions/fit/about', {
    response: response.name,
    family: saying(`questions/fit/family/${family}`),
    rows,
    fixed: fixed.length,
    terms: fixed.map(togetherSaying),
    random: random.length,
    groupings: random.map(togetherSaying),
    zeros: zerosBy === null ? 'none' : 'some',
  })
}

/** What was chosen, by the person or where the person said nothing. */
function choicesOf({ asked, design, groupings }: FitCase): readonly Saying[] {
  const { slope, effort, offset, trials, by, refits, nodes, zerosBy } = asked
  const references = Object.entries(design.of).flatMap(([column, own]) =>
    own.kind === 'levels' ? [saying('questions/fit/choice/reference', { column, level: own.levels[0] ?? '' })] : [],
  )
  const numbers = Object.entries(design.of).flatMap(([text, { kind }]) => (kind === 'number' ? [saying('text', { text })] : []))
  const added = design.terms
    .filter(({ isAsked }) => !isAsked)
    .map(({ of }) => saying('questions/fit/together', { columns: of.map((text) => saying('text', { text })) }))
  return [
    ...(references.length > 0 ? [saying('questions/fit/choice/references', { references })] : []),
    ...(numbers.length > 0 ? [saying('questions/fit/choice/at-zero', { numbers })] : []),
    ...(added.length > 0 ? [saying('questions/fit/choice/added', { added })] : []),
    ...(slope === null
      ? []
      : [
          saying('questions/fit/choice/slope', {
            slope: slope.column.name,
            of: togetherSaying(slope.by),
            apart: slope.isApart ? 'yes' : 'no',
          }),
        ]),
    ...(effort === null ? [] : [saying('questions/fit/choice/effort', { effort: effort.name })]),
    ...(offset === null ? [] : [saying('questions/fit/choice/offset', { offset: offset.name })]),
    ...(trials === null ? [] : [saying('questions/fit/choice/trials', { trials: trials.name })]),
    ...(zerosBy === null
      ? []
      : [saying('questions/fit/choice/zeros', { count: zerosBy.length, terms: zerosBy.map(togetherSaying) })]),
    saying('questions/fit/choice/likelihood', {
      how:
        asked.family === 'gaussian'
          ? asked.reml
            ? 'restricted'
            : groupings.length > 0
              ? 'full'
              : 'squares'
          : groupings.length === 0
            ? 'plain'
            : nodes === null
              ? 'laplace'
              : 'nodes',
      nodes: nodes ?? 0,
    }),
    saying('questions/fit/choice/limits', { by, refits, groups: groupings.length }),
  ]
}

const toldAsked = (own: FitCase): ToldAsked => ({
  about: aboutSaying(own.asked, own.rows.length),
  choices: choicesOf(own),
  rows: { used: own.rows.length, of: own.table.lines.length, leftOut: own.leftOut },
  family: own.asked.family,
})

async function told(own: FitCase, seed: string, work: LongWork): Promise<TableFit> {
  const compared = comparedIn(own)
  const fit = runModel(own)
  if (fit.kind === 'refused') return { ...toldAsked(own), ...fit }
  const rng = createRng(seed).fork('fit')
  const coefficients = await coefficientsTold(own, fit, rng, work)
  const { logLikelihood, parameters } = fit
  const { aic, aicc } = informationCriteria(fit)
  const { asked } = own
  const link = linkOf(asked.family)
  return {
    ...toldAsked(own),
    ...{ kind: 'fitted', link, isGrouped: own.groupings.length > 0, intervals: asked.by, coefficients: coefficients.told },
    zeros: zerosTold(own, fit),
    scatter: scatterTold(own, fit),
    likelihood: { logLikelihood, isRestricted: asked.reml, parameters, aic, aicc: Number.isFinite(aicc) ? aicc : null },
    without: asked.without.map((without) => withoutTold(own, fit, without)),
    comparisons: compared.map((columns) => comparisonTold(own, fit, coefficients.df, columns, rng)),
    per: asked.effort === null ? null : saying('questions/fit/per-effort', { per: asked.per, effort: asked.effort.name }),
    checks: await checksTold(own, fit, rng, work),
    cautions: cautionsTold(own, fit, coefficients.df),
    random: { seed, algorithm: rngAlgorithm },
  } satisfies TableFitted
}

/**
 * Fits a model to any table, as it is asked for in words.
 *
 * @param words as typed
 * @param seed of the refits, the drawn counts and the simultaneous limits
 * @returns what was found; or a refusal by name, where the rows do not carry the model
 * @throws ThrumError questions/fit/* where what was typed, or a cell, cannot be used as asked; each says what to do
 */
export async function fitTable(table: FitTable, words: FitWords, seed: string, work: LongWork): Promise<FitOutcome> {
  const asked = readFitAsked(table, words)
  const own = fitCase(table, asked)
  if (own.kind === 'refused') {
    const { rows, leftOut } = rowsUsed(table, asked)
    const before: ToldAsked = {
      about: aboutSaying(asked, rows.length),
      choices: [],
      rows: { used: rows.length, of: table.lines.length, leftOut },
      family: asked.family,
    }
    return { told: { ...before, ...own }, receipt: null }
  }
  const found = await told(own, seed, work)
  return { told: found, receipt: found.kind === 'fitted' ? tableFitReceipt(own, found) : null }
}
