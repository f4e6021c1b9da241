import { inverseLogit } from '../distribution/beta.ts'
import { type ModelAtHand, modelAtHand, type Places, type SlopeUnit } from './at-hand.ts'
import { covarianceAt } from './covariance.ts'
import type { MarginalLikelihood } from './laplace.ts'
import { type Maximum, maximise } from './maximise.ts'
import type {
  Coefficients,
  CountModel,
  CountModelFit,
  FittedCountModel,
  FitWarning,
  GroupEffects,
  SearchHistory,
} from './model.ts'
import { requireModel } from './require-model.ts'
import { coefficientsOf, covarianceOf, type ScaledDesign } from './scaled-design.ts'
import { separatedDirection } from './separation.ts'
import { startingValues } from './starting-values.ts'

/** Fewer groups than this say little of their variance. Common practice, no source. */
const fewGroups = 5
/** The part of a slope that goes with its intercept counts as nothing below this [linear predictor per root mean square of the covariate]. */
const zeroSlope = 0.02
/** A chance of other zeros below this in every row is none. */
const leastChance = 1e-4
/** Below this the reciprocal of the dispersion is beyond all telling. */
const leastDispersion = 1e-12
/** log effort may span this much before it is told. Common practice, no source. */
const wideOffset = 5

interface Search {
  readonly best: Maximum
  readonly history: SearchHistory
}

/** The better of two searches: another start where a variance went to zero, from its other side. */
function search(objective: MarginalLikelihood, start: Float64Array, places: Places): Search {
  const climb = (from: Float64Array): Maximum => {
    objective.reset()
    return maximise(objective, from)
  }
  const first = climb(start)
  const historyOf = (best: Maximum, second: Maximum | null): SearchHistory => ({
    start,
    end: best.at,
    steps: first.steps,
    again: second?.steps ?? null,
    evaluations: first.evaluations + (second?.evaluations ?? 0),
  })
  if (first.isConverged && !first.at.some((_, k) => places.isZero(first.at, k)))
    return { best: first, history: historyOf(first, null) }
  const again = start.slice()
  for (let k = places.deviations; k < places.zeros; k++) if (places.names[k]?.kind !== 'slope-correlation') again[k] = 1
  const second = climb(again)
  const isBetter = second.value > first.value + 1e-9 || (second.isConverged && !first.isConverged)
  const best = isBetter ? second : first
  return { best, history: historyOf(best, second) }
}

function coefficientsTold(design: ScaledDesign, at: Float64Array, whole: Float64Array, from: number): Coefficients {
  const p = design.rows
  const covariance = covarianceOf(design, whole, at.length, from)
  return {
    coefficients: coefficientsOf(design, at.subarray(from)),
    covariance,
    standardErrors: Float64Array.from({ length: p }, (_, j) => Math.sqrt(covariance[j * p + j] as number)),
    aliased: design.aliased,
  }
}

/**
 * Fits a model of counts by maximum likelihood, random effects integrated out by the Laplace approximation or by quadrature.
 *
 * @throws InputError on lengths that differ, counts that are not whole numbers from 0, an offset that is not finite, trials that do not go
 *   with the family
 * @source Skaug H.J., Fournier D.A. (2006) Comput. Stat. Data Anal. 51, 699-709 (Laplace, observed curvature); Lambert D. (1992)
 *   Technometrics 34, 1-14 (zeros of another origin)
 * @check cbpp, incidence by period with herds at random: log likelihood -92.02628, herd SD 0.64226 (R 4.2.2, glmmTMB)
 */
export function fitCountModel(model: CountModel): CountModelFit {
  const { response, offset } = requireModel(model)
  const { counts, trials } = response
  if (counts.every((count) => count === 0)) return { kind: 'all-zero' }
  if (trials !== null && counts.every((count, i) => count === trials[i])) return { kind: 'all-trials' }
  const atHand = modelAtHand(model, response, offset)
  const direction = separatedDirection(model.design, atHand.design.aliased, response)
  if (direction !== null) return { kind: 'separated', direction }

  const objective = atHand.objectiveFor(response)
  return fitFrom(atHand, objective, startingValues(atHand.problem))
}

/** The search and all that follows it, for counts that can be fitted. */
function fitFrom(atHand: ModelAtHand, objective: MarginalLikelihood, start: Float64Array): CountModelFit {
  const { design, zeros, places } = atHand
  const { best, history } = search(objective, start, places)
  if (!Number.isFinite(best.value)) return { kind: 'not-converged', history, suspects: [] }
  const found = covarianceAt(objective, best, places)
  if (found.kind === 'not-there') return { kind: 'not-converged', history, suspects: found.suspects }
  if (found.kind === 'flat')
    return { kind: 'not-identifiable', coefficients: coefficientsOf(design, best.at), history, suspects: found.suspects }

  const end = lastStep(objective, best, found.covariance)
  const logLikelihood = objective.evaluate(end, null)
  const groups = groupEffects(atHand, end, objective.modes())
  return {
    kind: 'fitted',
    ...coefficientsTold(design, end, found.covariance, 0),
    zeros: zeros === null ? null : coefficientsTold(zeros, end, found.covariance, places.zeros),
    groups,
    deviations: groups.map(({ deviation }) => deviation),
    dispersion: dispersionOf(atHand, end),
    predictor: objective.predictor(),
    logLikelihood,
    parameters: places.total,
    searchCovariance: found.covariance,
    warnings: warningsOf(atHand, end),
    history: { ...history, end },
  }
}

/** One Newton step more, by the fresh Hessian: what the search left undone of the estimates. */
function lastStep(objective: MarginalLikelihood, { at, gradient, value }: Maximum, covariance: Float64Array): Float64Array {
  const m = at.length
  const next = at.map((own, k) => {
    let step = 0
    for (let l = 0; l < m; l++) step += (covariance[k * m + l] as number) * (gradient[l] as number)
    return own + step
  })
  return objective.evaluate(next, null) >= value - 1e-9 ? next : at
}

function warningsOf({ problem: { effects, offset, zeros }, places }: ModelAtHand, at: Float64Array): readonly FitWarning[] {
  const warnings: FitWarning[] = effects.groupings.flatMap(({ name, levels }): FitWarning[] =>
    levels < fewGroups ? [{ kind: 'few-groups', of: name, groups: levels }] : [],
  )
  for (const [t, { slot, basis }] of effects.parameters.entries()) {
    if (!places.isZero(at, places.deviations + t)) continue
    const grouping = effects.groupings[effects.slots[slot]?.grouping ?? 0]
    const own = grouping?.name ?? ''
    if (basis === null) warnings.push({ kind: 'zero-variance', of: own })
    else {
      // A slope goes with its intercept by the parameter before: where that is not zero, slope and intercept are as good as one.
      const goesAlong =
        effects.parameters[t - 1]?.isDeviation === false && Math.abs(at[places.deviations + t - 1] as number) > zeroSlope
      const of = `${grouping?.slope?.name} by ${own}`
      warnings.push({ kind: goesAlong ? 'perfect-correlation' : 'zero-variance', of })
    }
  }
  if (places.root !== null && places.isZero(at, places.root)) warnings.push({ kind: 'no-overdispersion' })
  if (zeros.length > 0 && greatestChance(zeros, at, places.zeros) < leastChance) warnings.push({ kind: 'no-extra-zeros' })
  const span =
    offset.reduce((most, value) => Math.max(most, value), -Infinity) -
    offset.reduce((least, value) => Math.min(least, value), Infinity)
  if (span > wideOffset) warnings.push({ kind: 'wide-offset', span })
  return warnings
}

/** The greatest chance of a zero of another origin in any row. */
function greatestChance(zeros: readonly Float64Array[], at: Float64Array, from: number): number {
  const n = zeros[0]?.length ?? 0
  let greatest = 0
  for (let i = 0; i < n; i++) {
    let zeta = 0
    for (const [j, column] of zeros.entries()) zeta += (at[from + j] as number) * (column[i] as number)
    greatest = Math.max(greatest, inverseLogit(zeta))
  }
  return greatest
}

/** Intercepts and slopes of every grouping on the scale of the linear predictor. */
function groupEffects(
  { problem: { effects }, slopeUnits, places }: ModelAtHand,
  at: Float64Array,
  modes: Float64Array,
): readonly GroupEffects[] {
  let t = places.deviations
  let start = 0
  return effects.groupings.map(({ name, levels, slope }, k): GroupEffects => {
    const own = modes.subarray(start, start + levels)
    start += levels
    const deviation = at[t] as number
    t += 1
    const intercepts = Float64Array.from(own, (value) => value * deviation)
    if (slope === undefined) return { name, deviation: Math.abs(deviation), intercepts, slope: null }
    const others = modes.subarray(start, start + levels)
    start += levels
    const isCorrelated = slope.isCorrelated !== false
    const along = isCorrelated ? (at[t] as number) : 0
    if (isCorrelated) t += 1
    const apart = at[t] as number
    t += 1
    const { centre, scale } = slopeUnits[k] as SlopeUnit
    const slopes = Float64Array.from(others, (value, j) => (along * (own[j] as number) + apart * value) / scale)
    const scatter = scatterAtZero(deviation, along, apart, { centre, scale })
    return {
      name,
      deviation: scatter.intercept,
      intercepts: intercepts.map((value, j) => value - centre * (slopes[j] as number)),
      slope: {
        name: slope.name,
        deviation: scatter.slope,
        correlation: isCorrelated ? scatter.correlation : null,
        slopes,
      },
    }
  })
}

/** Standard deviations of intercepts, where the covariate is 0, and slopes, and their correlation, from the parameters of the search. */
function scatterAtZero(a: number, along: number, apart: number, { centre, scale }: SlopeUnit) {
  const slope = Math.sqrt(along * along + apart * apart) / scale
  // The intercept at 0 is (a - centre along / scale) v0 - (centre apart / scale) v1.
  const one = a - (centre * along) / scale
  const other = -(centre * apart) / scale
  const intercept = Math.sqrt(one * one + other * other)
  const both = (one * along + other * apart) / scale
  return { intercept, slope, correlation: intercept > 0 && slope > 0 ? both / (intercept * slope) : null }
}

function dispersionOf({ problem: { family }, places }: ModelAtHand, at: Float64Array): FittedCountModel['dispersion'] {
  if (places.root === null) return null
  const square = (at[places.root] as number) ** 2
  // Told as estimated, be it as good as none: the log likelihood is that of this very value.
  if (family.name === 'nb1') return square
  return square < leastDispersion ? Number.POSITIVE_INFINITY : 1 / square
}
