/** Something to be made as large as can be, with its exact gradient. */
export interface Objective {
  readonly parameters: number
  /** @returns the value; -Infinity where it cannot be worked out. The gradient is written into `gradient` */
  evaluate(at: Float64Array, gradient: Float64Array | null): number
  /** Forgets the evaluation before, so that the next hangs on none. */
  reset(): void
}

/** A sum of weights times parameters that is held at a value; the parameter of the largest weight makes it up. */
export interface HeldSum {
  readonly objective: Objective
  /** Takes the parameter that makes up the sum out of a whole vector. */
  without(at: Float64Array): Float64Array
  /** Puts it back. */
  whole(at: Float64Array): Float64Array
}

/** @param weights one for each parameter, not all 0 */
export function withSumHeld(objective: Objective, weights: Float64Array, value: number): HeldSum {
  const m = objective.parameters
  let k = 0
  for (let j = 1; j < m; j++) if (Math.abs(weights[j] as number) > Math.abs(weights[k] as number)) k = j
  const own = weights[k] as number
  const all = new Float64Array(m)
  const gradientOfAll = new Float64Array(m)
  const others = Array.from({ length: m }, (_, j) => j).filter((j) => j !== k)

  function fill(at: Float64Array): void {
    let rest = value
    others.forEach((j, place) => {
      all[j] = at[place] as number
      rest -= (weights[j] as number) * (at[place] as number)
    })
    all[k] = rest / own
  }

  return {
    without: (at) => Float64Array.from(others, (j) => at[j] as number),
    whole: (at) => {
      fill(at)
      return all.slice()
    },
    objective: {
      parameters: m - 1,
      reset: () => objective.reset(),
      evaluate: (at, gradient) => {
        fill(at)
        const reached = objective.evaluate(all, gradient === null ? null : gradientOfAll)
        if (gradient !== null)
          others.forEach((j, place) => {
            gradient[place] = (gradientOfAll[j] as number) - ((gradientOfAll[k] as number) * (weights[j] as number)) / own
          })
        return reached
      },
    },
  }
}
