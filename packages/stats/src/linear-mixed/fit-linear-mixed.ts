import type { Coefficients } from '../count-model/model.ts'
import { quadratic } from '../count-model/symmetric.ts'
import { norm } from '../least-squares/scaled-columns.ts'
import { unidentifiedTerm } from './identifiable.ts'
import {
  type LinearMixedFit,
  type LinearMixedModel,
  type LinearMixedWarning,
  requireLinearMixed,
  type SlopeScatter,
} from './model.ts'
import { type PreparedModel, prepareModel } from './prepared-model.ts'
import { type Profiled, profileOf } from './profile.ts'
import type { Term } from './random-terms.ts'
import { relativeScatterOf } from './relative-scatter.ts'
import { isWithoutResidual, searchScatter } from './search.ts'
import { scatterOf } from './slope-units.ts'

/** What the columns leave is rounding when below this part of the response. */
const dust = 1e-12
/** Fewer groups than this say little of their variance. Common practice, no source. */
const fewGroups = 5

function coefficientsTold({ design, share, problem: { unit } }: PreparedModel, best: Profiled): Coefficients {
  const m = share.length
  const inner = share.map((own, k) => own + unit * (best.coefficients[k] as number))
  const residualSd = unit * Math.sqrt(best.residualVariance)
  const p = design.map.length
  const covariance = new Float64Array(p * p)
  design.map.forEach((one, j) => {
    design.map.forEach((other, k) => {
      covariance[j * p + k] = residualSd * quadratic(one, best.covariance, other, m) * residualSd
    })
  })
  return {
    coefficients: Float64Array.from(design.map, (row) => row.reduce((sum, weight, k) => sum + weight * (inner[k] as number), 0)),
    covariance,
    standardErrors: Float64Array.from({ length: p }, (_, j) => Math.sqrt(covariance[j * p + j] as number)),
    aliased: design.aliased,
  }
}

function slopeTold(term: Term, block: Float64Array, residualSd: number): SlopeScatter {
  const { intercept, slope, correlation } = scatterOf(term, block)
  const isTold = term.isCorrelated && intercept > 0 && slope > 0
  return { of: term.name, deviation: slope * residualSd, correlation: isTold ? correlation : null }
}

function warningsOf(term: Term, block: Float64Array): readonly LinearMixedWarning[] {
  const { name: of, width } = term
  const { intercept, slope } = scatterOf(term, block)
  const warnings: LinearMixedWarning[] = []
  if (intercept === 0) warnings.push({ kind: 'zero-variance', of })
  if (width === 2 && slope === 0) warnings.push({ kind: 'zero-slope-variance', of })
  // Of a triangle one of whose corners is zero, both effects scatter along one line.
  if (term.isCorrelated && intercept > 0 && slope > 0 && (block[0] === 0 || block[3] === 0))
    warnings.push({ kind: 'perfect-correlation', of })
  const groups = new Set(term.of).size
  if (groups < fewGroups) warnings.push({ kind: 'few-groups', of, groups })
  return warnings
}

/**
 * Fits a linear mixed model, y = offset + Xb + Zu + e with u and e normal, by full or restricted maximum likelihood.
 *
 * For a measured number (weight of a berry, day of bloom) whose rows resemble each other within fields, dates or plants. Not for counts
 * and shares near their ends: `fitCountModel`. It has no degrees of freedom of its own: `linearMixedContrast` is told them.
 *
 * @param model `response` and `offset` of length n; `design` n by p; groupings nested or crossed, one of them with a random slope
 * @returns a fit, or by name why there is none
 * @throws InputError on no row, lengths that differ, numbers that are not finite, a level that is not there, two slopes
 * @source Bates D., Maechler M., Bolker B., Walker S. (2015) J. Stat. Softw. 67(1), from memory; Patterson H.D., Thompson R. (1971)
 *   Biometrika 58, 545-554, from memory (restricted likelihood)
 * @check sleepstudy, reaction by day, subjects at random with correlated slopes, full: log likelihood -875.969672, SDs 23.780565,
 *   5.716835, residual 25.591816 (R 4.2.2, lme4)
 */
export function fitLinearMixed(model: LinearMixedModel): LinearMixedFit {
  const response = requireLinearMixed(model)
  const prepared = prepareModel(model, response)
  const { problem } = prepared
  const { terms, columns } = problem
  const n = response.length
  const left = problem.unit * norm(problem.response)
  if (columns.length === n || left <= dust * norm(response)) return { kind: 'no-residual' }
  const blurred = unidentifiedTerm(terms, columns, n)
  if (blurred !== null) return { kind: 'not-identifiable', of: blurred.name }

  const profile = profileOf(problem)
  const scatter = relativeScatterOf(terms)
  const found = searchScatter(terms, profile, scatter)
  const blocks = scatter.blocksAt(found.at)
  const best = profile.at(blocks, null)
  if (best === null) return { kind: 'not-converged' }
  if (isWithoutResidual(profile, blocks, best)) return { kind: 'no-residual' }
  if (!found.isConverged) return { kind: 'not-converged' }

  const residualSd = problem.unit * Math.sqrt(best.residualVariance)
  const told = terms.map((term, k) => ({ term, block: blocks[k] as Float64Array }))
  const inOrder = told.toSorted((one, other) => one.term.place - other.term.place)
  const sloped = told.find(({ term }) => term.width === 2)
  const parameters = columns.length + scatter.parameters + 1
  return {
    kind: 'fitted',
    ...coefficientsTold(prepared, best),
    deviations: inOrder.map(({ term, block }) => scatterOf(term, block).intercept * residualSd),
    slope: sloped === undefined ? null : slopeTold(sloped.term, sloped.block, residualSd),
    residualSd,
    logLikelihood: best.logLikelihood,
    parameters,
    aic: 2 * (parameters - best.logLikelihood),
    warnings: inOrder.flatMap(({ term, block }) => warningsOf(term, block)),
    evaluations: found.evaluations,
  }
}
