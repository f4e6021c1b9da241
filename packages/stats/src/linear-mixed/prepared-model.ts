import { norm } from '../least-squares/scaled-columns.ts'
import type { LinearMixedModel } from './model.ts'
import { type OrthonormalDesign, orthonormalDesign, takeOff } from './orthonormal-design.ts'
import type { ProfileProblem } from './profile.ts'
import { termsOf } from './random-terms.ts'

/** A checked model made fit for arithmetic. */
export interface PreparedModel {
  readonly design: OrthonormalDesign
  /** Least squares on the turned columns: what was taken off the response; length m. */
  readonly share: Float64Array
  /** Its response is what least squares leaves; zeros where that is nothing at all. */
  readonly problem: ProfileProblem
}

/** @param response less the offset; length n */
export function prepareModel({ design, groupings = [], likelihood }: LinearMixedModel, response: Float64Array): PreparedModel {
  const turned = orthonormalDesign(design)
  const left = response.slice()
  const share = takeOff(turned.columns, left)
  const unit = norm(left) / Math.sqrt(left.length) || 1
  const { columns, logVolume } = turned
  const problem = { columns, response: left.map((value) => value / unit), unit, terms: termsOf(groupings), likelihood, logVolume }
  return { design: turned, share, problem }
}
