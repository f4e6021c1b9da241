import { effectsOf } from './effects/effects.ts'
import type { RandomSlope } from './effects/grouping.ts'
import { families } from './family/families.ts'
import type { Response } from './family/family.ts'
import { laplaceOf, type MarginalLikelihood } from './laplace.ts'
import type { CountModel, ParameterName } from './model.ts'
import { quadratureOf } from './quadrature.ts'
import type { RowProblem } from './row-model.ts'
import { type ScaledDesign, scaleDesign } from './scaled-design.ts'

/** A standard deviation below this, or a root of the dispersion, counts as zero [scale of the linear predictor]. */
const zeroDeviation = 0.02
const zeroDispersionRoot = 0.03

/** A model made ready for a search: scaled columns, parameters in their places. */
export interface ModelAtHand {
  readonly problem: RowProblem
  readonly design: ScaledDesign
  readonly zeros: ScaledDesign | null
  /** How the covariate of each grouping's slope stands in the search: (values - centre) / scale; 0 and 1 without one. */
  readonly slopeUnits: readonly SlopeUnit[]
  readonly places: Places
  /** Log likelihood and gradient, for these counts or others of the same rows. */
  objectiveFor(response: Response): MarginalLikelihood
}

/** A slope that goes with its intercept is searched about the mean of its covariate: the model is the same, and the search is short. */
export interface SlopeUnit {
  readonly centre: number
  readonly scale: number
}

/** Where the parameters of each sort stand on the scale of the search. */
export interface Places {
  readonly deviations: number
  /** Of the root of the dispersion; null without one. */
  readonly root: number | null
  readonly zeros: number
  readonly total: number
  readonly names: readonly ParameterName[]
  /** True where a variance or the dispersion stands as good as zero in `at`. */
  isZero(at: Float64Array, k: number): boolean
}

function placesOf({ columns, effects, family, zeros }: RowProblem, design: ScaledDesign, ofZeros: ScaledDesign | null): Places {
  const deviations = columns.length
  const behind = deviations + effects.parameters.length
  const root = family.isDispersed ? behind : null
  const from = behind + Number(family.isDispersed)
  const ofEffects = effects.parameters.map(({ slot, basis, isDeviation }): ParameterName => {
    const of = effects.groupings[effects.slots[slot]?.grouping ?? 0]?.name ?? ''
    return { kind: basis === null ? 'deviation' : isDeviation ? 'slope-deviation' : 'slope-correlation', of }
  })
  return {
    deviations,
    root,
    zeros: from,
    total: from + zeros.length,
    names: [
      ...design.kept.map((column): ParameterName => ({ kind: 'coefficient', column })),
      ...ofEffects,
      ...(root === null ? [] : [{ kind: 'dispersion' } as const]),
      ...(ofZeros?.kept ?? []).map((column): ParameterName => ({ kind: 'zero-coefficient', column })),
    ],
    isZero: (at, k) => {
      if (k < deviations || k >= from) return false
      if (k === root) return Math.abs(at[k] as number) < zeroDispersionRoot
      return effects.parameters[k - deviations]?.isDeviation === true && Math.abs(at[k] as number) < zeroDeviation
    },
  }
}

export function modelAtHand(model: CountModel, response: Response, offset: Float64Array): ModelAtHand {
  const design = scaleDesign(model.design)
  const zeros = model.zeros === undefined ? null : scaleDesign(model.zeros)
  const groupings = model.groupings ?? []
  const slopeUnits = groupings.map(({ slope }) => (slope === undefined ? { centre: 0, scale: 1 } : slopeUnitOf(slope)))
  const problem: RowProblem = {
    family: families[model.family],
    response,
    columns: design.columns,
    offset,
    effects: effectsOf(
      groupings.map((grouping, k) => {
        const { slope } = grouping
        if (slope === undefined) return grouping
        const { centre, scale } = slopeUnits[k] as SlopeUnit
        return { ...grouping, slope: { ...slope, values: Float64Array.from(slope.values, (value) => (value - centre) / scale) } }
      }),
    ),
    zeros: zeros?.columns ?? [],
  }
  const { nodes } = model
  return {
    problem,
    design,
    zeros,
    slopeUnits,
    places: placesOf(problem, design, zeros),
    objectiveFor: (own) => {
      const laplace = laplaceOf({ ...problem, response: own })
      return nodes === undefined || nodes === 1 ? laplace : quadratureOf(problem.effects, laplace, nodes)
    },
  }
}

function slopeUnitOf({ values, isCorrelated = true }: RandomSlope): SlopeUnit {
  const n = Math.max(values.length, 1)
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += values[i] as number
  const centre = isCorrelated ? sum / n : 0
  let squares = 0
  for (let i = 0; i < values.length; i++) squares += ((values[i] as number) - centre) ** 2
  const scale = Math.sqrt(squares / n)
  return { centre, scale: scale > 0 ? scale : 1 }
}
