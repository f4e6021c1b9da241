import { type Saying, saying } from '@thrum/model/ground'
import { likelihoodRatio } from '@thrum/stats'
import { togetherSaying, type WithoutAsked } from './asked.ts'
import { type FitCase, fitCase } from './fit-case.ts'
import { type ModelFit, runModel } from './run-model.ts'
import type { ToldWithout } from './told.ts'

/** The same question with something left out. */
function lessened({ asked, table, rows }: FitCase, without: WithoutAsked) {
  const fixed = without.kind === 'term' ? asked.fixed.filter((term) => term !== without.term) : asked.fixed
  const random = without.kind === 'grouping' ? asked.random.filter((own) => own !== without.grouping) : asked.random
  const slope = without.kind === 'slope' ? null : asked.slope
  const nodes = random.length === 0 ? null : asked.nodes
  return fitCase(table, { ...asked, fixed, random, slope, nodes, compare: null, without: [] }, rows)
}

const labelOf = (without: WithoutAsked, { asked }: FitCase): Saying => {
  if (without.kind === 'term') return togetherSaying(without.term)
  if (without.kind === 'grouping') return togetherSaying(without.grouping)
  return saying('questions/fit/scatter/slope-of', {
    slope: asked.slope?.column.name ?? '',
    of: asked.slope === null ? '' : togetherSaying(asked.slope.by),
  })
}

function noteOf(without: WithoutAsked, { asked }: FitCase): Saying | null {
  if (without.kind === 'term') return asked.reml ? saying('questions/fit/without/full') : null
  const isBoth = without.kind === 'slope' && asked.slope?.isApart === false
  return saying(isBoth ? 'questions/fit/without/two' : 'questions/fit/without/boundary')
}

/**
 * What the likelihood loses without a term or a grouping; both models are fitted to the same rows.
 *
 * Of measured numbers terms are compared by the full likelihood, for restricted ones do not compare.
 */
export function withoutTold(own: FitCase, fit: ModelFit, without: WithoutAsked): ToldWithout {
  const label = labelOf(without, own)
  const smaller = lessened(own, without)
  const refused = (because: Saying): ToldWithout => ({ kind: 'refused', label, because })
  if (smaller.kind === 'refused') return refused(smaller.text)
  const needsFull = own.asked.family === 'gaussian' && without.kind === 'term'
  const larger = needsFull ? runModel(own, 'full') : fit
  const other = runModel(smaller, needsFull ? 'full' : undefined)
  if (larger.kind === 'refused') return refused(larger.text)
  if (other.kind === 'refused') return refused(other.text)
  const isOneVariance = without.kind === 'grouping' || (without.kind === 'slope' && own.asked.slope?.isApart === true)
  if (larger.parameters <= other.parameters) return refused(saying('questions/fit/without/nothing'))
  if (larger.logLikelihood < other.logLikelihood - 5e-5) return refused(saying('questions/fit/without/search'))
  const { statistic, df, p } = likelihoodRatio(larger, other, isOneVariance ? 'one-variance' : 'inner')
  return { kind: 'compared', label, statistic, df, p, note: noteOf(without, own) }
}
