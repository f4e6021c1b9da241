import { exp, log, log1p } from '../../elementary.ts'
import type { Response, RowDerivatives } from './family.ts'

/** Derivatives of each row by the linear predictor of the chance of a zero beside the counts. */
export interface ZeroDerivatives {
  readonly byZeros: Float64Array
  readonly slopeByZeros: Float64Array
  readonly weightByZeros: Float64Array
}

export function zeroDerivatives(n: number): ZeroDerivatives {
  return { byZeros: new Float64Array(n), slopeByZeros: new Float64Array(n), weightByZeros: new Float64Array(n) }
}

/**
 * Turns what a family says of each row into what the same family says beside a chance of a zero of another origin:
 * P(0) = pi + (1 - pi) f(0), P(y) = (1 - pi) f(y), with logit pi = zeta.
 *
 * @source Lambert D. (1992) Technometrics 34, 1-14. With r the chance that a zero is of the counts: d log P / d eta = r d log f / d eta,
 *   dr / d eta = r (1 - r) d log f / d eta, d log P / d zeta = (1 - r) - pi, dr / d zeta = -r (1 - r)
 */
export function inflateZeros({ counts }: Response, zeta: Float64Array, rows: RowDerivatives, zeros: ZeroDerivatives): void {
  const { logDensity, slope, weight, weightSlope, byDispersion, slopeByDispersion, weightByDispersion } = rows
  for (let i = 0; i < counts.length; i++) {
    const z = zeta[i] as number
    const small = exp(-Math.abs(z))
    const pi = (z >= 0 ? 1 : small) / (1 + small)
    // log pi and log(1 - pi), each without a difference.
    const logBoth = log1p(small)
    const logPi = Math.min(z, 0) - logBoth
    const logRest = Math.min(-z, 0) - logBoth
    if ((counts[i] as number) > 0) {
      logDensity[i] = (logDensity[i] as number) + logRest
      zeros.byZeros[i] = -pi
      zeros.slopeByZeros[i] = 0
      zeros.weightByZeros[i] = 0
      continue
    }
    const ofCounts = logRest + (logDensity[i] as number)
    const most = Math.max(logPi, ofCounts)
    const total = most + log(exp(logPi - most) + exp(ofCounts - most))
    const r = exp(ofCounts - total)
    const spread = r * (1 - r)
    const turn = 1 - 2 * r
    const d = slope[i] as number
    const w = weight[i] as number
    const byA = byDispersion[i] as number
    const dByA = slopeByDispersion[i] as number
    logDensity[i] = total
    slope[i] = r * d
    weight[i] = r * w - spread * d * d
    weightSlope[i] = r * (weightSlope[i] as number) + 3 * spread * d * w - spread * turn * d * d * d
    byDispersion[i] = r * byA
    slopeByDispersion[i] = spread * byA * d + r * dByA
    weightByDispersion[i] =
      spread * byA * w + r * (weightByDispersion[i] as number) - spread * (turn * byA * d * d + 2 * d * dByA)
    zeros.byZeros[i] = 1 - r - pi
    zeros.slopeByZeros[i] = -spread * d
    zeros.weightByZeros[i] = -spread * (w - turn * d * d)
  }
}
