import type { Places } from './at-hand.ts'
import { curvatureAt, type Maximum } from './maximise.ts'
import type { Suspect } from './model.ts'
import type { Objective } from './objective.ts'
import { flattestDirection, inverseOf, quadratic } from './symmetric.ts'

/** Of a fit that converged, a Newton step from a fresh Hessian promises less than this. */
const trulyConverged = 1e-6
/** Of a Hessian scaled to unit diagonal: a direction flatter than this is not told by the counts. */
const flattest = 1e-10
/** Of the flattest direction, parameters of less than this weight are left unnamed. */
const worthNaming = 0.3

export type CovarianceFound =
  | { readonly kind: 'found'; readonly covariance: Float64Array }
  /** The search stopped on a slope, or the likelihood cannot be worked out about the place. */
  | { readonly kind: 'not-there'; readonly suspects: readonly Suspect[] }
  | { readonly kind: 'flat'; readonly suspects: readonly Suspect[] }

/** Inverse of minus the Hessian, without what was estimated as zero; rows and columns of those hold 0. */
export function covarianceAt(objective: Objective, { at, gradient }: Maximum, places: Places): CovarianceFound {
  const { total } = places
  const whole = curvatureAt(objective, at, gradient)
  if (whole === null) return { kind: 'not-there', suspects: [] }
  const free = Array.from({ length: total }, (_, k) => k).filter((k) => !places.isZero(at, k))
  const f = free.length
  const part = new Float64Array(f * f)
  free.forEach((k, a) => {
    free.forEach((l, b) => {
      part[a * f + b] = whole[k * total + l] as number
    })
  })
  const { eigenvalue, direction } = flattestDirection(part, f)
  const suspects = free
    .map((k, a): Suspect | null => {
      const parameter = places.names[k]
      return parameter === undefined ? null : { parameter, weight: direction[a] as number }
    })
    .filter((suspect) => suspect !== null)
    .filter(({ weight }) => Math.abs(weight) >= worthNaming)
    .toSorted((one, other) => Math.abs(other.weight) - Math.abs(one.weight))
  const inverse = eigenvalue > flattest ? inverseOf(part, f) : null
  if (inverse === null) return { kind: 'flat', suspects }
  const own = Float64Array.from(free, (k) => gradient[k] as number)
  if (!(Math.abs(quadratic(own, inverse, own, f)) < trulyConverged)) return { kind: 'not-there', suspects }
  const covariance = new Float64Array(total * total)
  free.forEach((k, a) => {
    free.forEach((l, b) => {
      covariance[k * total + l] = inverse[a * f + b] as number
    })
  })
  return { kind: 'found', covariance }
}
