import { maximise } from '../count-model/maximise.ts'
import { inverseOf, quadratic, symmetrise } from '../count-model/symmetric.ts'
import type { Profile, Profiled } from './profile.ts'
import type { Term } from './random-terms.ts'
import { type RelativeScatter, scatterStart } from './relative-scatter.ts'

/** A residual SD below this part of what the columns leave: the groups explain the rest wholly, and a search need not go further. */
const noResidual = 1e-7
/** Where ten times the scatter beside the residual costs less than this of log likelihood, nothing tells how great the residual is. */
const nothingLost = 1e-6
/** A scatter whose loss costs less than this of log likelihood is zero. */
const worthNothing = 1e-8
/** A climb that gained less than this in so many evaluations (more than a line search and a new metric take) has no digits left. */
const smallGain = 1e-9
const longInVain = 60
/** Differences of a gradient that may have lost digits. */
const broad = 1e-3
/** A search that stopped for want of digits has arrived when another step promises less than this, in units of the log likelihood. */
const trulyConverged = 1e-6

/** Where the search ended. */
export interface FoundScatter {
  readonly at: Float64Array
  readonly value: number
  readonly isConverged: boolean
  readonly evaluations: number
}

/** The likelihood and its gradient along the searched numbers. */
type Likelihood = (at: Float64Array, gradient: Float64Array | null) => number

/** Sets to zero, one after the other, what is worth nothing; a covariance only with its slope. */
function withoutNothings(
  terms: readonly Term[],
  scatter: RelativeScatter,
  best: FoundScatter,
  likelihood: Likelihood,
): FoundScatter {
  let { at, value, evaluations } = best
  function drop(places: readonly number[]): void {
    const without = at.slice()
    for (const place of places) without[place] = 0
    const reached = likelihood(without, null)
    evaluations++
    if (reached < best.value - worthNothing) return
    at = without
    value = reached
  }
  terms.forEach(({ width, isCorrelated }, k) => {
    const start = scatter.starts[k] as number
    if (isCorrelated) {
      drop([start + 2])
      if (at[start + 2] === 0) drop([start + 1, start + 2])
    } else if (width === 2) drop([start + 1])
    drop([start])
  })
  return { ...best, at, value, evaluations }
}

/** What a Newton step from here promises, by differences of the gradient; without end where the place is not a top. */
function promiseAt(likelihood: Likelihood, at: Float64Array): number {
  const m = at.length
  const gradients = Array.from({ length: 2 * m + 1 }, (_, place) => {
    const gradient = new Float64Array(m)
    const moved = at.map((value, k) => value + (k === place ? broad : 0) - (k === place - m ? broad : 0))
    likelihood(moved, gradient)
    return gradient
  })
  const matrix = new Float64Array(m * m)
  for (let j = 0; j < m; j++)
    for (let i = 0; i < m; i++)
      matrix[i * m + j] = ((gradients[j + m]?.[i] as number) - (gradients[j]?.[i] as number)) / (2 * broad)
  symmetrise(matrix, m)
  const inverse = inverseOf(matrix, m)
  const own = gradients[2 * m] ?? new Float64Array(m)
  return inverse === null ? Number.POSITIVE_INFINITY : Math.abs(quadratic(own, inverse, own, m))
}

/** One climb. It ends where the residual goes to nothing, and where rounding lets it gain no more. */
function climb(terms: readonly Term[], profile: Profile, scatter: RelativeScatter, from: Float64Array): FoundScatter {
  const slopes = terms.map(({ width }) => new Float64Array(width * width))
  let isEnded = false
  let greatest = Number.NEGATIVE_INFINITY
  let inVain = 0
  const likelihood: Likelihood = (at, gradient) => {
    const found = profile.at(scatter.blocksAt(at), gradient === null ? null : slopes)
    if (found === null) return Number.NEGATIVE_INFINITY
    if (found.residualVariance < noResidual ** 2) isEnded = true
    if (gradient !== null) scatter.fillGradient(at, slopes, gradient)
    return found.logLikelihood
  }
  const best = maximise(
    {
      parameters: scatter.parameters,
      evaluate: (at: Float64Array, gradient: Float64Array | null): number => {
        if (isEnded) return Number.NEGATIVE_INFINITY
        const value = likelihood(at, gradient)
        inVain = value > greatest + smallGain ? 0 : inVain + 1
        greatest = Math.max(greatest, value)
        if (inVain > longInVain) isEnded = true
        return value
      },
      // Nothing of the problem is kept from one evaluation to the next.
      reset: () => undefined,
    },
    from,
  )
  const isConverged = best.isConverged || promiseAt(likelihood, best.at) < trulyConverged
  return withoutNothings(terms, scatter, { ...best, isConverged }, likelihood)
}

/** The better of two climbs: another start where a scatter went to zero, with the great ones small and the small ones great. */
export function searchScatter(terms: readonly Term[], profile: Profile, scatter: RelativeScatter): FoundScatter {
  const first = climb(
    terms,
    profile,
    scatter,
    scatterStart(terms, () => 1),
  )
  if (first.isConverged && !first.at.includes(0)) return first
  const start = scatterStart(terms, (term, isSlope) => {
    const place = scatter.starts[terms.indexOf(term)] as number
    return first.at[place + (isSlope ? term.width - 1 + Number(term.isCorrelated) : 0)] === 0 ? 3 : 0.3
  })
  const second = climb(terms, profile, scatter, start)
  const evaluations = first.evaluations + second.evaluations
  const gain = second.value - first.value
  const isBetter = gain > smallGain || (second.isConverged && !first.isConverged && gain > -nothingLost)
  return { ...(isBetter ? second : first), evaluations }
}

/** Whether the likelihood has no top this side of a residual of nothing. */
export function isWithoutResidual(profile: Profile, blocks: readonly Float64Array[], best: Profiled): boolean {
  if (best.residualVariance < noResidual ** 2) return true
  if (blocks.every((block) => block.every((value) => value === 0))) return false
  const further = profile.at(
    blocks.map((block) => block.map((value) => 10 * value)),
    null,
  )
  return further !== null && further.logLikelihood > best.logLikelihood - nothingLost
}
