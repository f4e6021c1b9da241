import type { IntervalsFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { threeDigits } from '../print/numbers.ts'
import type { Speaker } from '../say/say.ts'

type Row = IntervalsFigure['rows'][number]

/** A share in per cent: whole, below a tenth with one decimal, below a thousandth with the first digit that is not 0. */
function percent(share: number): string {
  const per = 100 * share
  const digits = Math.abs(per) >= 9.95 ? per.toFixed(0) : Math.abs(per) >= 0.05 ? per.toFixed(1) : per.toPrecision(1)
  return `${Number.parseFloat(digits)}\u00a0%`
}

/** A value as it stands beside its mark; the same digits as in the answer's text. */
export function valueWords(value: number, scale: IntervalsFigure['scale']): string {
  return scale === 'share' ? percent(value) : threeDigits(value)
}

const isKnown = (limit: number | null): limit is number => limit !== null && Number.isFinite(limit)

/** An interval in words; empty where there is none. */
export function rangeWords({ low, high }: Pick<Row, 'low' | 'high'>, scale: IntervalsFigure['scale'], say: Speaker): string {
  const known = { low: isKnown(low) ? valueWords(low, scale) : '', high: isKnown(high) ? valueWords(high, scale) : '' }
  if (isKnown(low) && isKnown(high)) return say(saying('report/figure/intervals/range', known))
  if (isKnown(low)) return say(saying('report/figure/intervals/at-least', known))
  return isKnown(high) ? say(saying('report/figure/intervals/at-most', known)) : ''
}

/** The estimate in words; where it has no limit, that. */
export function estimateWords(value: number | null, scale: IntervalsFigure['scale'], say: Speaker): string {
  return isKnown(value) ? valueWords(value, scale) : say(saying('report/figure/no-limit'))
}

/** The level of an interval in words, e.g. 95 % or 98.3 %. */
export function levelWords(level: number, say: Speaker): string {
  return say(saying('report/figure/level', { level: 100 * level }))
}
