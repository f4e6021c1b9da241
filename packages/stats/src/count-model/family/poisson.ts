import { type Family, meanOf } from './family.ts'
import { logFactorials } from './log-factorials.ts'

export const poisson: Family = {
  name: 'poisson',
  link: 'log',
  isDispersed: false,
  isConcave: true,
  evaluator: ({ counts }) => {
    const constant = logFactorials(counts)
    const n = counts.length
    return (eta, _, into, extent) => {
      const { logDensity, slope, weight, weightSlope } = into
      if (extent === 'step') {
        for (let i = 0; i < n; i++) {
          const mu = meanOf(eta[i] as number)
          slope[i] = (counts[i] as number) - mu
          weight[i] = mu
        }
        return
      }
      for (let i = 0; i < n; i++) {
        const y = counts[i] as number
        const mu = meanOf(eta[i] as number)
        logDensity[i] = y * (eta[i] as number) - mu - (constant[i] as number)
        slope[i] = y - mu
        weight[i] = mu
        weightSlope[i] = mu
      }
    }
  },
}
