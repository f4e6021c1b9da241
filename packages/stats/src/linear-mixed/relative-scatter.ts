import { exp } from '../elementary.ts'
import type { Term } from './random-terms.ts'

/**
 * The search's parameters and what they mean: entries of the terms' blocks, lower triangles, as the hyperbolic sine of a free number.
 *
 * Signed, so that a scatter of zero is an inner point; the sine leaves small ones as they are and keeps great ones near.
 */
export interface RelativeScatter {
  readonly parameters: number
  /** Where each term's parameters begin; its own are the intercept's, then those of the slope. */
  readonly starts: readonly number[]
  blocksAt(at: Float64Array): readonly Float64Array[]
  /** Slopes along the parameters from those along the entries of the blocks. */
  fillGradient(at: Float64Array, slopes: readonly Float64Array[], gradient: Float64Array): void
}

/** Places within a block that are searched. */
const placesOf = ({ width, isCorrelated }: Term): readonly number[] => {
  if (width === 1) return [0]
  return isCorrelated ? [0, 2, 3] : [0, 3]
}

const hyperbolicSine = (x: number): number => (exp(x) - exp(-x)) / 2
const hyperbolicCosine = (x: number): number => (exp(x) + exp(-x)) / 2

export function relativeScatterOf(terms: readonly Term[]): RelativeScatter {
  const places = terms.map(placesOf)
  const starts: number[] = []
  let parameters = 0
  for (const own of places) {
    starts.push(parameters)
    parameters += own.length
  }
  return {
    parameters,
    starts,
    blocksAt: (at) =>
      terms.map(({ width }, k) => {
        const block = new Float64Array(width * width)
        places[k]?.forEach((place, a) => {
          block[place] = hyperbolicSine(at[(starts[k] as number) + a] as number)
        })
        return block
      }),
    fillGradient: (at, slopes, gradient) => {
      terms.forEach((_, k) => {
        places[k]?.forEach((place, a) => {
          const here = (starts[k] as number) + a
          gradient[here] = (slopes[k]?.[place] as number) * hyperbolicCosine(at[here] as number)
        })
      })
    },
  }
}

/** Where the search begins: all relative scatter at `sine`, no correlation. */
export function scatterStart(terms: readonly Term[], sine: (term: Term, isSlope: boolean) => number): Float64Array {
  return Float64Array.from(
    terms.flatMap((term) => placesOf(term).map((place) => (place === 2 ? 0 : Math.asinh(sine(term, place === 3))))),
  )
}
