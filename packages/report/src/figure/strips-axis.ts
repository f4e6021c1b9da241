import type { StripsFigure } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { threeDigits } from '../print/numbers.ts'
import { dayLocale } from '../say/languages.ts'
import { type Axis, across, layAxis } from './axis.ts'
import { dateTicks, linearTicks } from './ticks.ts'

type AxisName = StripsFigure['axis']

/** How an axis and its values read. */
export interface StripWords {
  /** Name and unit. */
  readonly axis: Saying
  /** A value at a tick, and where it stands without its axis. */
  tick(value: number): string
  whole(value: number): string
  /** Least step of ticks [unit of the values]. */
  readonly finest: number
  /** True where values read as they are written, not as numbers. */
  readonly isTold: boolean
  ticksOf(low: number, high: number): readonly (readonly number[])[]
}

type Reads = (values: readonly number[], language: string) => StripWords

const axisSaying = (name: AxisName, year = 'none'): Saying => saying(`report/figure/strips/axis/${name}`, { year })

/** Numbers as they are, with ticks no finer than a step. */
const numbers =
  (name: AxisName, finest: number): Reads =>
  (_, language) => ({
    axis: axisSaying(name),
    tick: (value) => threeDigits(value, language),
    whole: (value) => threeDigits(value, language),
    finest,
    isTold: false,
    ticksOf: (low, high) => linearTicks(low, high, finest),
  })

function clock(value: number): string {
  const minutes = Math.round(value * 60)
  const hour = Math.floor(minutes / 60)
  return `${hour}:${String(minutes - 60 * hour).padStart(2, '0')}`
}

/** Beyond three thousand years from 1970 days have no date [d]. */
const furthest = 1e6
const day = 86_400_000

/** The year stands once, with the name of the axis, where all days are of one; else with each. */
const dates: Reads = (values, language) => {
  if (values.some((value) => Math.abs(value) > furthest)) return numbers('date', 1)(values, language)
  const years = [...new Set(values.map((value) => new Date(value * day).getUTCFullYear()))]
  const written = (look: Intl.DateTimeFormatOptions): ((value: number) => string) => {
    const format = new Intl.DateTimeFormat(dayLocale(language), {
      timeZone: 'UTC',
      day: 'numeric',
      month: 'short',
      ...look,
    })
    return (value) => format.format(value * day)
  }
  const whole = written({ year: 'numeric' })
  const isOneYear = years.length === 1
  return {
    axis: axisSaying('date', isOneYear ? String(years[0]) : 'none'),
    tick: isOneYear ? written({}) : whole,
    whole,
    finest: 1,
    isTold: true,
    ticksOf: dateTicks,
  }
}

/** Every axis that strips may lie on: how it is called, in which unit, and how its values read. */
const reads: { readonly [name in AxisName]: Reads } = {
  date: dates,
  'season-day': numbers('season-day', 1),
  stage: numbers('stage', 1),
  hour: (values, language) => ({
    ...numbers('hour', 0.5)(values, language),
    tick: clock,
    whole: clock,
    isTold: true,
  }),
  temperature: numbers('temperature', 0),
}

const valuesOf = (strips: StripsFigure['strips']): readonly number[] => strips.flatMap(({ values }) => values)

export const stripWords = ({ axis, strips }: StripsFigure, language: string): StripWords =>
  reads[axis](valuesOf(strips), language)

export function stripsAxis(strips: StripsFigure['strips'], words: StripWords, from: number, to: number): Axis {
  const values = valuesOf(strips)
  const low = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
  const high = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
  const room = Math.max((high - low) * 0.05, words.finest * 0.75, 0.5)
  const ends = { low: low - room, high: high + room }
  const lists = words.ticksOf(ends.low, ends.high)
  return layAxis(
    { scale: 'linear', ...ends, from, to },
    { room: across, say: words.tick, lists, within: [0, to + 26], ends: 'values' },
  )
}
