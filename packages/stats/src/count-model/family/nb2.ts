import { log, log1p } from '../../elementary.ts'
import { type Family, meanOf } from './family.ts'
import { logFactorials } from './log-factorials.ts'
import { curvedRatio, logRatio } from './log-ratios.ts'

/** Variance mu + alpha mu^2, written so that alpha = 0 is Poisson without a difference of large logarithms. */
export const nb2: Family = {
  name: 'nb2',
  link: 'log',
  isDispersed: true,
  isConcave: true,
  evaluator: ({ counts }) => {
    const constant = logFactorials(counts)
    const n = counts.length
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
    return (eta, alpha, into, extent) => {
      const { logDensity, slope, weight, weightSlope, byDispersion, slopeByDispersion, weightByDispersion } = into
      if (extent === 'step') {
        for (let i = 0; i < n; i++) {
          const y = counts[i] as number
          const mu = meanOf(eta[i] as number)
          const part = 1 / (1 + alpha * mu)
          slope[i] = (y - mu) * part
          weight[i] = mu * (1 + alpha * y) * part * part
        }
        return
      }
      if (alpha !== madeFor) sumUp(alpha)
      for (let i = 0; i < n; i++) {
        const y = counts[i] as number
        const at = eta[i] as number
        const mu = meanOf(at)
        const x = alpha * mu
        const s = 1 + x
        const part = 1 / s
        // log1p(x), with the division that is had anyway.
        const logged = log(s) + (x - (s - 1)) * part
        const left = (y - mu) * part
        const mean = mu * part
        const w = mean * (1 + alpha * y) * part
        logDensity[i] = (logs[y] as number) + y * (at - logged) - mu * logRatio(x, logged) - (constant[i] as number)
        slope[i] = left
        weight[i] = w
        weightSlope[i] = w * (1 - x) * part
        byDispersion[i] = (parts[y] as number) + mu * mu * curvedRatio(x, logged) - y * mean
        slopeByDispersion[i] = -left * mean
        weightByDispersion[i] = y * mean * part - 2 * mean * w
      }
    }
  },
}
