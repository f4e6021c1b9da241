import { families } from './family.ts'
import { joinIntercepts } from './grouping.ts'
import { type Laplace, type LaplaceProblem, laplaceOf } from './laplace.ts'
import { curvatureAt, type Maximum, maximise } from './maximise.ts'
import { type Coefficients, type CountModel, type CountModelFit, type FitWarning, requireModel } from './model.ts'
import { coefficientsOf, covarianceOf, type ScaledDesign, scaleDesign } from './scaled-design.ts'
import { separatedDirection } from './separation.ts'
import { startingValues } from './starting-values.ts'
import { inverseOf, quadratic } from './symmetric.ts'

/** A standard deviation below this, or a root of the dispersion, counts as zero [scale of the linear predictor]. */
const zeroDeviation = 0.02
const zeroDispersionRoot = 0.03
/** Of a fit that converged, a Newton step from a fresh Hessian promises less than this. */
const trulyConverged = 1e-6
/** Fewer groups than this say little of their variance. Common practice, no source. */
const fewGroups = 5

/** Where the parameters of each sort stand. */
interface Places {
  readonly deviations: number
  /** Of the root of the dispersion; null without one. */
  readonly root: number | null
  readonly zeros: number
}

function placesOf({ columns, intercepts, family }: LaplaceProblem): Places {
  const deviations = columns.length
  const behind = deviations + intercepts.groupings.length
  return { deviations, root: family.isDispersed ? behind : null, zeros: behind + Number(family.isDispersed) }
}

/** True where a variance or the dispersion is as good as zero. */
function isZero(at: Float64Array, k: number, { deviations, root, zeros }: Places): boolean {
  if (k < deviations || k >= zeros) return false
  return Math.abs(at[k] as number) < (k === root ? zeroDispersionRoot : zeroDeviation)
}

/** The better of two searches: another start where a variance went to zero, from its other side. */
function search(laplace: Laplace, start: Float64Array, places: Places): { readonly best: Maximum; readonly evaluations: number } {
  const climb = (from: Float64Array): Maximum => {
    laplace.reset()
    return maximise(laplace, from)
  }
  const first = climb(start)
  if (first.isConverged && !first.at.some((_, k) => isZero(first.at, k, places)))
    return { best: first, evaluations: first.evaluations }
  const again = start.slice()
  for (let k = places.deviations; k < places.zeros; k++) again[k] = 1
  const second = climb(again)
  const isBetter = second.value > first.value + 1e-9 || (second.isConverged && !first.isConverged)
  return { best: isBetter ? second : first, evaluations: first.evaluations + second.evaluations }
}

/** Inverse of minus the Hessian, without what was estimated as zero; rows and columns of those hold 0. */
function covarianceAt(laplace: Laplace, { at, gradient }: Maximum, places: Places): Float64Array | 'flat' | 'not-there' {
  const total = laplace.parameters
  laplace.reset()
  const whole = curvatureAt(laplace, at)
  if (whole === null) return 'not-there'
  const free = Array.from({ length: total }, (_, k) => k).filter((k) => !isZero(at, k, places))
  const f = free.length
  const part = new Float64Array(f * f)
  free.forEach((k, a) => {
    free.forEach((l, b) => {
      part[a * f + b] = whole[k * total + l] as number
    })
  })
  const inverse = inverseOf(part, f)
  if (inverse === null) return 'flat'
  const own = Float64Array.from(free, (k) => gradient[k] as number)
  if (!(Math.abs(quadratic(own, inverse, own, f)) < trulyConverged)) return 'not-there'
  const covariance = new Float64Array(total * total)
  free.forEach((k, a) => {
    free.forEach((l, b) => {
      covariance[k * total + l] = inverse[a * f + b] as number
    })
  })
  return covariance
}

function coefficientsTold(design: ScaledDesign, at: Float64Array, whole: Float64Array, from: number): Coefficients {
  const p = design.rows
  const covariance = covarianceOf(design, whole, at.length, from)
  return {
    coefficients: coefficientsOf(design, at.subarray(from)),
    covariance,
    standardErrors: Float64Array.from({ length: p }, (_, j) => Math.sqrt(covariance[j * p + j] as number)),
    aliased: design.aliased,
  }
}

/**
 * Fits a model of counts by maximum likelihood, random intercepts integrated out by the Laplace approximation.
 *
 * @throws InputError on lengths that differ, counts that are not whole numbers from 0, an offset that is not finite
 * @source Skaug H.J., Fournier D.A. (2006) Comput. Stat. Data Anal. 51, 699-709 (Laplace, observed curvature); Lambert D. (1992)
 *   Technometrics 34, 1-14 (zeros of another origin)
 * @check cbpp, incidence by period with herds at random: log likelihood -92.02628, herd SD 0.64226 (R 4.2.2, glmmTMB)
 */
export function fitCountModel(model: CountModel): CountModelFit {
  const { response, offset } = requireModel(model)
  const { counts, trials } = response
  if (counts.every((count) => count === 0)) return { kind: 'all-zero' }
  if (trials !== null && counts.every((count, i) => count === trials[i])) return { kind: 'all-trials' }
  const direction = separatedDirection(model.design, response)
  if (direction !== null) return { kind: 'separated', direction }

  const design = scaleDesign(model.design)
  const zeros = model.zeros === undefined ? null : scaleDesign(model.zeros)
  const problem: LaplaceProblem = {
    family: families[model.family],
    response,
    columns: design.columns,
    offset,
    intercepts: joinIntercepts(model.groupings ?? []),
    zeros: zeros?.columns ?? [],
  }
  const places = placesOf(problem)
  const laplace = laplaceOf(problem)
  const { best, evaluations } = search(laplace, startingValues(problem), places)
  if (!Number.isFinite(best.value)) return { kind: 'not-converged' }
  const whole = covarianceAt(laplace, best, places)
  if (whole === 'not-there') return { kind: 'not-converged' }
  if (whole === 'flat') return { kind: 'not-identifiable', coefficients: coefficientsOf(design, best.at) }

  const { groupings } = problem.intercepts
  const zeroAt = (k: number): boolean => isZero(best.at, k, places)
  const warnings: FitWarning[] = groupings.flatMap(({ name, levels }, k): FitWarning[] => [
    ...(zeroAt(places.deviations + k) ? [{ kind: 'zero-variance', of: name } as const] : []),
    ...(levels < fewGroups ? [{ kind: 'few-groups', of: name, groups: levels } as const] : []),
  ])
  if (places.root !== null && zeroAt(places.root)) warnings.push({ kind: 'no-overdispersion' })
  return {
    kind: 'fitted',
    ...coefficientsTold(design, best.at, whole, 0),
    zeros: zeros === null ? null : coefficientsTold(zeros, best.at, whole, places.zeros),
    deviations: groupings.map((_, k) => Math.abs(best.at[places.deviations + k] as number)),
    dispersion: places.root === null ? null : dispersionOf(model.family, best.at[places.root] as number, zeroAt(places.root)),
    logLikelihood: best.value,
    parameters: laplace.parameters,
    warnings,
    evaluations,
  }
}

function dispersionOf(family: CountModel['family'], root: number, isNone: boolean): number {
  const square = root * root
  if (family === 'nb1') return isNone ? 0 : square
  return isNone ? Number.POSITIVE_INFINITY : 1 / square
}
