import type { Ink } from './ink.ts'
import { letters, sizes } from './letters.ts'
import { cutLine, textWidth } from './measure.ts'
import { byField, headRoom, type Mark, type Marks, type Panel } from './rates-marks.ts'
import { spreadApart } from './spread.ts'
import { element, numberText, type SvgNode } from './svg.ts'

const size = sizes.small
const gap = 14
/** Length of the line from the outermost mark to a name [px]. */
const leader = 14

/** Where names of fields stand: beside which column, and on which side of it. */
export interface Naming {
  readonly level: number
  readonly side: 'left' | 'right'
  readonly marks: readonly Mark[]
  /** From the column to the near and the far end of the names [px]. */
  readonly near: number
  readonly far: number
}

/**
 * A field is named right of its last mark; if lines of other fields go on from that column, left of its first mark where that
 * stands in the first column, so that no line runs through a name.
 */
export function namingsOf({ levels, names }: Panel, { marks, reach }: Marks): readonly Naming[] {
  if (names === 0) return []
  const fields = byField(marks)
  const goesOn = (level: number): boolean =>
    fields.some((own) => own.some(({ point }) => point.level <= level) && own.some(({ point }) => point.level > level))
  const isLeft = (own: readonly Mark[]): boolean =>
    own.length > 1 && own[0]?.point.level === 0 && goesOn(own.at(-1)?.point.level ?? 0)
  const naming = (level: number, side: Naming['side'], own: readonly Mark[]): readonly Naming[] => {
    if (own.length === 0) return []
    const near = (reach[level]?.[side] ?? 0) + leader
    const widest = own.reduce((most, { point }) => Math.max(most, textWidth(point.field.slice(0, 200), size)), 0)
    return [{ level, side, marks: own, near, far: near + Math.min(names, widest) }]
  }
  const right = fields.filter((own) => !isLeft(own)).flatMap((own) => own.at(-1) ?? [])
  return [
    ...naming(
      0,
      'left',
      fields.filter(isLeft).flatMap((own) => own[0] ?? []),
    ),
    ...levels.flatMap((_, level) =>
      naming(
        level,
        'right',
        right.filter(({ point }) => point.level === level),
      ),
    ),
  ]
}

/** Names beside a column, each with a line from the middle of its mark, which is drawn over it. */
export function drawNames({ side, marks, near }: Naming, column: number, panel: Panel, ink: Ink): readonly SvgNode[] {
  const way = side === 'left' ? -1 : 1
  const lowest = headRoom + panel.plotHeight - 9
  const spread = spreadApart(
    marks.map(({ y }) => y),
    gap,
    headRoom,
    lowest,
  )
  const x = column + near * way
  const style = { size, fill: ink.text, halo: ink.paper, anchor: side === 'left' ? 'end' : 'start' } as const
  return marks.flatMap(({ point, y: from, aside }, k) => {
    const y = spread[k] ?? from
    const d = `M${numberText(column + aside)} ${numberText(from)}L${numberText(x - 3 * way)} ${numberText(y)}`
    return [
      element('path', { d, fill: 'none', stroke: ink.quiet, 'stroke-width': 0.6 }),
      letters(x, y + 4, cutLine(point.field, panel.names, size), style, point.field),
    ]
  })
}
