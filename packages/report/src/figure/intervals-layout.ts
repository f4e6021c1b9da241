import type { IntervalsFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { estimateWords, hasEstimate, rangeWords } from './interval-words.ts'
import { lead, sizes } from './letters.ts'
import { textWidth, wrapText } from './measure.ts'
import { type Frame, rowsDrawn } from './plate.ts'
import { type RowLabel, shortenLabels } from './row-labels.ts'
import type { Face } from './widths.ts'

/** A row with its place. */
export interface LaidRow {
  readonly row: IntervalsFigure['rows'][number]
  readonly label: RowLabel
  readonly heading: readonly string[]
  readonly lines: readonly string[]
  readonly face: Face
  readonly value: string
  readonly range: string
  /** Upper end of all that belongs to the row, its heading included. */
  readonly top: number
  /** Base line of the first line of the label. */
  readonly labelY: number
  /** Base line of its numbers. */
  readonly numbersY: number
  readonly markY: number
}

/** Places from left to right [px]. In a narrow frame the label stands above its line. */
export interface Columns {
  readonly isNarrow: boolean
  readonly labelWidth: number
  readonly axisFrom: number
  readonly axisTo: number
  /** Right end of the estimates and of the intervals. */
  readonly valueEnd: number
  readonly rangeEnd: number
}

const narrowBelow = 520
const indent = 12
const gap = 16
const line = sizes.body * lead

interface Worded {
  readonly row: IntervalsFigure['rows'][number]
  readonly label: RowLabel
  readonly face: Face
  readonly value: string
  readonly range: string
}

const wordsOf = (row: Worded['row'], scale: IntervalsFigure['scale'], say: Frame['say']): string =>
  hasEstimate(row) ? estimateWords(row.value, scale, say) : '–'

function wordRows({ rows, scale }: IntervalsFigure, { say }: Frame): readonly Worded[] {
  const drawn = rows.slice(0, rowsDrawn)
  const labels = shortenLabels(drawn.map(({ label, role }) => ({ label: say(label), role })))
  const areAllAsked = rows.every(({ role }) => role === 'headline')
  return drawn.flatMap((row, k) => {
    const label = labels[k]
    if (label === undefined) return []
    const face = row.role === 'headline' && !areAllAsked ? 'strong' : 'sans'
    return [{ row, label, face, value: wordsOf(row, scale, say), range: rangeWords(row, scale, say) }]
  })
}

const widest = (widths: readonly number[]): number => widths.reduce((most, width) => Math.max(most, width), 0)

function layColumns(worded: readonly Worded[], { width }: Frame): Columns {
  const isNarrow = width < narrowBelow
  const range = widest(worded.map((own) => textWidth(own.range, sizes.body, own.face)))
  const value = widest(worded.map((own) => textWidth(own.value, sizes.body, own.face)))
  const numbers = value + (range > 0 ? range + gap * 0.75 : 0)
  const valueEnd = width - (range > 0 ? range + gap * 0.75 : 0)
  if (isNarrow)
    return { isNarrow, labelWidth: width - numbers - gap, axisFrom: 10, axisTo: width - 10, valueEnd, rangeEnd: width }
  const wanted = widest(
    worded.flatMap(({ label, face }) => [
      textWidth(label.short.slice(0, 200), sizes.body, face) + (label.isUnder ? indent : 0),
      textWidth((label.heading ?? '').slice(0, 200), sizes.body, 'strong'),
    ]),
  )
  const labelWidth = Math.min(wanted + 2, Math.max(150, (width - numbers) * 0.42))
  return { isNarrow, labelWidth, axisFrom: labelWidth + gap + 4, axisTo: width - numbers - gap - 6, valueEnd, rangeEnd: width }
}

/** A label above its line gives way to the numbers beside it, or stands alone above them where it is long. */
function layNarrow(
  own: Worded,
  columns: Columns,
  y: number,
): Pick<LaidRow, 'lines' | 'labelY' | 'numbersY' | 'markY'> & { readonly bottom: number } {
  const fits = textWidth(own.label.short.slice(0, 200), sizes.body, own.face) + indent <= columns.labelWidth
  const room = (fits ? columns.labelWidth : columns.rangeEnd) - (own.label.isUnder ? indent : 0)
  const lines = wrapText(own.label.short, room, 3, sizes.body, own.face)
  const labelY = y + sizes.body
  const numbersY = fits ? labelY : labelY + lines.length * line
  return { lines, labelY, numbersY, markY: numbersY + 14, bottom: numbersY + 28 }
}

function layWide(own: Worded, columns: Columns, y: number): ReturnType<typeof layNarrow> {
  const room = columns.labelWidth - (own.label.isUnder ? indent : 0)
  const lines = wrapText(own.label.short, room, 3, sizes.body, own.face)
  const height = Math.max(1, lines.length) * line
  const pad = own.face === 'strong' ? 6 : 4
  const middle = y + pad + height / 2
  return {
    lines,
    labelY: middle - ((lines.length - 1) * line) / 2 + sizes.body * 0.34,
    numbersY: middle + sizes.body * 0.34,
    markY: middle,
    bottom: y + height + 2 * pad,
  }
}

/** Rows under the head of the numbers and the words of the band, and the places of their parts. */
export function layRows(
  figure: IntervalsFigure,
  frame: Frame,
): {
  /** Where the axis begins above the rows. */
  readonly top: number
  readonly rows: readonly LaidRow[]
  readonly columns: Columns
  readonly bottom: number
  readonly unseen: string | null
} {
  const worded = wordRows(figure, frame)
  const columns = layColumns(worded, frame)
  const top = figure.band === null || columns.isNarrow ? 22 : 42
  const rows: LaidRow[] = []
  let y = top + 4
  for (const own of worded) {
    const start = y
    const isFirst = rows.length === 0
    if (own.face === 'strong' && !isFirst && !own.label.isUnder) y += 5
    const heading =
      own.label.heading === null
        ? []
        : wrapText(own.label.heading, columns.isNarrow ? frame.width : columns.labelWidth, 2, sizes.body, 'strong')
    if (heading.length > 0) y += heading.length * line + (isFirst ? 2 : 9)
    const { bottom, ...places } = columns.isNarrow ? layNarrow(own, columns, y) : layWide(own, columns, y)
    rows.push({ ...own, ...places, heading, top: start })
    y = bottom
  }
  const more = figure.rows.length - worded.length
  return { top, rows, columns, bottom: y, unseen: more > 0 ? frame.say(saying('report/figure/more', { more })) : null }
}

/** How far a label that goes on the one above is set in [px]. */
export const indentOf = ({ label }: LaidRow): number => (label.isUnder ? indent : 0)
