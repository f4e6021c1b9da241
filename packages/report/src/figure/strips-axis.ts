import type { StripsFigure } from '@thrum/model'
import { threeDigits } from '../print/numbers.ts'
import { type Axis, across, layAxis } from './axis.ts'
import { dateTicks, linearTicks } from './ticks.ts'

/** Days of pooled seasons count from the start of each; calendar days count from 1970 and are larger than any of these. */
const longestSeason = 400
/** Beyond three thousand years from 1970 days have no date [d]. */
const furthest = 1e6
const day = 86_400_000

/** How the values of an axis read. */
export interface StripWords {
  /** Id of the axis in words. */
  readonly axis: 'date' | 'season-day' | 'stage' | 'hour' | 'temperature'
  say(value: number): string
  readonly finest: number
}

export function stripWords({ axis, strips }: StripsFigure, language: string): StripWords {
  if (axis === 'hour') {
    const clock = (value: number): string => {
      const minutes = Math.round(value * 60)
      const hour = Math.floor(minutes / 60)
      return `${hour}:${String(minutes - 60 * hour).padStart(2, '0')}`
    }
    return { axis, say: clock, finest: 0.5 }
  }
  if (axis !== 'date') return { axis, say: (value) => threeDigits(value), finest: axis === 'stage' ? 1 : 0 }
  const values = strips.flatMap((strip) => strip.values)
  if (values.some((value) => Math.abs(value) > furthest)) return { axis, say: threeDigits, finest: 1 }
  if (values.every((value) => Math.abs(value) < longestSeason)) return { axis: 'season-day', say: threeDigits, finest: 1 }
  const years = new Set(values.map((value) => new Date(value * day).getUTCFullYear()))
  const format = new Intl.DateTimeFormat(language === 'en' ? 'en-GB' : language, {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    ...(years.size > 1 ? { year: 'numeric' } : {}),
  })
  return { axis, say: (value) => format.format(value * day), finest: 1 }
}

export function stripsAxis(strips: StripsFigure['strips'], words: StripWords, from: number, to: number): Axis {
  const values = strips.flatMap((strip) => strip.values)
  const low = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
  const high = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
  const room = Math.max((high - low) * 0.05, words.finest * 0.75, 0.5)
  const ends = { low: low - room, high: high + room }
  const isDate = words.axis === 'date' && high <= furthest && low >= -furthest
  const lists = isDate ? dateTicks(ends.low, ends.high) : linearTicks(ends.low, ends.high, words.finest)
  return layAxis(
    { scale: 'linear', ...ends, from, to },
    { room: across, say: words.say, lists, within: [0, to + 26], ends: 'values' },
  )
}
