import type { Ink } from './ink.ts'
import { letters, sizes, stroke } from './letters.ts'
import { textWidth } from './measure.ts'
import { element, numberText, type SvgNode } from './svg.ts'
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

/** More ticks than these are noise, however much room there is. */
const ticksAtMost = 10
/** Room beyond the last ticks of a log axis, where no 0 stands [px]. */
const logRoom = 8

type Ends = Pick<Axis, 'scale' | 'low' | 'high' | 'from' | 'to'>

interface Marking {
  readonly room: Room
  readonly say: (value: number) => string
  readonly lists?: readonly (readonly number[])[]
  /** No tick is finer than this; for values that are whole numbers 1. */
  readonly finest?: number
  readonly within?: readonly [number, number]
  /** `ticks`: the axis goes on to the next tick beyond each end, so that nothing lies beyond its last. */
  readonly ends?: 'ticks' | 'values'
}

function listsOf({ scale, low, high }: Ends, finest: number): readonly (readonly number[])[] {
  if (scale === 'log') return logTicks(low, high)
  return scale === 'root' ? rootTicks(high) : linearTicks(low, high, finest)
}

/** Places of values between the ends of an axis; values beyond are placed at the ends. */
function placing({ scale, low, high, from, to }: Ends): Axis['at'] {
  const stretch = stretches[scale]
  const room = scale === 'log' ? logRoom * Math.sign(to - from) : 0
  const start = stretch(low)
  const span = stretch(high) - start
  return (value) => {
    const part = (stretch(Math.min(high, Math.max(low, value))) - start) / span
    return from + room + part * (to - from - 2 * room)
  }
}

/** Ticks of a list on an axis whose labels stand within bounds. */
function ticksOn(ends: Ends, list: readonly number[], { room, within, say }: Marking): Axis['ticks'] {
  const at = placing(ends)
  const [least, most] = within ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  return list
    .filter((value) => value >= ends.low && value <= ends.high)
    .map((value) => ({ value, label: say(value), at: at(value) }))
    .filter((tick) => tick.at - room(tick.label) / 2 >= least && tick.at + room(tick.label) / 2 <= most)
}

/** True if labels stand clear of each other and no two read the same. */
function areClear(ticks: Axis['ticks'], room: Room): boolean {
  const areTold = new Set(ticks.map(({ label }) => label)).size === ticks.length
  return (
    areTold &&
    ticks.length <= ticksAtMost &&
    ticks.every(({ label, at }, k) => {
      const before = ticks[k - 1]
      return before === undefined || Math.abs(at - before.at) >= (room(label) + room(before.label)) / 2
    })
  )
}

/**
 * An axis from one place to another [px], with the densest ticks whose labels stand clear; where only one does, that; else
 * none.
 *
 * @param given the ends [unit of the values], low < high; above 0 on a log axis, from 0 on a root axis
 * @param say what a tick reads
 * @param lists ticks to choose from, the densest first; without it those of the scale
 * @param within where labels may stand [px]; without it anywhere
 */
export function layAxis(given: Ends, marking: Marking): Axis {
  const { finest = 0, lists = listsOf(given, finest), ends = 'ticks', room } = marking
  if (ends === 'ticks') {
    for (const list of lists) {
      const low = list.findLast((value) => value <= given.low)
      const high = list.find((value) => value >= given.high)
      if (low === undefined || high === undefined || !(low < high)) continue
      const own = { ...given, low, high }
      const ticks = ticksOn(own, list, marking)
      if (ticks.at(0)?.value === low && ticks.at(-1)?.value === high && areClear(ticks, room))
        return { ...own, at: placing(own), ticks }
    }
  }
  const fitting = lists.map((list) => ticksOn(given, list, marking))
  const ticks = fitting.find((own) => own.length > 1 && areClear(own, room)) ?? fitting.find((own) => own.length === 1) ?? []
  return { ...given, at: placing(given), ticks }
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

/** Where an axis left of a drawing stands, how far its line of 0 goes, and where its hair lines run [px]. */
interface Beside {
  readonly x: number
  readonly right: number
  readonly hair: readonly (readonly [number, number])[]
}

/** An axis left of a drawing: its line, ticks and labels, the line of 0, and hair lines at the other ticks. */
export function drawBeside(axis: Axis, { x, right, hair }: Beside, ink: Ink): readonly SvgNode[] {
  const line = stroke(ink, 'quiet')
  const path = (d: string, look: SvgNode['attributes']): SvgNode => element('path', { d, fill: 'none', ...look })
  return [
    ...axis.ticks.flatMap(({ at, label, value }) => {
      const y = numberText(at)
      const across = hair.map(([from, to]) => `M${numberText(from)} ${y}H${numberText(to)}`).join('')
      return [
        value === 0 ? path(`M${x} ${y}H${numberText(right)}`, line) : path(across, stroke(ink, 'hair', 0.75)),
        path(`M${x - 4} ${y}H${x}`, line),
        letters(x - 8, at + 4, label, { size: sizes.small, fill: ink.quiet, anchor: 'end' }),
      ]
    }),
    path(`M${x} ${numberText(axis.to)}V${numberText(axis.from)}`, line),
  ]
}

/** From which fold on a linear axis hides the small values [1]. */
const foldOfLinear = 30

/** How raw rates are laid out: from 0 where they differ up to 30-fold; else by logarithm, or by root where some are 0. */
export function scaleOfRates(rates: readonly number[]): Pick<Axis, 'scale' | 'low' | 'high'> & { readonly finest: number } {
  const known = rates.filter((rate) => Number.isFinite(rate))
  const above = known.filter((rate) => rate > 0)
  const highest = above.reduce((most, rate) => Math.max(most, rate), 0)
  const lowest = above.reduce((least, rate) => Math.min(least, rate), highest)
  const finest = known.every(Number.isInteger) ? 1 : 0
  if (highest === 0) return { scale: 'linear', low: 0, high: 1, finest }
  if (highest / lowest <= foldOfLinear) return { scale: 'linear', low: 0, high: highest, finest }
  if (above.length < known.length) return { scale: 'root', low: 0, high: highest, finest }
  return { scale: 'log', low: lowest, high: highest, finest }
}
