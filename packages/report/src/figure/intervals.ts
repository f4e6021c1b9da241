import type { IntervalsFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { roundWords } from '../print/numbers.ts'
import { type Axis, belowHeight, drawBelow } from './axis.ts'
import { estimateWords, hasEstimate, hasRange, levelWords, numberScale, rangeWords } from './interval-words.ts'
import { intervalsAxis } from './intervals-axis.ts'
import { layRows } from './intervals-layout.ts'
import { drawRow } from './intervals-row.ts'
import { letters, sizes, stroke } from './letters.ts'
import { textWidth } from './measure.ts'
import { emptyPlate, type Frame, type Plate, rowsTold, type TableView, tableNumber, tellEach } from './plate.ts'
import { element, lineText, numberText, type SvgNode } from './svg.ts'

type Row = IntervalsFigure['rows'][number]
type Values = Parameters<typeof saying>[1]
const part = ({ say }: Frame, id: string, values: Values = {}): string => say(saying(`report/figure/${id}`, values))

function tableOf({ rows, unit }: IntervalsFigure, frame: Frame): TableView {
  const limit = (value: number | null, row: Row): string =>
    tableNumber(value, hasEstimate(row) ? part(frame, 'no-limit') : '–', frame)
  return {
    head: ['what', 'value', 'low', 'high', 'level', 'n', 'role'].map((id) => part(frame, `column/${id}`, { unit })),
    rows: rows.map((row) => [
      lineText(frame.say(row.label)),
      limit(row.value, row),
      limit(row.low, row),
      limit(row.high, row),
      hasEstimate(row) ? levelWords(row.level, frame.say) : '–',
      String(row.n),
      part(frame, `role/${row.role}`),
    ]),
  }
}

/** What a figure comes to, sentence by sentence. */
const comesTo = ({ told = [] }: IntervalsFigure, say: Frame['say']): readonly string[] => told.map((own) => lineText(say(own)))

function toldOf(figure: IntervalsFigure, { say }: Frame): string {
  const each = figure.rows.slice(0, rowsTold).map((row) => {
    const label = lineText(say(row.label)).slice(0, 200)
    return saying(`report/figure/intervals/${hasEstimate(row) ? 'told' : 'told/none'}`, {
      label,
      value: estimateWords(row.value, figure.scale, say),
      range: rangeWords(row, figure.scale, say) || 'none',
    })
  })
  const rows = tellEach(figure.title, each, Math.max(0, figure.rows.length - rowsTold), say)
  return [rows, ...comesTo(figure, say)].join(' ')
}

/** What the numbers at the right are: their unit alone where no interval is drawn. The level that most of what was asked has is told; others tell their own. */
function headOf({ rows, unit }: IntervalsFigure, frame: Frame): string {
  const levels = new Map<number, number>()
  for (const { level, role } of rows.filter(hasRange))
    levels.set(level, (levels.get(level) ?? 0) + (role === 'headline' ? rows.length : 1))
  const [usual] = [...levels].sort((a, b) => b[1] - a[1])[0] ?? []
  if (usual === undefined) return frame.say(unit)
  const id = levels.size > 1 ? 'intervals/head/mixed' : 'intervals/head'
  return part(frame, id, { unit, level: levelWords(usual, frame.say) })
}

function captionOf(figure: IntervalsFigure, axis: Axis, frame: Frame): readonly string[] {
  const { rows, scale, band } = figure
  const roles = new Set(rows.map(({ role }) => role))
  const goesOn = rows.some(
    ({ low, high }) =>
      (low === null) !== (high === null) || (low !== null && low < axis.low) || (high !== null && high > axis.high),
  )
  return [
    ...comesTo(figure, frame.say),
    part(frame, rows.some(hasRange) ? 'intervals/caption' : 'intervals/caption/mark'),
    ...(roles.size > 1 ? [part(frame, 'intervals/caption/beside')] : []),
    ...(goesOn ? [part(frame, 'intervals/caption/arrow')] : []),
    ...(band === null
      ? []
      : [
          part(frame, 'intervals/caption/band', {
            low: roundWords(band.low, numberScale(scale), frame.say.language),
            high: roundWords(band.high, numberScale(scale), frame.say.language),
          }),
        ]),
    ...(scale === 'log' ? [part(frame, 'intervals/caption/log')] : []),
  ]
}

/** Where the shade and the line of no difference stand: behind all rows, or in a narrow frame behind the marks alone. */
interface Ground {
  readonly axis: Axis
  readonly frame: Frame
  /** From above to below [px]. */
  readonly stretches: readonly (readonly [number, number])[]
  readonly isNarrow: boolean
  /** Base line of the words under the axis. */
  readonly wordsY: number
}

/** The shade of ratios too small to act on, and its words: above it, or in a narrow frame under the axis. */
function drawBand(
  band: NonNullable<IntervalsFigure['band']>,
  { axis, frame, stretches, isNarrow, wordsY }: Ground,
): readonly SvgNode[] {
  const { ink, width } = frame
  const left = Math.round(axis.at(band.low))
  const right = Math.round(axis.at(band.high))
  const line = part(frame, 'intervals/band')
  // Under the axis they stand between the words for fewer and more.
  const sides = ['less', 'more'].map((id) => textWidth(part(frame, `intervals/${id}`), sizes.small) + 10)
  const clear = textWidth(line, sizes.small) / 2 + (isNarrow ? Math.max(...sides) : 0)
  const middle = Math.min(width - clear, Math.max(clear, (left + right) / 2))
  const top = stretches[0]?.[0] ?? 0
  const style = { size: sizes.small, fill: ink.verdigris, anchor: 'middle' } as const
  return [
    ...stretches.map(([from, to]) =>
      element('rect', { x: left, y: from, width: right - left, height: to - from, fill: ink.band }),
    ),
    ...stretches.map(([from, to], k) =>
      element('path', {
        d: k === 0 && !isNarrow ? `M${left} ${to}V${from}H${right}V${to}` : `M${left} ${from}V${to}M${right} ${from}V${to}`,
        fill: 'none',
        ...stroke(ink, 'verdigris', 0.8),
      }),
    ),
    letters(middle, isNarrow ? wordsY : top - 7, line, style),
  ]
}

/** The line of no difference, and which way is more. */
function drawOne({ axis, frame, stretches, isNarrow, wordsY }: Ground): readonly SvgNode[] {
  const { ink, width } = frame
  const x = Math.round(axis.at(1))
  const quiet = { size: sizes.small, fill: ink.quiet } as const
  const less = part(frame, 'intervals/less')
  const more = part(frame, 'intervals/more')
  const room = (line: string): number => textWidth(line, sizes.small)
  const words = isNarrow
    ? [letters(0, wordsY, less, quiet), letters(width, wordsY, more, { ...quiet, anchor: 'end' })]
    : [
        ...(x - 8 - room(less) > 0 ? [letters(x - 8, wordsY, less, { ...quiet, anchor: 'end' as const })] : []),
        ...(x + 8 + room(more) < width ? [letters(x + 8, wordsY, more, quiet)] : []),
      ]
  const d = stretches.map(([from, to]) => `M${x} ${numberText(from)}V${numberText(to)}`).join('')
  return [element('path', { d, fill: 'none', ...stroke(ink, 'text', 1) }), ...words]
}

/** Estimates with their intervals on one axis, each beside its label and its numbers. */
export function drawIntervals(figure: IntervalsFigure, frame: Frame): Plate {
  const { ink, width } = frame
  if (figure.rows.length === 0) return emptyPlate(figure, tableOf(figure, frame), frame)
  const headY = 12
  const { top, rows, columns, bottom, unseen } = layRows(figure, frame)
  const axis = intervalsAxis(figure, columns.axisFrom, columns.axisTo, frame.say.language)
  const foot = bottom + 4
  const isRatio = figure.scale === 'log'
  const below = foot + belowHeight + (isRatio ? 18 : 0)
  const zero = Math.round(axis.at(0))
  const { isNarrow } = columns
  const stretches = isNarrow ? rows.map(({ markY }) => [markY - 9, markY + 9] as const) : [[top, foot] as const]
  const ground = { axis, frame, stretches, isNarrow, wordsY: foot + belowHeight + 13 }
  return {
    nodes: [
      letters(width, headY, headOf(figure, frame), { size: sizes.small, fill: ink.quiet, anchor: 'end' }),
      ...(figure.band === null ? [] : drawBand(figure.band, ground)),
      ...(isRatio
        ? drawOne(ground)
        : stretches.map(([from, to]) =>
            element('path', { d: `M${zero} ${numberText(from)}V${numberText(to)}`, fill: 'none', ...stroke(ink, 'hair', 1) }),
          )),
      ...rows
        .filter(({ face, label, heading }, k) => k > 0 && (heading.length > 0 || (face === 'strong' && !label.isUnder)))
        .map(({ top: y }) =>
          element('path', { d: `M0 ${Math.round(y) + 2.5}H${width}`, fill: 'none', ...stroke(ink, 'hair', 0.75) }),
        ),
      ...rows.flatMap((laid) => drawRow(laid, axis, columns, ink)),
      ...drawBelow(axis, foot, ink),
      ...(unseen === null ? [] : [letters(0, below + 12, unseen, { size: sizes.small, fill: ink.quiet })]),
    ],
    height: below + (unseen === null ? 0 : 18),
    caption: captionOf(figure, axis, frame),
    told: toldOf(figure, frame),
    table: tableOf(figure, frame),
  }
}
