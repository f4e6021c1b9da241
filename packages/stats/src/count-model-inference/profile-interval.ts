import { InputError } from '@thrum/model/ground'
import { modelAtHand } from '../count-model/at-hand.ts'
import { maximise } from '../count-model/maximise.ts'
import type { CountModel, FittedCountModel } from '../count-model/model.ts'
import { withSumHeld } from '../count-model/objective.ts'
import { requireModel } from '../count-model/require-model.ts'
import { normalMultiplier } from '../distribution/normal.ts'

/** What the interval is of. */
export type Profiled =
  /** A sum of weights times coefficients, one weight for each column of the design as it came. */
  | { readonly kind: 'coefficients'; readonly weights: ArrayLike<number> }
  /** Standard deviation of the intercepts of a grouping. */
  | { readonly kind: 'deviation'; readonly of: string }

/**
 * Limits where the log likelihood, all else chosen anew, has fallen by half the squared multiplier; Infinity where it has not within 40
 * standard errors; 0 where that of a deviation never falls so far.
 */
export interface ProfileInterval {
  readonly estimate: number
  readonly lower: number
  readonly upper: number
  readonly level: number
  /** Searches that it took. */
  readonly searches: number
}

/** Limits are found where the root of twice the fall is as near to the multiplier. */
const nearEnough = 1e-4
/** By then the two sides of a limit are a ten-thousandth of the first step apart, or less. */
const mostRounds = 45
/** Beyond so many standard errors a limit is called infinite. */
const farthest = 40

/**
 * Profile likelihood interval.
 *
 * @param fit of this very model
 * @param multiplier 1.96 for 95 % unless said; a t quantile makes it wider where fields are few
 * @throws InputError on a grouping that is not there, weights that say nothing, or weight on an aliased column
 * @source Venzon D.J., Moolgavkar S.H. (1988) Appl. Stat. 37, 87-94 (from memory)
 * @check cbpp, second period: -1.616758 to -0.407780; SD of herds 0.346092 to 1.099943 (R 4.2.2, glmmTMB)
 */
export function profileInterval(
  model: CountModel,
  fit: FittedCountModel,
  profiled: Profiled,
  { level = 0.95, multiplier = normalMultiplier(level) }: { readonly level?: number; readonly multiplier?: number } = {},
): ProfileInterval {
  const { response, offset } = requireModel(model)
  const atHand = modelAtHand(model, response, offset)
  const objective = atHand.objectiveFor(response)
  const weights = weightsOf(profiled, model, atHand)
  const { end } = fit.history
  const m = weights.length
  let signed = 0
  let variance = 0
  for (let k = 0; k < m; k++) {
    signed += (weights[k] as number) * (end[k] as number)
    for (let l = 0; l < m; l++)
      variance += (weights[k] as number) * (fit.searchCovariance[k * m + l] as number) * (weights[l] as number)
  }
  const isDeviation = profiled.kind === 'deviation'
  const estimate = isDeviation ? Math.abs(signed) : signed
  const turn = isDeviation && signed < 0 ? -1 : 1
  const width = Math.sqrt(variance) > 0 ? Math.sqrt(variance) : 0.1
  let searches = 0
  let near = end

  /** Root of twice the fall of the log likelihood with the sum held at a value. */
  function fallAt(value: number): number {
    const held = withSumHeld(objective, weights, turn * value)
    objective.reset()
    searches++
    let best = maximise(held.objective, held.without(near))
    if (!best.isConverged) {
      // From the place before it did not get there; from that of the fit it may.
      objective.reset()
      const again = maximise(held.objective, held.without(end))
      if (again.value > best.value) best = again
    }
    near = held.whole(best.at)
    return Math.sqrt(Math.max(0, 2 * (fit.logLikelihood - best.value)))
  }

  /** Where the fall reaches the multiplier, on one side: by false position on the fall, which is nearly straight. */
  function limit(side: 1 | -1): number {
    near = end
    let inside = estimate
    let fallInside = 0
    let outside = estimate + side * multiplier * width
    let fallOutside = Number.NaN
    // Each round goes at least a fifth further: it ends.
    for (;;) {
      if (isDeviation && outside <= 0) {
        if (fallAt(0) < multiplier) return 0
        outside = 0
        fallOutside = fallAt(0)
        break
      }
      fallOutside = fallAt(outside)
      if (fallOutside >= multiplier) break
      if (Math.abs(outside - estimate) > farthest * width) return side * Number.POSITIVE_INFINITY
      const slope = fallOutside / Math.abs(outside - estimate)
      inside = outside
      fallInside = fallOutside
      const further = slope > 0 ? (multiplier * 1.05) / slope : 2 * Math.abs(outside - estimate)
      outside =
        estimate + side * Math.min(Math.max(further, 1.2 * Math.abs(outside - estimate)), 3 * Math.abs(outside - estimate))
    }
    for (let round = 0; round < mostRounds; round++) {
      // Every third round the middle: so the two draw together whatever the shape.
      const part = round % 3 === 2 ? 0.5 : (multiplier - fallInside) / (fallOutside - fallInside)
      const at = inside + Math.min(Math.max(part, 0.02), 0.98) * (outside - inside)
      const fall = fallAt(at)
      if (Math.abs(fall - multiplier) < nearEnough || Math.abs(outside - inside) < 1e-9 * Math.max(1, Math.abs(at))) return at
      if (fall < multiplier) {
        inside = at
        fallInside = fall
      } else {
        outside = at
        fallOutside = fall
      }
    }
    return (inside + outside) / 2
  }

  const lower = isDeviation && estimate === 0 ? 0 : limit(-1)
  const upper = limit(1)
  return { estimate, lower, upper, level, searches }
}

function weightsOf(
  profiled: Profiled,
  model: CountModel,
  { design, places, problem }: ReturnType<typeof modelAtHand>,
): Float64Array {
  const weights = new Float64Array(places.total)
  if (profiled.kind === 'deviation') {
    const t = problem.effects.parameters.findIndex(
      ({ slot, basis }) =>
        basis === null && problem.effects.groupings[problem.effects.slots[slot]?.grouping ?? -1]?.name === profiled.of,
    )
    const slope = problem.effects.groupings.find(({ name }) => name === profiled.of)?.slope
    if (slope !== undefined && slope.isCorrelated !== false)
      throw new InputError(
        'ground/input/out-of-range',
        `intercepts of ${profiled.of} go with its slopes: their deviation alone has no profile; draw them apart`,
      )
    if (t < 0) throw new InputError('ground/input/out-of-range', `no grouping ${profiled.of} in this model`)
    weights[places.deviations + t] = 1
    return weights
  }
  if (profiled.weights.length !== model.design.columns)
    throw new InputError(
      'ground/input/lengths-differ',
      `${profiled.weights.length} weights; expected ${model.design.columns}, one per column`,
    )
  const aliased = design.aliased.find(({ column }) => profiled.weights[column] !== 0)
  if (aliased !== undefined)
    throw new InputError('ground/input/out-of-range', `column ${aliased.column} is aliased and has no coefficient of its own`)
  const m = design.columns.length
  for (let j = 0; j < design.rows; j++)
    for (let k = 0; k < m; k++)
      weights[k] = (weights[k] as number) + (profiled.weights[j] as number) * (design.map[j * m + k] as number)
  if (weights.every((weight) => weight === 0)) throw new InputError('ground/input/out-of-range', 'all weights are 0')
  return weights
}
