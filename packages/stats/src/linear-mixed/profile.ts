import { cholesky, inverseOf, quadratic } from '../count-model/symmetric.ts'
import { log } from '../elementary.ts'
import { type Curvature, curvatureOf } from './curvature.ts'
import { fillProduct, multiplyLevels, type Term, takeOffEffects } from './random-terms.ts'

/** A linear mixed model at hand. */
export interface ProfileProblem {
  /** At right angles and of length 1; m of them, each of length n. */
  readonly columns: readonly Float64Array[]
  /** What the columns alone leave of the response, in units of its own root mean square; length n. */
  readonly response: Float64Array
  /** That root mean square, in units of the response as it came. */
  readonly unit: number
  readonly terms: readonly Term[]
  readonly likelihood: 'full' | 'restricted'
  /** Of the columns as they came; it enters the restricted likelihood. */
  readonly logVolume: number
}

/** What is best for given relative scatter of the random effects; all but the likelihood in units of `unit`. */
export interface Profiled {
  readonly logLikelihood: number
  /** Of the columns, beside those of least squares; length m. */
  readonly coefficients: Float64Array
  /** (X'V^-1X)^-1 in units of the residual variance; m by m, row major. */
  readonly covariance: Float64Array
  readonly residualVariance: number
  /** For each term its random effects, d for each level. */
  readonly modes: readonly Float64Array[]
}

/**
 * The log likelihood of a linear mixed model with coefficients and residual variance profiled out.
 *
 * With V = I + ZLL'Z' the variance of the response in units of the residual one, N = n (less m where restricted):
 * -2 l = log det V + N (1 + log(2 pi r'V^-1r / N)), r what generalised least squares leaves; restricted with log det X'V^-1X too.
 *
 * V^-1 x is x - ZLu with u = H^-1 L'Z'x, and x'V^-1y = (V^-1x)'(V^-1y) + u_x'u_y: sums of squares, in which nothing cancels.
 *
 * @source Bates D., Maechler M., Bolker B., Walker S. (2015) J. Stat. Softw. 67(1), sections 3.3 to 3.5; gradient by
 *   d log det V = tr V^-1 dV and d V^-1 = -V^-1 dV V^-1, ours.
 */
export interface Profile {
  /** @returns null where it cannot be worked out. For each term the slope along the entries of its block is written into `slopes` */
  at(blocks: readonly Float64Array[], slopes: readonly Float64Array[] | null): Profiled | null
}

/** One vector x: V^-1 x (length n), and u = H^-1 L'Z'x (length q). */
interface Solved {
  readonly rows: Float64Array
  readonly effects: Float64Array
}

const dotOf = (one: Float64Array, other: Float64Array): number => {
  let sum = 0
  for (let i = 0; i < one.length; i++) sum += (one[i] as number) * (other[i] as number)
  return sum
}

const product = (one: Solved, other: Solved): number => dotOf(one.rows, other.rows) + dotOf(one.effects, other.effects)

/** x less a sum of weighted others. */
function less(x: Float64Array, others: readonly Float64Array[], weights: Float64Array): Float64Array {
  const own = x.slice()
  others.forEach((other, k) => {
    const weight = weights[k] as number
    for (let i = 0; i < own.length; i++) own[i] = (own[i] as number) - weight * (other[i] as number)
  })
  return own
}

export function profileOf({ columns, response, unit, terms, likelihood, logVolume }: ProfileProblem): Profile {
  const m = columns.length
  const freedom = likelihood === 'full' ? response.length : response.length - m
  const [first, ...others] = terms
  const curvature: Curvature | null = first === undefined ? null : curvatureOf([first, ...others])
  const starts = curvature?.starts ?? []

  /** Z'x, all terms in one vector. */
  function productOf(x: Float64Array): Float64Array {
    const all = new Float64Array(curvature?.effects ?? 0)
    terms.forEach((term, k) => {
      fillProduct(term, x, all, starts[k] as number)
    })
    return all
  }
  const products = [...columns, response].map(productOf)

  function turn(blocks: readonly Float64Array[], way: 'along' | 'across', vector: Float64Array): Float64Array {
    const own = new Float64Array(vector.length)
    terms.forEach((term, k) => {
      multiplyLevels(term, blocks[k] as Float64Array, way, vector, own, starts[k] as number)
    })
    return own
  }

  function solve(blocks: readonly Float64Array[], x: Float64Array, productOfX: Float64Array): Solved {
    const effects = turn(blocks, 'across', productOfX)
    curvature?.solve(effects)
    const rows = x.slice()
    const scaled = turn(blocks, 'along', effects)
    terms.forEach((term, k) => {
      takeOffEffects(term, scaled, starts[k] as number, rows)
    })
    return { rows, effects }
  }

  /** Takes weight (Z'V^-1x)(L'Z'V^-1y)' of one term, summed over its levels, off the slopes of its block. */
  function takeOffSquare(one: Float64Array, turnedOther: Float64Array, weight: number, slopes: readonly Float64Array[]): void {
    terms.forEach(({ levels, width }, k) => {
      const into = slopes[k] as Float64Array
      const start = starts[k] as number
      for (let j = start; j < start + levels * width; j += width)
        for (let a = 0; a < width; a++)
          for (let b = 0; b < width; b++)
            into[a * width + b] =
              (into[a * width + b] as number) - weight * (one[j + a] as number) * (turnedOther[j + b] as number)
    })
  }

  /** Of -2 l along the entries of the blocks, halved; then its sign turned. */
  function fillSlopes(
    solved: readonly Solved[],
    left: Solved,
    covariance: Float64Array,
    square: number,
    slopes: readonly Float64Array[],
  ): void {
    const traces = curvature?.traces() ?? []
    slopes.forEach((slope, k) => {
      slope.set(traces[k] as Float64Array)
    })
    takeOffSquare(productOf(left.rows), left.effects, freedom / square, slopes)
    if (likelihood === 'restricted') {
      solved.forEach(({ rows }, j) => {
        const own = productOf(rows)
        solved.forEach(({ effects }, k) => {
          takeOffSquare(own, effects, covariance[j * m + k] as number, slopes)
        })
      })
    }
    for (const slope of slopes) for (let k = 0; k < slope.length; k++) slope[k] = -(slope[k] as number)
  }

  return {
    at: (blocks, slopes) => {
      if (curvature !== null && !curvature.assemble(blocks)) return null
      const solved = [...columns, response].map((x, k) => solve(blocks, x, products[k] as Float64Array))
      const own = solved.pop() as Solved
      const information = new Float64Array(m * m)
      const right = new Float64Array(m)
      for (let j = 0; j < m; j++) {
        right[j] = product(solved[j] as Solved, own)
        for (let k = 0; k <= j; k++) {
          const entry = product(solved[j] as Solved, solved[k] as Solved)
          information[j * m + k] = entry
          information[k * m + j] = entry
        }
      }
      const covariance = inverseOf(information, m)
      if (covariance === null) return null
      const one = new Float64Array(m)
      const coefficients = right.map((_, j) => {
        one.fill(0)
        one[j] = 1
        return quadratic(one, covariance, right, m)
      })
      const left: Solved = {
        rows: less(
          own.rows,
          solved.map(({ rows }) => rows),
          coefficients,
        ),
        effects: less(
          own.effects,
          solved.map(({ effects }) => effects),
          coefficients,
        ),
      }
      const square = product(left, left)
      if (!(square > 0 && Number.isFinite(square))) return null
      let twice = (curvature?.logDeterminant() ?? 0) + freedom * (1 + log((2 * Math.PI * square) / freedom) + 2 * log(unit))
      if (likelihood === 'restricted') twice += logDeterminantOf(information, m) + 2 * logVolume
      if (slopes !== null) fillSlopes(solved, left, covariance, square, slopes)
      const modes = turn(blocks, 'along', left.effects)
      return {
        logLikelihood: -twice / 2,
        coefficients,
        covariance,
        residualVariance: square / freedom,
        modes: terms.map(({ levels, width }, k) => modes.slice(starts[k] as number, (starts[k] as number) + levels * width)),
      }
    },
  }
}

/** Of a matrix that is known to be positive definite. */
function logDeterminantOf(matrix: Float64Array, p: number): number {
  const factor = matrix.slice()
  cholesky(factor, p)
  let sum = 0
  for (let j = 0; j < p; j++) sum += 2 * log(factor[j * p + j] as number)
  return sum
}
