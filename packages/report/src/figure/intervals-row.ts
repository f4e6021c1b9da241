import type { Axis } from './axis.ts'
import type { Ink } from './ink.ts'
import { type Columns, indentOf, type LaidRow } from './intervals-layout.ts'
import { hint, lead, letters, paragraph, sizes } from './letters.ts'
import { element, numberText, type SvgNode } from './svg.ts'

/** The line of an interval; where it goes on beyond the axis, or has no limit on that side, it ends in an arrow. */
function drawLine({ row, markY, face }: LaidRow, axis: Axis, ink: Ink, colour: string): readonly SvgNode[] {
  const { low, high } = row
  if (low === null && high === null) return []
  const isOpenLow = low === null || low < axis.low
  const isOpenHigh = high === null || high > axis.high
  const from = isOpenLow ? axis.from : axis.at(low)
  const to = isOpenHigh ? axis.to : axis.at(high)
  const width = face === 'strong' || row.role === 'headline' ? 2.2 : 1.2
  const arrow = (x: number, way: number): SvgNode =>
    element('path', {
      d: `M${numberText(x)} ${numberText(markY)}l${8 * way} -4.5v9z`,
      fill: colour,
      stroke: ink.paper,
      'stroke-width': 0.5,
    })
  const half = row.role === 'headline' ? 4 : 3
  const cap = (x: number): SvgNode =>
    element('path', {
      d: `M${numberText(x)} ${numberText(markY - half)}v${2 * half}`,
      fill: 'none',
      stroke: colour,
      'stroke-width': 1.2,
    })
  return [
    element('path', {
      d: `M${numberText(from)} ${numberText(markY)}H${numberText(to)}`,
      fill: 'none',
      stroke: colour,
      'stroke-width': width,
    }),
    isOpenLow ? arrow(axis.from - 6, 1) : cap(from),
    isOpenHigh ? arrow(axis.to + 6, -1) : cap(to),
  ]
}

/** A row: its heading where one starts, its label, its line and mark, and its numbers. */
export function drawRow(laid: LaidRow, axis: Axis, columns: Columns, ink: Ink): readonly SvgNode[] {
  const { row, label, heading, lines, face, value, range, labelY, numbersY, markY } = laid
  const isAsked = row.role === 'headline'
  const colour = isAsked ? ink.slate : ink.quiet
  const fill = isAsked ? ink.text : ink.quiet
  const number = { size: sizes.body, fill, face, anchor: 'end' } as const
  const line = sizes.body * lead
  const headingY = labelY - 4 - heading.length * line
  const marks =
    row.value === null || !(row.value >= axis.low && row.value <= axis.high)
      ? []
      : [
          element(
            'circle',
            {
              cx: axis.at(row.value),
              cy: markY,
              r: isAsked ? 4.2 : 3.3,
              fill: isAsked ? colour : ink.paper,
              stroke: colour,
              'stroke-width': isAsked ? 0.5 : 1.4,
            },
            element('title', {}, hint(`${label.whole}: ${value}${range === '' ? '' : ` (${range})`}`)),
          ),
        ]
  return [
    ...paragraph(0, headingY, heading, { size: sizes.body, fill: ink.text, face: 'strong' }, label.heading ?? undefined),
    ...paragraph(indentOf(laid), labelY, lines, { size: sizes.body, fill, face }, label.short),
    ...drawLine(laid, axis, ink, colour),
    ...marks,
    letters(columns.valueEnd, numbersY, value, number),
    ...(range === '' ? [] : [letters(columns.rangeEnd, numbersY, range, number)]),
  ]
}
