import type { IntervalsFigure } from '@thrum/model'
import { roundWords } from '../print/numbers.ts'
import { type Axis, across, layAxis } from './axis.ts'
import { numberScale } from './interval-words.ts'

/** A limit this many times beyond all values and the band [1] is told by an arrow, not by a longer axis. */
const beyond = 6
/** Ratios outside are placed at the ends [1]. */
const smallest = 1e-12
const largest = 1e12

const finite = (values: readonly (number | null)[]): readonly number[] =>
  values.filter((value): value is number => value !== null && Number.isFinite(value))
const least = (values: readonly number[]): number => values.reduce((low, value) => Math.min(low, value), Number.POSITIVE_INFINITY)
const most = (values: readonly number[]): number =>
  values.reduce((high, value) => Math.max(high, value), Number.NEGATIVE_INFINITY)

type Ends = Pick<Axis, 'low' | 'high'>

function logEnds({ rows, band }: IntervalsFigure): Ends {
  const near = (values: readonly (number | null)[]): readonly number[] =>
    finite(values).flatMap((value) => (value > 0 ? [Math.min(largest, Math.max(smallest, value))] : []))
  const core = [1, ...near(band === null ? [] : [band.low, band.high]), ...near(rows.map(({ value }) => value))]
  const low = Math.max(least(core) / beyond, Math.min(least(core), least(near(rows.map((row) => row.low)))))
  const high = Math.min(most(core) * beyond, Math.max(most(core), most(near(rows.map((row) => row.high)))))
  return { low, high }
}

function plainEnds({ rows }: IntervalsFigure): Ends {
  const values = finite(rows.map(({ value }) => value))
  const limits = finite(rows.flatMap(({ low, high }) => [low, high]))
  const top = Math.max(0, most(values))
  const furthest = Math.max(top, Math.min(most(limits), top > 0 ? top * beyond : Number.POSITIVE_INFINITY))
  const low = Math.min(0, least(values), least(limits))
  return { low, high: furthest > low ? furthest : low + 1 }
}

/** The one axis of an intervals figure: from 0 for rates and shares; for ratios logarithmic about 1, the band inside. */
export function intervalsAxis(figure: IntervalsFigure, from: number, to: number, language: string): Axis {
  const { scale } = figure
  const ends = scale === 'log' ? logEnds(figure) : plainEnds(figure)
  return layAxis(
    { scale: scale === 'log' ? 'log' : 'linear', ...ends, from, to },
    { room: across, say: (value) => roundWords(value, numberScale(scale), language), within: [-14, to + 24] },
  )
}
