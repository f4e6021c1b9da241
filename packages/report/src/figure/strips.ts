import type { StripsFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { belowHeight, drawBelow } from './axis.ts'
import { guiseOf } from './ink.ts'
import { hint, lead, letters, paragraph, sizes } from './letters.ts'
import { textWidth, wrapText } from './measure.ts'
import { emptyPlate, type Frame, type Plate, rowsDrawn, rowsTold, type TableView, tableNumber, tellEach } from './plate.ts'
import { drawMark } from './shapes.ts'
import { type StripWords, stripsAxis, stripWords } from './strips-axis.ts'
import { element, lineText, numberText, type SvgNode } from './svg.ts'

type Strip = StripsFigure['strips'][number]
interface Ended {
  readonly level: string
  readonly values: readonly number[]
  readonly low: number
  readonly high: number
}

const endsOf = ({ level, values }: Strip): Ended => {
  const known = values.filter((value) => Number.isFinite(value))
  return {
    level: lineText(level),
    values: known,
    low: known.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY),
    high: known.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY),
  }
}

/** True if no two levels lie over the same stretch. */
function areApart(strips: readonly Ended[]): boolean {
  const known = strips.filter(({ values }) => values.length > 0).sort((a, b) => a.low - b.low)
  return known.length > 1 && known.every(({ low }, k) => k === 0 || low > (known[k - 1]?.high ?? low))
}

function tableOf(strips: readonly Ended[], words: StripWords, axis: string, frame: Frame): TableView {
  const { say } = frame
  const column = (id: string): string => say(saying(`report/figure/column/${id}`, { axis }))
  const none = say(saying('report/figure/strips/none'))
  const reads = (value: number): string => (words.isTold ? words.whole(value) : tableNumber(value, none, frame))
  return {
    head: [column('at-level'), column('axis')],
    rows: strips.flatMap(({ level, values }): readonly (readonly string[])[] =>
      values.length === 0 ? [[level, none]] : values.map((value) => [level, reads(value)]),
    ),
  }
}

function toldOf(figure: StripsFigure, strips: readonly Ended[], words: StripWords, { say }: Frame): string {
  const each = strips.slice(0, rowsTold).map(({ level, values, low, high }) => {
    const name = level.slice(0, 200)
    return values.length === 0
      ? saying('report/figure/strips/told/none', { level: name })
      : saying('report/figure/strips/told', {
          level: name,
          values: values.length,
          low: words.whole(low),
          high: words.whole(high),
        })
  })
  const told = tellEach(figure.title, each, Math.max(0, strips.length - rowsTold), say)
  return areApart(strips) ? `${told} ${say(saying('report/figure/strips/apart'))}` : told
}

/** Values nearer to each other than this [px] are strokes alone, without the mark of their level. */
const roomOfMark = 11

function drawStrip(
  strip: Ended,
  at: (value: number) => number,
  y: number,
  look: { readonly frame: Frame; readonly guise: ReturnType<typeof guiseOf>; say(value: number): string },
): readonly SvgNode[] {
  const { frame, guise, say } = look
  const { ink } = frame
  if (strip.values.length === 0) return []
  const left = at(strip.low) - 7
  const right = at(strip.high) + 7
  const places = strip.values.map(at).sort((a, b) => a - b)
  const areCrowded = places.some((place, k) => k > 0 && place - (places[k - 1] ?? place) < roomOfMark)
  return [
    element('rect', {
      x: left,
      y: y - 10,
      width: right - left,
      height: 20,
      rx: 3,
      fill: ink[guise.colour],
      'fill-opacity': 0.15,
    }),
    ...strip.values.map((value) => {
      const title = element('title', {}, hint(`${strip.level}: ${say(value)}`))
      const d = `M${numberText(at(value))} ${numberText(y - 10)}v20`
      return element('path', { d, fill: 'none', stroke: ink[guise.colour], 'stroke-width': 1.6 }, title)
    }),
    ...(areCrowded ? [] : strip.values.map((value) => drawMark(at(value), y, 4.4, guise, ink, `${strip.level}: ${say(value)}`))),
  ]
}

/** Where counts lie, a strip for each level: what does not overlap cannot be told apart. */
export function drawStrips(figure: StripsFigure, frame: Frame): Plate {
  const { ink, say, width } = frame
  const strips = figure.strips.map(endsOf)
  const drawn = strips.slice(0, rowsDrawn)
  const words = stripWords({ ...figure, strips }, say.language)
  const axisWords = say(words.axis)
  if (strips.every(({ values }) => values.length === 0))
    return emptyPlate(figure, tableOf(strips, words, axisWords, frame), frame)
  const widest = drawn.reduce((most, { level }) => Math.max(most, textWidth(level.slice(0, 200), sizes.body, 'strong')), 0)
  const labelWidth = Math.min(widest + 2, width * 0.34)
  const from = labelWidth + 40
  const axis = stripsAxis(strips, words, from, width - 12)
  const nodes: SvgNode[] = []
  let y = 6
  for (const [k, strip] of drawn.entries()) {
    const lines = wrapText(strip.level, labelWidth, 3, sizes.body, 'strong')
    const height = Math.max(32, lines.length * sizes.body * lead + 10)
    const middle = y + height / 2
    const guise = guiseOf(k, strips.length)
    const first = middle + sizes.body * 0.34 - ((lines.length - 1) * sizes.body * lead) / 2
    nodes.push(
      ...paragraph(20, first, lines, { size: sizes.body, fill: ink.text, face: 'strong' }, strip.level),
      drawMark(7, middle, 4.4, guise, ink),
      ...(strip.values.length === 0
        ? [letters(from, middle + 4, say(saying('report/figure/strips/none')), { size: sizes.small, fill: ink.quiet })]
        : drawStrip(strip, axis.at, middle, { frame, guise, say: words.whole })),
    )
    y += height
  }
  const more = strips.length - drawn.length
  const below = y + 6 + belowHeight + 14
  return {
    nodes: [
      ...nodes,
      ...drawBelow(axis, y + 6, ink),
      letters(width - 12, below, axisWords, { size: sizes.small, fill: ink.quiet, anchor: 'end' }),
      ...(more > 0
        ? [letters(0, below + 16, say(saying('report/figure/more', { more })), { size: sizes.small, fill: ink.quiet })]
        : []),
    ],
    height: below + 4 + (more > 0 ? 16 : 0),
    caption: [
      say(saying('report/figure/strips/caption')),
      ...(areApart(strips) ? [say(saying('report/figure/strips/apart'))] : []),
    ],
    told: toldOf(figure, strips, words, frame),
    table: tableOf(strips, words, axisWords, frame),
  }
}
