import { studentMultiplier, studentTwoSidedP } from '../distribution/student.ts'
import { exp, log } from '../elementary.ts'
import type { Interval } from '../interval.ts'
import { leastSquares } from '../least-squares/least-squares.ts'
import { matrixOfColumns } from '../least-squares/matrix.ts'
import { thinnedLog } from './thinned-log.ts'
import type { Contrast, UnitColumns } from './unit-fit.ts'

/** One total of a unit: a field, or a field at one of its two sides. */
export interface ThinnedCell {
  /** Place of the unit, from 0. */
  readonly unit: number
  /** What was counted, and its effort, above 0. */
  readonly total: number
  readonly effort: number
  /** 1 where the total adds to the unit's number, -1 where it is taken off (the first side of a difference). */
  readonly sign: 1 | -1
  /** True where the ratio that is asked for multiplies what is expected. */
  readonly isAsked: boolean
  /** Cells of one company are thinned to the same exposure: those that are held against each other. */
  readonly company: number
}

export interface ThinnedProblem {
  readonly cells: readonly ThinnedCell[]
  readonly columns: UnitColumns
  /** True of pairs: each unit is held against nothing but itself, and the scatter of all is its own measure. */
  readonly isPaired: boolean
}

/** Where limits are looked for: so far from where the search begins, on the log. */
const reach = 12
const mostRounds = 200
const close = 1e-9
/** The slope of the contrast by the log ratio is taken over twice this, and is not told below this. */
const slopeStep = 0.05
const leastSlope = 0.05

interface AtRatio {
  readonly estimate: number
  readonly se: number
  readonly df: number
}

/** How a contrast of units looks at a trial value of its log ratio. */
type Look = (logRatio: number) => AtRatio

/**
 * Weights of the contrast and residual maker of the design; null where the contrast is lost, or fewer than two degrees are left.
 */
function designParts({ base, nuisance, contrasts }: UnitColumns, units: number) {
  const all = [...base, ...nuisance, ...contrasts]
  const design = matrixOfColumns(units, all)
  const fit = leastSquares({ design, response: new Float64Array(units) })
  const p = all.length
  const asked = p - 1
  if (fit.df < 2 || fit.aliased.some(({ column }) => column === asked)) return null
  const weightsOf = (j: number): Float64Array =>
    Float64Array.from({ length: units }, (_, f) =>
      all.reduce((sum, column, k) => sum + (fit.covariance[j * p + k] as number) * (column[f] as number), 0),
    )
  const rows = all.map((_, j) => weightsOf(j))
  const residual = Array.from({ length: units }, (_, f) =>
    Float64Array.from(
      { length: units },
      (__, g) =>
        Number(f === g) -
        all.reduce((sum, column, j) => sum + (column[f] as number) * ((rows[j] as Float64Array)[g] as number), 0),
    ),
  )
  return { weights: rows[asked] as Float64Array, residual, df: fit.df }
}

function lookOf({ cells, columns, isPaired }: ThinnedProblem, units: number): Look | null {
  const parts = designParts(columns, units)
  if (parts === null) return null
  const { weights, residual, df } = parts
  const companies = Math.max(0, ...cells.map(({ company }) => company + 1))
  const least = new Float64Array(companies)
  const h = new Float64Array(units)
  const lost = new Float64Array(units)
  return (logRatio) => {
    const ratio = exp(logRatio)
    least.fill(Number.POSITIVE_INFINITY)
    for (const { effort, isAsked, company } of cells)
      least[company] = Math.min(least[company] as number, effort * (isAsked ? ratio : 1))
    h.fill(0)
    lost.fill(0)
    let thinned = 0
    for (const { unit, total, effort, sign, isAsked, company } of cells) {
      const part = (least[company] as number) / (effort * (isAsked ? ratio : 1))
      const { mean, variance } = thinnedLog(total, part)
      thinned += total * part
      h[unit] = (h[unit] as number) + sign * mean
      lost[unit] = (lost[unit] as number) + variance
    }
    let estimate = 0
    let squares = 0
    let gone = 0
    for (let f = 0; f < units; f++) {
      const row = residual[f] as Float64Array
      estimate += (weights[f] as number) * (h[f] as number)
      let rest = 0
      for (let g = 0; g < units; g++) rest += (row[g] as number) * (h[g] as number)
      squares += rest * rest
      gone += (row[f] as number) * (lost[f] as number)
    }
    const floor = leastScatter(thinned / cells.length) * (cells.length / units)
    if (isPaired) {
      const own = weights.reduce((sum, weight) => sum + weight * weight, 0)
      const meanLost = lost.reduce((sum, value) => sum + value, 0) / units
      return { estimate, se: Math.sqrt(Math.max(squares / df, floor - meanLost) * own), df }
    }
    // Thinned totals scatter alike, by V; the mean over thinnings scatters less, by what thinning alone makes.
    const all = Math.max((squares + gone) / df, floor)
    const scatter = lost.map((own) => Math.max(all - own, 0))
    let variance = 0
    let trace = 0
    let weightSquares = 0
    for (let f = 0; f < units; f++) {
      variance += (weights[f] as number) ** 2 * (scatter[f] as number)
      weightSquares += (weights[f] as number) ** 2
      const row = residual[f] as Float64Array
      for (let g = 0; g < units; g++) trace += (row[g] as number) ** 2 * (scatter[f] as number) * (scatter[g] as number)
    }
    const spread = weightSquares * weightSquares * trace
    const own = spread > 0 ? (df * df * variance * variance) / spread : df
    return { estimate, se: Math.sqrt(variance), df: Math.min(Math.max(own, 1), df) }
  }
}

/** Below this mean of thinned totals, fields may agree by chance: less scatter than that of a Poisson count is then not believed. */
const fewInsects = 3

/** Variance of ln(Y + 1) of a Poisson count of a mean below `fewInsects`; 0 above it. */
function leastScatter(mean: number): number {
  if (!(mean < fewInsects)) return 0
  let p = exp(-mean)
  let sum = 0
  let square = 0
  for (let k = 1; k < 40; k++) {
    p *= mean / k
    const own = log(k + 1)
    sum += p * own
    square += p * own * own
  }
  return square - sum * sum
}

/** Where a falling function crosses zero between two places of opposite sign: false position, the stale end halved. */
function crossing(of: (x: number) => number, left: number, right: number): number {
  let [low, high, atLow, atHigh] = [left, right, of(left), of(right)]
  let last = 0
  for (let k = 0; k < mostRounds && high - low > close * Math.max(1, Math.abs(low)); k++) {
    const straight = low + ((high - low) * atLow) / (atLow - atHigh)
    const next = straight > low && straight < high ? straight : (low + high) / 2
    const value = of(next)
    if (Math.abs(value) < close) return next
    if (value > 0) {
      ;[low, atLow] = [next, value]
      if (last > 0) atHigh /= 2
      last = 1
    } else {
      ;[high, atHigh] = [next, value]
      if (last < 0) atLow /= 2
      last = -1
    }
  }
  return (low + high) / 2
}

/** Where a falling function crosses zero, looked for from `from` outwards, first so far; endless where it does not. */
function crossingFrom(of: (x: number) => number, from: number, first: number): number {
  const side = of(from) > 0 ? 1 : -1
  let near = from
  for (let width = first; Math.abs(near - from) < reach; width *= 2) {
    const far = near + side * Math.min(width, reach)
    if (of(far) > 0 !== side > 0) return side > 0 ? crossing(of, near, far) : crossing(of, far, near)
    near = far
  }
  return side * Number.POSITIVE_INFINITY
}

/**
 * Contrast of units by thinning: the ratios at which the units, watched for as much as would make them alike, cannot be told apart.
 *
 * At a trial ratio each total is thinned to the least exposure (effort, times the ratio where it applies) of its company, and
 * ln(thinned + 1) is taken in the mean over all thinnings. A count that is Poisson about whatever mean, thinned, is just the count of a
 * smaller mean: at the true ratio all units of a company follow one law, however scattered they are and whatever zeros they hold, and the
 * contrast of the means is 0 without bias. Limits are the ratios at which its t reaches the quantile for the degrees of freedom at the
 * estimate. With many insects this is the
 * contrast of logarithms; with few it is free of what the half in the logarithm does to unequal exposures.
 *
 * @returns null where the contrast is lost, or fewer than two degrees of freedom are left; limits may be endless
 * @source ours; thinning of mixed Poisson counts: Grandell J. (1997) Mixed Poisson Processes, ch. 6 (from memory); degrees of freedom:
 *   Satterthwaite F.E. (1946) Biometrics Bull. 2, 110-114 (from memory)
 * @check two blocks of methods 2.8: ratio 2.201418, 1.649056 to 2.938720 (the same equations in R)
 */
export function thinnedContrast(problem: ThinnedProblem): Contrast | null {
  const units = Math.max(0, ...problem.cells.map(({ unit }) => unit + 1))
  const look = lookOf(problem, units)
  if (look === null) return null
  const sums = [0, 0, 0, 0]
  for (const { total, effort, isAsked } of problem.cells) {
    const k = isAsked ? 2 : 0
    sums[k] = (sums[k] as number) + total
    sums[k + 1] = (sums[k + 1] as number) + effort
  }
  const [others = 0, theirEffort = 0, asked = 0, ownEffort = 0] = sums
  const start = log((asked + 0.5) / ownEffort) - log((others + 0.5) / theirEffort)
  const estimate = crossingFrom((at) => look(at).estimate, start, 0.2)
  if (!Number.isFinite(estimate)) return null
  const { se: seOfThinned, df } = look(estimate)
  const slope = (look(estimate - slopeStep).estimate - look(estimate + slopeStep).estimate) / (2 * slopeStep)
  const se = seOfThinned / Math.max(slope, leastSlope)
  const atNone = look(0)
  const t = atNone.se > 0 ? atNone.estimate / atNone.se : Math.sign(atNone.estimate) * Number.POSITIVE_INFINITY
  const limitAt = (multiplier: number): number =>
    crossingFrom((at) => excess(look(at), multiplier), estimate, Math.max(1.1 * Math.abs(multiplier) * se, 0.01))
  return {
    estimate,
    se,
    df,
    t,
    p: Number.isFinite(t) ? studentTwoSidedP(t, df) : 0,
    limits: (level): Interval => {
      const multiplier = studentMultiplier(level, df)
      return { lower: limitAt(multiplier), upper: limitAt(-multiplier) }
    },
  }
}

const excess = ({ estimate, se }: AtRatio, multiplier: number): number => estimate - multiplier * se
