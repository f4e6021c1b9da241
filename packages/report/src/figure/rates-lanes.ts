import { saying } from '@thrum/model/ground'
import { threeDigits } from '../print/numbers.ts'
import { across, belowHeight, drawBelow, layAxis, scaleOfRates } from './axis.ts'
import { guiseOf } from './ink.ts'
import { lead, letters, paragraph, sizes, stroke } from './letters.ts'
import { textWidth, wrapText } from './measure.ts'
import { type Frame, rowsDrawn } from './plate.ts'
import type { RateGroups, RatePoint } from './rates-data.ts'
import { drawMark } from './shapes.ts'
import { stepAside } from './spread.ts'
import { element, type SvgNode } from './svg.ts'

const radius = 3.4
/** Room that a mark takes, its edge with it [px]. */
const markRoom = radius * 2.5
/** A lane grows with marks of one rate up to so far from its middle [px]; beyond it they cover each other. */
const tallest = 60

interface Lane {
  readonly label: string
  /** Kind whose lanes begin here. */
  readonly heading: string | null
  readonly points: readonly RatePoint[]
}

function lanesOf({ kinds, levels }: RateGroups): readonly Lane[] {
  if (levels.length === 1) return kinds.map(({ kind, points }) => ({ label: kind, heading: null, points }))
  return kinds.flatMap(({ kind, points }) => {
    const own = levels.flatMap((label, level) => {
      const here = points.filter((point) => point.level === level)
      return here.length === 0 ? [] : [{ label, points: here }]
    })
    return own.map((lane, k) => ({ ...lane, heading: k === 0 ? kind : null }))
  })
}

const widest = (lanes: readonly Lane[]): number =>
  lanes.reduce((most, { label }) => Math.max(most, textWidth(label.slice(0, 200), sizes.body)), 0)

/** Many levels, or many fields and nothing to compare: one lane each, all on one axis of rates. */
export function drawLanes(
  groups: RateGroups,
  unit: string,
  frame: Frame,
): { readonly nodes: readonly SvgNode[]; readonly height: number } {
  const { ink, say, width } = frame
  const lanes = lanesOf(groups)
  const drawn = lanes.slice(0, rowsDrawn)
  const isCrowded = drawn.some(({ points }) => points.length > 1)
  const labelWidth = Math.min(widest(drawn) + 2, width * (width < 520 ? 0.32 : 0.3))
  const from = labelWidth + 20
  const { finest, ...ends } = scaleOfRates(groups.kinds.flatMap(({ points }) => points.map(({ rate }) => rate)))
  const axis = layAxis(
    { ...ends, from, to: width - 12 },
    { room: across, finest, within: [0, width + 14], say: (value) => threeDigits(value, say.language) },
  )
  const nodes: SvgNode[] = []
  let y = 18
  for (const [k, { label, heading, points }] of drawn.entries()) {
    if (heading !== null) {
      const lines = wrapText(heading, width, 1, sizes.body, 'strong')
      nodes.push(...paragraph(0, y + (k === 0 ? 12 : 22), lines, { size: sizes.body, fill: ink.text, face: 'strong' }, heading))
      y += k === 0 ? 18 : 28
    }
    const lines = wrapText(label, labelWidth, isCrowded ? 2 : 1, sizes.body)
    const xs = points.map(({ rate }) => axis.at(rate))
    const aside = stepAside(xs, markRoom, tallest)
    const reach = aside.reduce((most, step) => Math.max(most, Math.abs(step)), 0)
    const laneHeight = Math.max(isCrowded ? 26 : 19, lines.length * sizes.body * lead + 4, 2 * (reach + radius) + 8)
    const middle = y + laneHeight / 2
    const first = middle + sizes.body * 0.34 - ((lines.length - 1) * sizes.body * lead) / 2
    nodes.push(
      element('path', {
        d: `M${Math.round(from)} ${middle}H${Math.round(width - 12)}`,
        fill: 'none',
        ...stroke(ink, 'hair', 0.75),
      }),
      ...paragraph(0, first, lines, { size: sizes.body, fill: ink.text }, label),
      ...points.map(({ level, told }, at) =>
        drawMark(xs[at] ?? 0, middle + (aside[at] ?? 0), radius, guiseOf(level, groups.levels.length), ink, told),
      ),
    )
    y += laneHeight
  }
  const more = lanes.length - drawn.length
  const note = more > 0 ? say(saying('report/figure/more', { more })) : null
  return {
    nodes: [
      letters(width, 12, say(saying('report/figure/rates/unit', { unit, scale: axis.scale })), {
        size: sizes.small,
        fill: ink.quiet,
        anchor: 'end',
      }),
      ...nodes,
      ...drawBelow(axis, y + 2, ink),
      ...(note === null ? [] : [letters(0, y + belowHeight + 18, note, { size: sizes.small, fill: ink.quiet })]),
    ],
    height: y + 2 + belowHeight + (note === null ? 0 : 18),
  }
}
