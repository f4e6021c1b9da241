import { type MarkName, mark, markName } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'

/** What stands in a cell: a number with its mark, or a text. `written` is told for a cell that waits for a person. */
export interface MendedCell {
  readonly value: number | string | null
  readonly mark: number
  readonly written?: string
}

/** A text column's empty cell, or a number nobody looked for. */
export const emptyText: MendedCell = { value: null, mark: mark.asWritten }
export const emptyNumber: MendedCell = { value: null, mark: mark.notLookedFor }

export const emptyCell = (isNumber: boolean): MendedCell => (isNumber ? emptyNumber : emptyText)

const isEmpty = ({ value, mark: code }: MendedCell): boolean =>
  value === null && (code === mark.asWritten || code === mark.notLookedFor)

/** True where two cells say the same; of cells that wait, what was written decides. */
export function sameCell(a: MendedCell, b: MendedCell): boolean {
  if (isEmpty(a) && isEmpty(b)) return true
  if (a.mark !== b.mark) return false
  if (a.mark === mark.waiting) return (a.written ?? '').trim() === (b.written ?? '').trim()
  return Object.is(a.value, b.value)
}

/** A cell as a correction writes it. A text that waits is kept as it was written. */
export function asCorrection(cell: MendedCell): { readonly to: string | number | null; readonly mark?: MarkName } {
  if (cell.mark === mark.waiting) return { to: cell.written ?? null, mark: 'waiting' }
  const name = markName(cell.mark)
  const isUsual = cell.value === null ? cell.mark === mark.lost || isEmpty(cell) : cell.mark === mark.asWritten
  if (cell.value === null && cell.mark === mark.notLookedFor) return { to: null, mark: 'notLookedFor' }
  return isUsual || name === undefined ? { to: cell.value } : { to: cell.value, mark: name }
}

/** A cell in a few letters, as a person reads it: a number, a text, or how it has none. */
export function cellTold(cell: MendedCell): string | Saying {
  if (cell.mark === mark.waiting) return saying('exchange/mended/waits', { written: (cell.written ?? '').trim() })
  if (cell.mark === mark.lost) return saying('exchange/mended/missing')
  if (cell.mark === mark.notLookedFor) return saying('exchange/mended/not-looked-for')
  if (cell.value === null) return '–'
  const sign = cell.mark === mark.approximate ? '≈ ' : cell.mark === mark.atLeast ? '≥ ' : cell.mark === mark.atMost ? '≤ ' : ''
  return `${sign}${cell.value}`
}
