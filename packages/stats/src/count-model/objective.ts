/** Something to be made as large as can be, with its exact gradient. */
export interface Objective {
  readonly parameters: number
  /** @returns the value; -Infinity where it cannot be worked out. The gradient is written into `gradient` */
  evaluate(at: Float64Array, gradient: Float64Array | null): number
  /** Forgets the evaluation before, so that the next hangs on none. */
  reset(): void
}

/** The same objective with one parameter held at a value; the others keep their order. */
export function withHeld(objective: Objective, place: number, value: number): Objective {
  const m = objective.parameters
  const whole = new Float64Array(m)
  const wholeGradient = new Float64Array(m)
  return {
    parameters: m - 1,
    reset: () => objective.reset(),
    evaluate: (at, gradient) => {
      for (let k = 0; k < m; k++) whole[k] = k === place ? value : (at[k < place ? k : k - 1] as number)
      const reached = objective.evaluate(whole, gradient === null ? null : wholeGradient)
      if (gradient !== null) for (let k = 0; k < m - 1; k++) gradient[k] = wholeGradient[k < place ? k : k + 1] as number
      return reached
    },
  }
}
