import { incompleteBeta, logBetaKernel } from '../distribution/incomplete-beta.ts'
import { incompleteGamma, logGammaKernel } from '../distribution/incomplete-gamma.ts'
import type { Law } from '../distribution/law.ts'
import { exp, log } from '../elementary.ts'

/** Of a random length: the chance that it exceeds x, and how fast that chance falls with log x. */
export interface RadiusBeyond {
  readonly beyond: number
  readonly fall: number
}

export type Radius = (x: number) => RadiusBeyond

/**
 * The length of a standard normal vector (chi); under t divided by the root of a chi-square by its df, so that its square by the
 * dimensions is an F.
 *
 * @param dimensions at least 1
 * @source Abramowitz & Stegun (1964) 26.4.19 and 26.6.2.
 * @check one dimension: the two-sided tail of the normal law, or of t
 */
export function radiusOf(dimensions: number, law: Law): Radius {
  const a = dimensions / 2
  if (law === 'normal')
    return (x) => {
      const half = (x * x) / 2
      return { beyond: incompleteGamma(a, half).upper, fall: half === 0 ? 0 : dimensions * exp(logGammaKernel(a, half)) }
    }
  const { df } = law
  const b = df / 2
  return (x) => {
    const square = x * x
    const share = square / (square + df)
    const rest = df / (square + df)
    const isEnd = share === 0 || rest === 0
    return {
      beyond: incompleteBeta(a, b, share, rest).upper,
      fall: isEnd ? 0 : (2 * exp(logBetaKernel(a, b, share, rest)) * a * b) / (a + b),
    }
  }
}

/** Width of the steps of a table, in log x: cubics between them are off by a part in 1e10 or less. */
const step = 1 / 256

/** The same from a table between two lengths, for who asks a hundred thousand times; beyond its ends it is worked out. */
export function tabulated(radius: Radius, from: number, to: number): Radius {
  const first = log(from)
  const nodes = Array.from({ length: Math.ceil((log(to) - first) / step) + 2 }, (_, k) => radius(exp(first + k * step)))
  return (x) => {
    const place = (log(x) - first) / step
    const k = Math.floor(place)
    const left = nodes[k]
    const right = nodes[k + 1]
    if (left === undefined || right === undefined) return radius(x)
    // The cubic with the values and slopes of both ends, and its own slope.
    const t = place - k
    const drop = right.beyond - left.beyond
    const curve = -left.fall * step - drop
    const other = drop + right.fall * step
    const beyond = left.beyond + t * drop + t * (1 - t) * ((1 - t) * curve + t * other)
    const slope = drop + (1 - 2 * t) * ((1 - t) * curve + t * other) + t * (1 - t) * (other - curve)
    return { beyond, fall: -slope / step }
  }
}
