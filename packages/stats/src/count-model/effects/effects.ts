import type { Grouping } from './grouping.ts'

/**
 * One set of standard normal effects, one for each level of a grouping. A row feels the effect of its level times its *load*, which is
 * linear in the parameters of the slot: sum over them of parameter times basis.
 */
export interface Slot {
  /** Place in the list of groupings. */
  readonly grouping: number
  readonly of: Int32Array
  readonly levels: number
  /** Where its effects begin in the vector of all. */
  readonly start: number
}

/** A signed parameter of the random effects: it loads `slot` by `basis`, or by 1 where that is null. */
export interface LoadParameter {
  readonly slot: number
  readonly basis: Float64Array | null
  /** True for one whose zero is a variance of zero; false for the part of a slope that goes with the intercept. */
  readonly isDeviation: boolean
}

/**
 * Random intercepts, and slopes, of several groupings as one vector v of independent standard normal effects: eta = fixed + loads times v.
 *
 * An intercept of standard deviation a and a slope of b v0 + c v1 have covariance [[a^2, ab], [ab, b^2 + c^2]].
 */
export interface Effects {
  readonly groupings: readonly Grouping[]
  readonly slots: readonly Slot[]
  readonly parameters: readonly LoadParameter[]
  /** Length of v. */
  readonly total: number
}

export function effectsOf(groupings: readonly Grouping[]): Effects {
  const slots: Slot[] = []
  const parameters: LoadParameter[] = []
  let total = 0
  const addSlot = (grouping: number, { of, levels }: Grouping): number => {
    slots.push({ grouping, of, levels, start: total })
    total += levels
    return slots.length - 1
  }
  for (const [k, grouping] of groupings.entries()) {
    const own = addSlot(k, grouping)
    parameters.push({ slot: own, basis: null, isDeviation: true })
    if (grouping.slope === undefined) continue
    const basis = Float64Array.from(grouping.slope.values)
    if (grouping.slope.isCorrelated !== false) parameters.push({ slot: own, basis, isDeviation: false })
    parameters.push({ slot: addSlot(k, grouping), basis, isDeviation: true })
  }
  return { groupings, slots, parameters, total }
}

/** Loads of every slot: a number where it is the same in all rows, else one for each row. */
export type Loads = (number | Float64Array)[]

/** Loads for parameters that stand in `at` from place `from` on; arrays of an earlier call are written over. */
export function fillLoads({ slots, parameters }: Effects, at: Float64Array, from: number, n: number, loads: Loads): void {
  for (let s = 0; s < slots.length; s++) {
    let constant = 0
    let isConstant = true
    for (let t = 0; t < parameters.length; t++) {
      const { slot, basis } = parameters[t] as LoadParameter
      if (slot !== s) continue
      if (basis === null) constant += at[from + t] as number
      else isConstant = false
    }
    if (isConstant) {
      loads[s] = constant
      continue
    }
    const before = loads[s]
    const load = before instanceof Float64Array ? before : new Float64Array(n)
    load.fill(constant)
    for (let t = 0; t < parameters.length; t++) {
      const { slot, basis } = parameters[t] as LoadParameter
      if (slot !== s || basis === null) continue
      const weight = at[from + t] as number
      for (let i = 0; i < n; i++) load[i] = (load[i] as number) + weight * (basis[i] as number)
    }
    loads[s] = load
  }
}
