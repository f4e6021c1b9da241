import { sizes } from './letters.ts'
import { textWidth } from './measure.ts'
import type { Marks, Panel } from './rates-marks.ts'
import type { Naming } from './rates-names.ts'

/** Room of the labels of the axis [px]; there it stands. */
export const tickRoom = 42
/** Between what belongs to one column and what belongs to the next [px]. */
const apart = 12

/** Room that each column takes left and right of its middle, with its names and its label [px]. */
function roomsOf(
  { levels }: Panel,
  { reach }: Marks,
  namings: readonly Naming[],
): readonly { readonly left: number; readonly right: number }[] {
  const widest = levels.reduce((most, level) => Math.max(most, textWidth(level.slice(0, 40), sizes.small, 'strong')), 0)
  const label = levels.length === 1 ? 0 : Math.min(50, widest / 2 + 15)
  return levels.map((_, level) => {
    const room = (side: Naming['side']): number => {
      const names = namings.find((own) => own.level === level && own.side === side)?.far ?? 0
      // Below the labels of the axis the first label has room anyway.
      const own = level === 0 && side === 'left' ? label - tickRoom : label
      return Math.max(own, names, reach[level]?.[side] ?? 0) + apart / 2
    }
    return { left: room('left') + (level === 0 ? apart : 0), right: room('right') }
  })
}

/** Least width of a panel [px]. */
export function panelWidth(panel: Panel, marks: Marks, namings: readonly Naming[]): number {
  return tickRoom + roomsOf(panel, marks, namings).reduce((sum, { left, right }) => sum + left + right, 0)
}

/** Middles of the columns from left to right; room to spare is shared among them [px]. */
export function columnsOf(panel: Panel, marks: Marks, namings: readonly Naming[], width: number): readonly number[] {
  const each = Math.max(0, width - panelWidth(panel, marks, namings)) / panel.levels.length
  let x = tickRoom
  return roomsOf(panel, marks, namings).map(({ left, right }) => {
    const here = x + left + each / 2
    x += left + right + each
    return here
  })
}

/** A hair line begins so far before the marks of a column, and at least so far behind a name that ends there [px]. */
const before = 26

/**
 * Stretches of the hair lines of a panel [px]. Where fields are named a line ends at the middle of a column, well clear of
 * the names beside it: a name at the end of a line would read as the label of its tick.
 */
export function hairStretches(
  { reach }: Marks,
  namings: readonly Naming[],
  columns: readonly number[],
  width: number,
): readonly (readonly [number, number])[] {
  if (namings.length === 0) return [[tickRoom, width]]
  return columns.map((column, level) => {
    const { left = 0, right = 0 } = reach[level] ?? {}
    const hasLeft = namings.some((own) => own.level === level && own.side === 'left')
    if (hasLeft) return [column, column + right + before] as const
    const start = level > 0 ? column - left - before : tickRoom
    const names = namings.find((own) => own.level === level - 1 && own.side === 'right')
    const clear = names === undefined ? start : (columns[level - 1] ?? 0) + names.far + before
    return [Math.max(start, Math.min(clear, column - left)), column] as const
  })
}
