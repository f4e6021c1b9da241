import { InputError } from '@thrum/model/ground'

/**
 * Two-digit growth stages of the BBCH scale; 6 as the first digit is flowering. Each crop words its own stages, so a code is
 * kept with the name of its scale and is never turned into a percentage.
 *
 * @source Meier U. (ed.) (2018) Growth stages of mono- and dicotyledonous plants: BBCH Monograph. Julius Kühn-Institut.
 *   Limits of the window for counts: common practice, no source.
 */
export type BloomMark = 'in' | 'marginal' | 'outside'

/** First and last code at which counts speak for the bloom. Common practice, no source. */
export const bloomWindow = { from: 61, to: 67 } as const

/** First and last code of principal stage 6, first open flower to fruit set; at its edges a count is kept with a warning. */
const flowering = { from: 60, to: 69 } as const

/** Fields whose codes lie further apart than this are not compared without stage in the analysis. Common practice, no source. */
export const stageGapAllowed = 4

/** True for codes of the scale, 0 to 99, and for means of such. */
export function isOnScale(code: number): boolean {
  return code >= 0 && code <= 99
}

/**
 * Whether a count at this stage speaks for the bloom.
 *
 * @param code BBCH code from 0 to 99, or a mean of such
 * @returns `in` for 61 to 67, `marginal` for the rest of 60 to 69 (warn), `outside` for a crop that is not in flower
 * @throws InputError ground/input/out-of-range for a code that is not on the scale
 */
export function markBloomStage(code: number): BloomMark {
  if (!isOnScale(code)) throw new InputError('ground/input/out-of-range', `code is ${code}; expected 0 to 99`)
  if (code >= bloomWindow.from && code <= bloomWindow.to) return 'in'
  return code >= flowering.from && code <= flowering.to ? 'marginal' : 'outside'
}

/** True if two stages (or two mean stages) are too far apart to compare without stage in the analysis. */
export function areStagesFarApart(one: number, other: number): boolean {
  return Math.abs(one - other) > stageGapAllowed
}
