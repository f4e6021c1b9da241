import { InputError } from '@thrum/model/ground'

/** A function that grows or falls all the way, with its slope where it is known. */
export interface MonotoneProblem {
  /** Value minus target, and slope, at x. A value of -Infinity or Infinity is allowed: it tells the side only. */
  readonly at: (x: number) => { readonly value: number; readonly slope: number }
  readonly start: number
  /** First step of the search for a bracket. */
  readonly reach: number
}

const maxBracketSteps = 2100
const maxSteps = 2000

/**
 * Root of a monotone function on the whole line: Newton steps, kept inside a bracket that shrinks at every step.
 *
 * A Newton step that leaves the bracket is replaced by its middle, so the search ends however bad the start is.
 * It stops when neither bracket end nor Newton step moves x by more than two units in its last place.
 *
 * @throws InputError stats/solve/no-bracket when the function has one sign everywhere it was tried; stats/solve/no-end
 */
export function solveMonotone({ at, start, reach }: MonotoneProblem): number {
  let x = start
  let here = at(x)
  if (here.value === 0) return x
  const rising = here.slope > 0
  const isLeft = (value: number): boolean => value < 0 === rising

  let left = Number.NEGATIVE_INFINITY
  let right = Number.POSITIVE_INFINITY
  let step = reach
  for (let n = 0; n < maxBracketSteps && !(left > Number.NEGATIVE_INFINITY && right < Number.POSITIVE_INFINITY); n++) {
    if (isLeft(here.value)) left = Math.max(left, x)
    else right = Math.min(right, x)
    if (left > Number.NEGATIVE_INFINITY && right < Number.POSITIVE_INFINITY) break
    x = isLeft(here.value) ? x + step : x - step
    step *= 2
    here = at(x)
    if (here.value === 0) return x
  }
  if (!(Number.isFinite(left) && Number.isFinite(right))) {
    throw new InputError('stats/solve/no-bracket', `no change of sign was found from ${start} on`)
  }

  let move = right - left
  let moveBefore = move
  for (let n = 0; n < maxSteps; n++) {
    const newton = x - here.value / here.slope
    // A step must at least halve the one before the last, or Newton is only crawling: then the middle is better.
    const isFast = newton > left && newton < right && Math.abs(newton - x) <= 0.5 * Math.abs(moveBefore)
    const next = isFast ? newton : left + (right - left) / 2
    if (Math.abs(next - x) <= 4e-16 * Math.abs(next) || next === left || next === right) return next
    moveBefore = move
    move = next - x
    x = next
    here = at(x)
    if (here.value === 0) return x
    if (isLeft(here.value)) left = x
    else right = x
  }
  throw new InputError('stats/solve/no-end', `the search from ${start} did not settle in ${maxSteps} steps`)
}
