import { type LinearMixedFitted, type LinearMixedModel, requireLinearMixed } from './model.ts'
import { prepareModel } from './prepared-model.ts'
import { profileOf } from './profile.ts'
import { blockOf, toOwnUnits } from './slope-units.ts'

/** What is expected of the levels of one grouping, given the response. */
export interface LevelModes {
  readonly of: string
  /** Length `levels`; where a slope is given, where its covariate is 0. */
  readonly intercepts: Float64Array
  /** Length `levels`, per unit of the covariate beside the coefficient of its column; null without a random slope. */
  readonly slopes: Float64Array | null
}

/**
 * Conditional modes (best linear unbiased predictions) of the random effects: how far each level lies from the columns' line.
 *
 * They are pulled towards 0, the more the fewer rows a level has; a level without rows lies at 0.
 *
 * @param fit of this same model
 * @returns one entry for each grouping, in the order of the model
 * @throws InputError as `fitLinearMixed`
 * @source Henderson C.R. (1975) Biometrics 31, 423-447, from memory
 * @check sleepstudy, subjects at random with correlated slopes, restricted: subject 308 intercept 2.258566, slope 9.198972 (R 4.2.2, lme4)
 */
export function linearMixedModes(model: LinearMixedModel, fit: LinearMixedFitted): readonly LevelModes[] {
  const { problem } = prepareModel(model, requireLinearMixed(model))
  const { terms } = problem
  const blocks = terms.map((term) =>
    blockOf(term, {
      intercept: (fit.deviations[term.place] as number) / fit.residualSd,
      slope: (fit.slope?.deviation ?? 0) / fit.residualSd,
      correlation: fit.slope?.correlation ?? 0,
    }),
  )
  const modes = profileOf(problem).at(blocks, null)?.modes ?? []
  return terms
    .map((term, k) => ({ term, own: modes[k] ?? new Float64Array(term.levels * term.width) }))
    .toSorted((one, other) => one.term.place - other.term.place)
    .map(({ term, own }): LevelModes => {
      toOwnUnits(term, own, problem.unit)
      if (term.width === 1) return { of: term.name, intercepts: own, slopes: null }
      return { of: term.name, intercepts: own.filter((_, i) => i % 2 === 0), slopes: own.filter((_, i) => i % 2 === 1) }
    })
}
