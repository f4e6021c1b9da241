import { logFactorial } from '../distribution/log-gamma.ts'
import { exp, log, log1p } from '../elementary.ts'

/** What a family says of each row at linear predictor eta, in arrays of length n that are written over. */
export interface RowDerivatives {
  /** log p(y | eta). */
  readonly logDensity: Float64Array
  /** d log p / d eta. */
  readonly slope: Float64Array
  /** Observed weight: minus the second derivative of log p in eta. */
  readonly weight: Float64Array
  /** d weight / d eta. */
  readonly weightSlope: Float64Array
  /** d log p, d slope and d weight by the dispersion; 0 for a family without one. */
  readonly byDispersion: Float64Array
  readonly slopeByDispersion: Float64Array
  readonly weightByDispersion: Float64Array
}

export function rowDerivatives(n: number): RowDerivatives {
  const column = (): Float64Array => new Float64Array(n)
  return {
    logDensity: column(),
    slope: column(),
    weight: column(),
    weightSlope: column(),
    byDispersion: column(),
    slopeByDispersion: column(),
    weightByDispersion: column(),
  }
}

/** What is counted in each row; `trials` for shares only. */
export interface Response {
  readonly counts: Float64Array
  readonly trials: Float64Array | null
}

/** Families by the names that ecology gives them. */
export type FamilyName = 'poisson' | 'nb1' | 'nb2' | 'binomial' | 'beta-binomial'

export interface Family {
  readonly name: FamilyName
  readonly link: 'log' | 'logit'
  /**
   * True where a dispersion is estimated: alpha = 1 / theta of NB2 (variance mu + alpha mu^2), phi of NB1 (variance mu (1 + phi)),
   * 1 / (a + b) of the beta-binomial, whose shares scatter as Beta(a, b).
   */
  readonly isDispersed: boolean
  /** True where log p is strictly concave in eta for every count. */
  readonly isConcave: boolean
  /** What is worked out once for a response, and then for each predictor. */
  evaluator(response: Response): RowEvaluator
}

/** Fills every array for all rows. @param dispersion >= 0 */
export type RowEvaluator = (eta: Float64Array, dispersion: number, into: RowDerivatives) => void

/** log y! of each row. */
const logFactorials = (counts: Float64Array): Float64Array => counts.map((count) => logFactorial(count))

/** Beyond this the mean of a row overflows sums of squares; exp is held there [log of a count]. */
const largestEta = 300

const mean = (eta: number): number => exp(Math.min(eta, largestEta))

const poisson: Family = {
  name: 'poisson',
  link: 'log',
  isDispersed: false,
  isConcave: true,
  evaluator: ({ counts }) => {
    const constant = logFactorials(counts)
    return (eta, _, into) => {
      const { logDensity, slope, weight, weightSlope } = into
      for (let i = 0; i < counts.length; i++) {
        const y = counts[i] as number
        const mu = mean(eta[i] as number)
        logDensity[i] = y * (eta[i] as number) - mu - (constant[i] as number)
        slope[i] = y - mu
        weight[i] = mu
        weightSlope[i] = mu
      }
    }
  },
}

/** log1p(x) / x, and 1 at 0. */
const logRatio = (x: number): number => (x < 1e-8 ? 1 - x / 2 : log1p(x) / x)

/** (log1p(x) - x / (1 + x)) / x^2: 1/2 at 0. Below a hundredth its series, sum of (-x)^j (j + 1) / (j + 2). */
function curvedRatio(x: number): number {
  if (x >= 1e-2) return (log1p(x) - x / (1 + x)) / (x * x)
  let sum = 0
  for (let j = 9; j >= 0; j--) sum = sum * -x + (j + 1) / (j + 2)
  return sum
}

const nb2: Family = {
  name: 'nb2',
  link: 'log',
  isDispersed: true,
  isConcave: true,
  evaluator: ({ counts }) => {
    const constant = logFactorials(counts)
    const most = counts.reduce((largest, count) => Math.max(largest, count), 0)
    // Sums over k < y of log(1 + k alpha) and of k / (1 + k alpha), for every y at once; made anew where alpha changes.
    const logs = new Float64Array(most + 1)
    const parts = new Float64Array(most + 1)
    let madeFor = Number.NaN
    const sumUp = (alpha: number): void => {
      for (let k = 1; k < most; k++) {
        logs[k + 1] = (logs[k] as number) + log1p(k * alpha)
        parts[k + 1] = (parts[k] as number) + k / (1 + k * alpha)
      }
      madeFor = alpha
    }
    return (eta, alpha, into) => {
      if (alpha !== madeFor) sumUp(alpha)
      const { logDensity, slope, weight, weightSlope, byDispersion, slopeByDispersion, weightByDispersion } = into
      for (let i = 0; i < counts.length; i++) {
        const y = counts[i] as number
        const mu = mean(eta[i] as number)
        const x = alpha * mu
        const one = 1 + x
        logDensity[i] = (logs[y] as number) + y * (eta[i] as number) - y * log1p(x) - mu * logRatio(x) - (constant[i] as number)
        slope[i] = (y - mu) / one
        const w = (mu * (1 + alpha * y)) / (one * one)
        weight[i] = w
        weightSlope[i] = (w * (1 - x)) / one
        byDispersion[i] = (parts[y] as number) + mu * mu * curvedRatio(x) - (y * mu) / one
        slopeByDispersion[i] = (-(y - mu) * mu) / (one * one)
        weightByDispersion[i] = (mu * y) / (one * one) - (2 * mu * mu * (1 + alpha * y)) / (one * one * one)
      }
    }
  },
}

const nb1: Family = {
  name: 'nb1',
  link: 'log',
  isDispersed: true,
  isConcave: false,
  evaluator: ({ counts }) => {
    const constant = logFactorials(counts)
    return (eta, phi, into) => {
      const { logDensity, slope, weight, weightSlope, byDispersion, slopeByDispersion, weightByDispersion } = into
      const rate = logRatio(phi)
      // d rate / d phi = (phi / (1 + phi) - log1p(phi)) / phi^2.
      const rateByPhi = -curvedRatio(phi)
      for (let i = 0; i < counts.length; i++) {
        const y = counts[i] as number
        const mu = mean(eta[i] as number)
        let logs = 0
        let inverses = 0
        let weights = 0
        let weightSlopes = 0
        let byPhi = 0
        let slopeByPhi = 0
        let weightByPhi = 0
        for (let k = 0; k < y; k++) {
          const at = k * phi
          const inverse = 1 / (mu + at)
          logs += log(mu + at)
          inverses += inverse
          weights += at * inverse * inverse
          weightSlopes += at * (at - mu) * inverse * inverse * inverse
          byPhi += k * inverse
          slopeByPhi += k * inverse * inverse
          weightByPhi += k * (mu - at) * inverse * inverse * inverse
        }
        logDensity[i] = logs - y * log1p(phi) - mu * rate - (constant[i] as number)
        slope[i] = mu * (inverses - rate)
        weight[i] = mu * (rate - weights)
        weightSlope[i] = mu * (rate - weightSlopes)
        byDispersion[i] = byPhi - y / (1 + phi) - mu * rateByPhi
        slopeByDispersion[i] = mu * (-slopeByPhi - rateByPhi)
        weightByDispersion[i] = mu * (rateByPhi - weightByPhi)
      }
    }
  },
}

const binomial: Family = {
  name: 'binomial',
  link: 'logit',
  isDispersed: false,
  isConcave: true,
  evaluator: (response) => {
    const { counts, trials } = response
    const constant = logWays(response)
    return (eta, _, into) => {
      const { logDensity, slope, weight, weightSlope } = into
      for (let i = 0; i < counts.length; i++) {
        const y = counts[i] as number
        const n = trials?.[i] ?? 1
        const at = eta[i] as number
        const small = exp(-Math.abs(at))
        const share = (at >= 0 ? 1 : small) / (1 + small)
        const logTerm = Math.max(at, 0) + log1p(small)
        logDensity[i] = (constant[i] as number) + y * at - n * logTerm
        slope[i] = y - n * share
        const w = (n * small) / ((1 + small) * (1 + small))
        weight[i] = w
        weightSlope[i] = w * (1 - 2 * share)
      }
    }
  },
}

/** log of the number of ways to have so many of all, for each row. */
function logWays({ counts, trials }: Response): Float64Array {
  return counts.map((count, i) => {
    const all = trials?.[i] ?? 1
    return logFactorial(all) - logFactorial(count) - logFactorial(all - count)
  })
}

/** Sums over k < m of what the derivatives of log(x + k alpha) are made of. */
interface Rising {
  logs: number
  one: number
  two: number
  three: number
  by: number
  byTwo: number
  byThree: number
}

function rising(x: number, alpha: number, m: number, into: Rising): void {
  into.logs = into.one = into.two = into.three = into.by = into.byTwo = into.byThree = 0
  for (let k = 0; k < m; k++) {
    const at = x + k * alpha
    const inverse = 1 / at
    const square = inverse * inverse
    into.logs += log(at)
    into.one += inverse
    into.two += square
    into.three += square * inverse
    into.by += k * inverse
    into.byTwo += k * square
    into.byThree += k * square * inverse
  }
}

const nothing = (): Rising => ({ logs: 0, one: 0, two: 0, three: 0, by: 0, byTwo: 0, byThree: 0 })

/** log C(n, y) + sum_{k<y} log(p + k alpha) + sum_{k<n-y} log(1 - p + k alpha) - sum_{k<n} log(1 + k alpha). */
const betaBinomial: Family = {
  name: 'beta-binomial',
  link: 'logit',
  isDispersed: true,
  isConcave: false,
  evaluator: (response) => {
    const { counts, trials } = response
    const constant = logWays(response)
    return (eta, alpha, into) => {
      const { logDensity, slope, weight, weightSlope, byDispersion, slopeByDispersion, weightByDispersion } = into
      const seen = nothing()
      const missed = nothing()
      const all = nothing()
      for (let i = 0; i < counts.length; i++) {
        const y = counts[i] as number
        const n = trials?.[i] ?? 1
        const at = Math.min(Math.max(eta[i] as number, -largestEta), largestEta)
        const small = exp(-Math.abs(at))
        const p = (at >= 0 ? 1 : small) / (1 + small)
        const q = (at >= 0 ? small : 1) / (1 + small)
        rising(p, alpha, y, seen)
        rising(q, alpha, n - y, missed)
        rising(1, alpha, n, all)
        const turn = q - p
        const first = p * q
        const second = first * turn
        const third = first * (1 - 6 * first)
        const l1 = seen.one - missed.one
        const l2 = -seen.two - missed.two
        const l3 = 2 * (seen.three - missed.three)
        const l1By = missed.byTwo - seen.byTwo
        const l2By = 2 * (seen.byThree + missed.byThree)
        logDensity[i] = (constant[i] as number) + seen.logs + missed.logs - all.logs
        slope[i] = l1 * first
        weight[i] = -(l2 * first * first + l1 * second)
        weightSlope[i] = -(l3 * first * first * first + 3 * l2 * first * second + l1 * third)
        byDispersion[i] = seen.by + missed.by - all.by
        slopeByDispersion[i] = l1By * first
        weightByDispersion[i] = -(l2By * first * first + l1By * second)
      }
    }
  },
}

export const families: { readonly [name in FamilyName]: Family } = {
  poisson,
  nb1,
  nb2,
  binomial,
  'beta-binomial': betaBinomial,
}
