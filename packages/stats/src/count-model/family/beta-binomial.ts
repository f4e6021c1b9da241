import { exp, log } from '../../elementary.ts'
import { type Family, largestEta } from './family.ts'
import { logWays } from './log-factorials.ts'

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
export const betaBinomial: Family = {
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
