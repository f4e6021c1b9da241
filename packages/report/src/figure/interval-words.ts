import type { IntervalsFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { limitWords, type NumberScale, valueWords } from '../print/numbers.ts'
import type { Speaker } from '../say/say.ts'

type Row = IntervalsFigure['rows'][number]

/** How the numbers of a figure read. */
export const numberScale = (scale: IntervalsFigure['scale']): NumberScale => (scale === 'share' ? 'share' : 'plain')

const isKnown = (limit: number | null): limit is number => limit !== null && Number.isFinite(limit)

/** True if there is a line to draw: where no limit is known, nothing is said of one. */
export const hasRange = ({ low, high }: Pick<Row, 'low' | 'high'>): boolean => isKnown(low) || isKnown(high)

/** True if a row has an estimate: with neither a number nor a limit it has none, and its label says what it has. */
export const hasEstimate = (row: Pick<Row, 'value' | 'low' | 'high'>): boolean => row.value !== null || hasRange(row)

/** An interval in words; empty where there is none. */
export function rangeWords({ low, high }: Pick<Row, 'low' | 'high'>, scale: IntervalsFigure['scale'], say: Speaker): string {
  const words = limitWords(isKnown(low) ? low : null, isKnown(high) ? high : null, numberScale(scale), say.language)
  const known = { low: words.low ?? '', high: words.high ?? '' }
  if (isKnown(low) && isKnown(high)) return say(saying('report/figure/intervals/range', known))
  if (isKnown(low)) return say(saying('report/figure/intervals/at-least', known))
  return isKnown(high) ? say(saying('report/figure/intervals/at-most', known)) : ''
}

/** The estimate in words; where it has no limit, that. */
export function estimateWords(value: number | null, scale: IntervalsFigure['scale'], say: Speaker): string {
  return isKnown(value) ? valueWords(value, numberScale(scale), say.language) : say(saying('report/figure/no-limit'))
}

/** The level of an interval in words, e.g. 95 % or 98.3 %. */
export function levelWords(level: number, say: Speaker): string {
  return say(saying('report/figure/level', { level: 100 * level }))
}
