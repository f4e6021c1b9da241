import { threeDigits } from '../print/numbers.ts'
import type { Ink } from './ink.ts'
import { letters, sizes, stroke } from './letters.ts'
import { textWidth } from './measure.ts'
import { element, type SvgNode } from './svg.ts'
import { linearTicks, logTicks, rootTicks } from './ticks.ts'

export type Scale = 'linear' | 'log' | 'root'

/** Where values lie on a drawing, and the ticks that fit beside each other. */
export interface Axis {
  readonly scale: Scale
  readonly low: number
  readonly high: number
  readonly from: number
  readonly to: number
  /** Place of a value [px]; values beyond the ends are placed at the ends. */
  at(value: number): number
  readonly ticks: readonly { readonly value: number; readonly label: string; readonly at: number }[]
}

/** Room of one label along an axis [px]: its width below an axis, its height beside one. */
type Room = (label: string) => number
export const across: Room = (label) => textWidth(label, sizes.small) + 18
export const upright: Room = () => sizes.small * 1.9

const stretches: { readonly [scale in Scale]: (value: number) => number } = {
  linear: (value) => value,
  log: Math.log,
  root: Math.sqrt,
}

/** The densest ticks whose labels stand clear of each other and within bounds; where only one does, that; else none. */
function clearTicks(
  lists: readonly (readonly number[])[],
  place: (value: number) => number,
  { say, room, within }: Required<Pick<Marking, 'say' | 'room'>> & { readonly within: Marking['within'] | undefined },
): Axis['ticks'] {
  const [least, most] = within ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  let single: Axis['ticks'] = []
  for (const list of lists) {
    const ticks = list
      .map((value) => ({ value, label: say(value), at: place(value) }))
      .filter(({ at, label }) => at - room(label) / 2 >= least && at + room(label) / 2 <= most)
    const isClear = ticks.every(({ label, at }, k) => {
      const before = ticks[k - 1]
      return before === undefined || Math.abs(at - before.at) >= (room(label) + room(before.label)) / 2
    })
    const areTold = new Set(ticks.map(({ label }) => label)).size === ticks.length
    if (isClear && areTold && ticks.length > 1) return ticks
    if (single.length === 0 && ticks.length === 1) single = ticks
  }
  return single
}

interface Marking {
  readonly room: Room
  readonly say?: (value: number) => string
  readonly lists?: readonly (readonly number[])[]
  readonly within?: readonly [number, number]
}

function listsOf({ scale, low, high }: Pick<Axis, 'scale' | 'low' | 'high'>): readonly (readonly number[])[] {
  if (scale === 'log') return logTicks(low, high)
  return scale === 'root' ? rootTicks(high) : linearTicks(low, high)
}

/**
 * An axis from one place to another [px].
 *
 * @param low, high the ends [unit of the values], low < high; above 0 on a log axis, from 0 on a root axis
 * @param say what a tick reads; without it three digits
 * @param lists ticks to choose from, the densest first; without it those of the scale
 * @param within where labels may stand [px]; without it anywhere
 */
export function layAxis(
  { scale, low, high, from, to }: Pick<Axis, 'scale' | 'low' | 'high' | 'from' | 'to'>,
  { room, within, say = threeDigits, lists = listsOf({ scale, low, high }) }: Marking,
): Axis {
  const stretch = stretches[scale]
  const start = stretch(low)
  const end = stretch(high)
  const at = (value: number): number => {
    const part = (stretch(Math.min(high, Math.max(low, value))) - start) / (end - start)
    return from + part * (to - from)
  }
  return { scale, low, high, from, to, at, ticks: clearTicks(lists, at, { say, room, within }) }
}

/** An axis below a drawing: its line, ticks and labels. It takes `belowHeight`. */
export function drawBelow(axis: Axis, y: number, ink: Ink): readonly SvgNode[] {
  const line = stroke(ink, 'quiet')
  return [
    element('path', { d: `M${Math.round(axis.from)} ${y}H${Math.round(axis.to)}`, fill: 'none', ...line }),
    ...axis.ticks.flatMap(({ at, label }) => [
      element('path', { d: `M${Math.round(at * 10) / 10} ${y}v4`, fill: 'none', ...line }),
      letters(at, y + 16, label, { size: sizes.small, fill: ink.quiet, anchor: 'middle' }),
    ]),
  ]
}
export const belowHeight = 20

/** An axis left of a drawing: labels and hair lines across it. */
export function drawBeside(axis: Axis, x: number, right: number, ink: Ink): readonly SvgNode[] {
  return axis.ticks.flatMap(({ at, label, value }) => [
    element('path', {
      d: `M${x} ${Math.round(at * 10) / 10}H${Math.round(right)}`,
      fill: 'none',
      ...stroke(ink, value === 0 ? 'quiet' : 'hair', value === 0 ? 1 : 0.75),
    }),
    letters(x - 6, at + 4, label, { size: sizes.small, fill: ink.quiet, anchor: 'end' }),
  ])
}

/** From which fold on a linear axis hides the small values [1]. */
const foldOfLinear = 30

/** How raw rates are laid out: from 0 where they differ up to 30-fold; else by logarithm, or by root where some are 0. */
export function scaleOfRates(rates: readonly number[]): Pick<Axis, 'scale' | 'low' | 'high'> {
  const known = rates.filter((rate) => Number.isFinite(rate))
  const above = known.filter((rate) => rate > 0)
  const highest = above.reduce((most, rate) => Math.max(most, rate), 0)
  const lowest = above.reduce((least, rate) => Math.min(least, rate), highest)
  if (highest === 0) return { scale: 'linear', low: 0, high: 1 }
  if (highest / lowest <= foldOfLinear) return { scale: 'linear', low: 0, high: highest * 1.06 }
  if (above.length < known.length) return { scale: 'root', low: 0, high: highest * 1.08 }
  const fold = (highest / lowest) ** 0.04
  return { scale: 'log', low: lowest / fold, high: highest * fold }
}
