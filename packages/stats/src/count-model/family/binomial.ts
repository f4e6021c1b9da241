import { exp, log1p } from '../../elementary.ts'
import type { Family } from './family.ts'
import { logWays } from './log-factorials.ts'

export const binomial: Family = {
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
