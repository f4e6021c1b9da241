import { InputError, requireCount } from '@thrum/model/ground'
import { exp, log } from '../elementary.ts'

/** Fisher's noncentral hypergeometric law of the first cell of a 2 x 2 table with fixed margins. */
export interface NoncentralHypergeometric {
  /** Smallest and largest possible first cell. */
  readonly least: number
  readonly most: number
  /** Probabilities of least, least + 1, ..., most at the log odds ratio. */
  probabilities(logOddsRatio: number): Float64Array
}

/**
 * The law of the first cell a of a table (a, b; c, d) given its margins.
 *
 * @param firstRow a + b
 * @param secondRow c + d
 * @param firstColumn a + c, at most firstRow + secondRow
 * @throws InputError ground/input/out-of-range
 * @source Fisher R.A. (1935) J. R. Stat. Soc. 98, 39-82; McCullagh & Nelder (1989) Generalized Linear Models, 7.3.2.
 * @check at odds ratio 1 it is the central hypergeometric law
 */
export function noncentralHypergeometric(firstRow: number, secondRow: number, firstColumn: number): NoncentralHypergeometric {
  requireCount('firstRow', firstRow)
  requireCount('secondRow', secondRow)
  requireCount('firstColumn', firstColumn, { max: firstRow + secondRow })
  const least = Math.max(0, firstColumn - secondRow)
  const most = Math.min(firstRow, firstColumn)
  const size = most - least + 1

  // Log weights by their ratios, started at 0: the common factor drops out when they are scaled to add to 1.
  const logWeight = new Float64Array(size)
  for (let k = 1; k < size; k++) {
    const a = least + k
    logWeight[k] =
      (logWeight[k - 1] ?? 0) + log((firstRow - a + 1) / a) + log((firstColumn - a + 1) / (secondRow - firstColumn + a))
  }

  const probabilities = (logOddsRatio: number): Float64Array => {
    if (Number.isNaN(logOddsRatio)) throw new InputError('ground/input/out-of-range', 'logOddsRatio is NaN; expected a number')
    const out = new Float64Array(size)
    let greatest = Number.NEGATIVE_INFINITY
    for (let k = 0; k < size; k++) greatest = Math.max(greatest, (logWeight[k] ?? 0) + k * logOddsRatio)
    let total = 0
    for (let k = 0; k < size; k++) {
      const weight = exp((logWeight[k] ?? 0) + k * logOddsRatio - greatest)
      out[k] = weight
      total += weight
    }
    for (let k = 0; k < size; k++) out[k] = (out[k] ?? 0) / total
    return out
  }
  return { least, most, probabilities }
}
