import type { Term } from './random-terms.ts'

/** Effects in units of the response (one of them is `ofResponse`) and of the covariate as they came, where that is 0; in place. */
export function toOwnUnits({ width, centre, unit }: Term, effects: Float64Array, ofResponse: number): void {
  for (let at = 0; at < effects.length; at++) effects[at] = ofResponse * (effects[at] as number)
  if (width === 1) return
  for (let at = 0; at < effects.length; at += 2) {
    const slope = (effects[at + 1] as number) / unit
    effects[at] = (effects[at] as number) - centre * slope
    effects[at + 1] = slope
  }
}

/** How the effects of a term scatter, where its covariate is 0, in units of the residual. */
export interface TermScatter {
  readonly intercept: number
  readonly slope: number
  readonly correlation: number
}

/** From a term's block, for the covariate as it came. A correlation that has no meaning is 0. */
export function scatterOf({ width, centre, unit }: Term, block: Float64Array): TermScatter {
  if (width === 1) return { intercept: Math.abs(block[0] as number), slope: 0, correlation: 0 }
  const [a = 0, b = 0, c = 0, d = 0] = block
  const first = [a - (centre * c) / unit, b - (centre * d) / unit] as const
  const second = [c / unit, d / unit] as const
  const intercept = Math.hypot(...first)
  const slope = Math.hypot(...second)
  const both = intercept * slope
  const correlation = both > 0 ? (first[0] * second[0] + first[1] * second[1]) / both : 0
  return { intercept, slope, correlation: Math.min(1, Math.max(-1, correlation)) }
}

/** The block of a scatter: `scatterOf` the other way. */
export function blockOf({ width, centre, unit }: Term, { intercept, slope, correlation }: TermScatter): Float64Array {
  if (width === 1) return Float64Array.of(intercept)
  const along = correlation * slope
  const across = Math.sqrt(1 - correlation * correlation) * slope
  return Float64Array.of(intercept + centre * along, centre * across, unit * along, unit * across)
}
