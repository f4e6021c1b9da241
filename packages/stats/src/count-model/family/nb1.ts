import { log, log1p } from '../../elementary.ts'
import { type Family, meanOf } from './family.ts'
import { logFactorials } from './log-factorials.ts'
import { ratiosOf } from './log-ratios.ts'

/** Variance mu (1 + phi): sums over k below the count, so that phi = 0 is Poisson. */
export const nb1: Family = {
  name: 'nb1',
  link: 'log',
  isDispersed: true,
  isConcave: false,
  evaluator: ({ counts }) => {
    const constant = logFactorials(counts)
    return (eta, phi, into) => {
      const { logDensity, slope, weight, weightSlope, byDispersion, slopeByDispersion, weightByDispersion } = into
      const { log: rate, curved } = ratiosOf(phi)
      // d rate / d phi = (phi / (1 + phi) - log1p(phi)) / phi^2.
      const rateByPhi = -curved
      for (let i = 0; i < counts.length; i++) {
        const y = counts[i] as number
        const mu = meanOf(eta[i] as number)
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
