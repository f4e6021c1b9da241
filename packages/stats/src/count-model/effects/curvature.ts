import type { Effects, Loads } from './effects.ts'
import { oneGroupingCurvature } from './one-grouping-curvature.ts'
import { schurCurvature } from './schur-curvature.ts'

/** H = I + L'WL, the curvature of the random effects, where row i of L holds the loads of its levels. */
export interface Curvature {
  /** Takes loads and weights in. @returns false where H is not positive definite */
  assemble(loads: Loads, weight: Float64Array): boolean
  /** H x = b, in place of b. */
  solve(b: Float64Array): void
  logDeterminant(): number
  /** For each slot and row i: (H^-1 l_i) at the level of that row, l_i being its row of L. */
  fillAlong(loads: Loads, into: readonly Float64Array[]): void
}

/** One grouping has a block for each level; of several, the one with the most levels is taken out and the rest is dense. */
export const curvatureOf = (effects: Effects): Curvature =>
  effects.groupings.length <= 1 ? oneGroupingCurvature(effects) : schurCurvature(effects)
