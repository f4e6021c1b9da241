import { InputError, requireFinite } from '@thrum/model/ground'
import type { AliasedColumn } from '../least-squares/aliased.ts'
import { leastSquares } from '../least-squares/least-squares.ts'
import { columnOf, type Matrix, matrixOfColumns } from '../least-squares/matrix.ts'
import { scaleColumns } from '../least-squares/scaled-columns.ts'
import { type Family, type FamilyName, families } from './family.ts'
import { type Grouping, joinIntercepts } from './grouping.ts'
import { type Laplace, type LaplaceProblem, laplaceOf } from './laplace.ts'
import { curvatureAt, type Maximum, maximise } from './maximise.ts'
import { separatedDirection } from './separation.ts'
import { startingValues } from './starting-values.ts'
import { inverseOf, quadratic } from './symmetric.ts'

/** A model of counts: what was counted, what it may hang on, what is drawn at random. */
export interface CountModel {
  readonly family: FamilyName
  /** Length n, whole numbers from 0. */
  readonly counts: ArrayLike<number>
  /** For `binomial`: out of how many; length n. */
  readonly trials?: ArrayLike<number>
  /** n rows, p columns; an intercept is a column of ones, best the first. */
  readonly design: Matrix
  /** Added to the linear predictor, such as log effort; length n, 0 unless said. */
  readonly offset?: ArrayLike<number>
  readonly groupings?: readonly Grouping[]
}

/** What is to be known of a fit beside its numbers. */
export type FitWarning =
  /** A variance of random intercepts, or the dispersion, is estimated as zero: a result, not an error. */
  | { readonly kind: 'zero-variance'; readonly of: string }
  | { readonly kind: 'no-overdispersion' }
  | { readonly kind: 'few-groups'; readonly of: string; readonly groups: number }

export type CountModelFit =
  | {
      readonly kind: 'fitted'
      /** On the columns as they came; an aliased column is left out, and its place holds 0. Length p. */
      readonly coefficients: Float64Array
      /** p by p, row major; rows and columns of aliased columns hold 0. */
      readonly covariance: Float64Array
      readonly standardErrors: Float64Array
      readonly aliased: readonly AliasedColumn[]
      /** Standard deviation of the random intercepts of each grouping. */
      readonly deviations: readonly number[]
      /** theta of NB2 (variance mu + mu^2 / theta; Infinity where none was found), phi of NB1 (variance mu (1 + phi)); null without one. */
      readonly dispersion: number | null
      readonly logLikelihood: number
      /** Estimated parameters, variances and dispersion among them. */
      readonly parameters: number
      readonly warnings: readonly FitWarning[]
      readonly evaluations: number
    }
  | { readonly kind: 'all-zero' | 'all-trials' | 'not-converged' }
  /** Along these weights on the columns the likelihood rises for ever: a rate there cannot be told from zero. */
  | { readonly kind: 'separated'; readonly direction: Float64Array }
  /** The likelihood is flat along these weights on the columns. */
  | { readonly kind: 'not-identifiable'; readonly weights: Float64Array }

/** A standard deviation below this, or a root of the dispersion, counts as zero [scale of the linear predictor]. */
const zeroDeviation = 0.02
const zeroDispersionRoot = 0.03
/** Of a fit that converged, a Newton step from a fresh Hessian promises less than this. */
const trulyConverged = 1e-6
/** Fewer groups than this say little of their variance. Common practice, no source. */
const fewGroups = 5

function requireCounts(name: string, values: ArrayLike<number>, n: number): Float64Array {
  if (values.length !== n)
    throw new InputError('ground/input/lengths-differ', `${name} has ${values.length} entries; expected ${n}, one per row`)
  const own = Float64Array.from(values)
  for (const value of own) {
    if (!(Number.isInteger(value) && value >= 0))
      throw new InputError('ground/input/out-of-range', `${name} holds ${value}; expected whole numbers from 0`)
  }
  return own
}

interface Prepared {
  readonly problem: LaplaceProblem
  readonly kept: readonly number[]
  readonly aliased: readonly AliasedColumn[]
  readonly shift: Float64Array
  readonly scale: Float64Array
}

function prepare({ family, counts, trials, design, offset, groupings = [] }: CountModel): Prepared {
  const { rows: n, columns: p } = design
  const own = requireCounts('counts', counts, n)
  const most = trials === undefined ? null : requireCounts('trials', trials, n)
  if (most !== null && own.some((count, i) => count > (most[i] as number)))
    throw new InputError('ground/input/out-of-range', 'a count is above its trials')
  const shifts = Float64Array.from({ length: n }, (_, i) => offset?.[i] ?? 0)
  for (const value of shifts) requireFinite('offset', value)
  for (const { name, of, levels } of groupings) {
    if (of.length !== n || of.some((level) => level < 0 || level >= levels))
      throw new InputError('ground/input/out-of-range', `grouping ${name} does not give each row one of ${levels} levels`)
  }
  const { aliased } = leastSquares({ design, response: own })
  const gone = new Set(aliased.map(({ column }) => column))
  const kept = Array.from({ length: p }, (_, j) => j).filter((j) => !gone.has(j))
  const scaled = scaleColumns(
    matrixOfColumns(
      n,
      kept.map((j) => columnOf(design, j)),
    ),
  )
  const root = Math.sqrt(n)
  return {
    problem: {
      family: families[family],
      response: { counts: own, trials: most },
      columns: scaled.columns.map((column) => column.map((value) => value * root)),
      offset: shifts,
      intercepts: joinIntercepts(groupings),
    },
    kept,
    aliased,
    shift: scaled.shift,
    scale: scaled.scale.map((value) => value / root),
  }
}

/** From coefficients of the scaled columns to those of the columns as they came: row j of the map has these weights. */
function backMap({ kept, shift, scale }: Prepared, p: number): Float64Array {
  const m = kept.length
  const map = new Float64Array(p * m)
  kept.forEach((j, k) => {
    map[j * m + k] = 1 / (scale[k] as number)
    if (k > 0 && (shift[k] as number) !== 0)
      map[(kept[0] as number) * m + k] =
        (map[(kept[0] as number) * m + k] as number) - (shift[k] as number) / (scale[k] as number)
  })
  return map
}

/** The better of two searches; another start where a variance went to zero, from its other side. */
function search(laplace: Laplace, family: Family, start: Float64Array, fixed: number): { best: Maximum; evaluations: number } {
  const climb = (from: Float64Array): Maximum => {
    laplace.reset()
    return maximise(laplace, from)
  }
  const first = climb(start)
  const isSmall = first.at.some(
    (value, k) =>
      k >= fixed && Math.abs(value) < (family.isDispersed && k === first.at.length - 1 ? zeroDispersionRoot : zeroDeviation),
  )
  if (first.isConverged && !isSmall) return { best: first, evaluations: first.evaluations }
  const again = start.slice()
  for (let k = fixed; k < again.length; k++) again[k] = 1
  const second = climb(again)
  const best = second.value > first.value + 1e-9 ? second : first.isConverged || !second.isConverged ? first : second
  return { best, evaluations: first.evaluations + second.evaluations }
}

/**
 * Fits a model of counts by maximum likelihood, random intercepts integrated out by the Laplace approximation.
 *
 * @throws InputError on lengths that differ, counts that are not whole numbers from 0, an offset that is not finite
 * @source Skaug H.J., Fournier D.A. (2006) Comput. Stat. Data Anal. 51, 699-709 (Laplace, observed curvature); Hardin J., Hilbe J.
 *   Negative Binomial Regression (NB1, NB2)
 * @check cbpp, incidence by period with herds at random: log likelihood -92.02657, herd SD 0.64207 (R 4.2.2, lme4)
 */
export function fitCountModel(model: CountModel): CountModelFit {
  const prepared = prepare(model)
  const { problem, kept, aliased } = prepared
  const { family, response, intercepts } = problem
  const { counts, trials } = response
  if (counts.every((count) => count === 0)) return { kind: 'all-zero' }
  if (trials !== null && counts.every((count, i) => count === trials[i])) return { kind: 'all-trials' }
  const direction = separatedDirection(model.design, response)
  if (direction !== null) return { kind: 'separated', direction }
  const laplace = laplaceOf(problem)
  const fixed = kept.length
  const { best, evaluations } = search(laplace, family, startingValues(problem), fixed)
  if (!Number.isFinite(best.value)) return { kind: 'not-converged' }

  const total = laplace.parameters
  const isZero = (k: number): boolean =>
    k >= fixed && Math.abs(best.at[k] as number) < (family.isDispersed && k === total - 1 ? zeroDispersionRoot : zeroDeviation)
  const free = Array.from({ length: total }, (_, k) => k).filter((k) => !isZero(k))
  laplace.reset()
  const whole = curvatureAt(laplace, best.at)
  if (whole === null) return { kind: 'not-converged' }
  const f = free.length
  const part = new Float64Array(f * f)
  const gradient = new Float64Array(f)
  free.forEach((k, a) => {
    gradient[a] = best.gradient[k] as number
    free.forEach((l, b) => {
      part[a * f + b] = whole[k * total + l] as number
    })
  })
  const inverse = inverseOf(part, f)
  if (inverse === null) return { kind: 'not-identifiable', weights: best.at.slice(0, fixed) }
  if (!(Math.abs(quadratic(gradient, inverse, gradient, f)) < trulyConverged)) return { kind: 'not-converged' }

  const p = model.design.columns
  const map = backMap(prepared, p)
  const coefficients = new Float64Array(p)
  const covariance = new Float64Array(p * p)
  for (let j = 0; j < p; j++) {
    for (let k = 0; k < fixed; k++)
      coefficients[j] = (coefficients[j] as number) + (map[j * fixed + k] as number) * (best.at[k] as number)
    for (let l = 0; l < p; l++) {
      let sum = 0
      for (let a = 0; a < fixed; a++)
        for (let b = 0; b < fixed; b++)
          sum += (map[j * fixed + a] as number) * (inverse[a * f + b] as number) * (map[l * fixed + b] as number)
      covariance[j * p + l] = sum
    }
  }
  const root = family.isDispersed ? Math.abs(best.at[total - 1] as number) : null
  const warnings: FitWarning[] = intercepts.groupings.flatMap(({ name, levels }, k): FitWarning[] => [
    ...(isZero(fixed + k) ? [{ kind: 'zero-variance', of: name } as const] : []),
    ...(levels < fewGroups ? [{ kind: 'few-groups', of: name, groups: levels } as const] : []),
  ])
  if (family.isDispersed && isZero(total - 1)) warnings.push({ kind: 'no-overdispersion' })
  return {
    kind: 'fitted',
    coefficients,
    covariance,
    standardErrors: Float64Array.from({ length: p }, (_, j) => Math.sqrt(covariance[j * p + j] as number)),
    aliased,
    deviations: intercepts.groupings.map((_, k) => Math.abs(best.at[fixed + k] as number)),
    dispersion: root === null ? null : family.name === 'nb2' ? 1 / (root * root) : root * root,
    logLikelihood: best.value,
    parameters: total,
    warnings,
    evaluations,
  }
}
