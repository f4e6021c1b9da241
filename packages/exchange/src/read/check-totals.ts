import type { TextColumn } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { isGrandTotal, isMeanLabel } from './line-kinds.ts'

/** A total line: its label, what it says column by column, and how many rows stand above it. */
export interface TotalLine {
  readonly line: number
  readonly label: string
  /** By place of column; null where the cell is blank or no plain number. */
  readonly numbers: readonly (number | null)[]
  readonly rowsAbove: number
}

/** A number that can be summed to the last digit; a cell of more digits is none. */
const plainNumber = (text: string): number | null => (/^\s*\d{1,15}(?:\.\d+)?\s*$/u.test(text) ? Number(text) : null)

export function totalNumbers(cells: readonly string[]): readonly (number | null)[] {
  return cells.map(plainNumber)
}

function sumOf(column: TextColumn, from: number, to: number): number {
  let sum = 0
  for (let row = from; row < to; row++) sum += plainNumber(column.dictionary[column.codes[row] ?? -1] ?? '') ?? 0
  return sum
}

/** Compares each total of the file with the rows above it, and says which agree and which do not. */
export function checkTotals(totals: readonly TotalLine[], columns: readonly TextColumn[], headers: readonly string[]): Saying[] {
  const notes: Saying[] = []
  let agreeing = 0
  let blockStart = 0
  for (const { line, label, numbers, rowsAbove } of totals) {
    if (isMeanLabel(label) || numbers.every((number) => number === null)) {
      notes.push(saying('exchange/note/total-left-out', { line, label: label.trim() }))
      continue
    }
    const from = isGrandTotal(label) || blockStart === rowsAbove ? 0 : blockStart
    const off = numbers.flatMap((said, k) => {
      const column = columns[k]
      if (said === null || column === undefined) return []
      const found = sumOf(column, from, rowsAbove)
      return Math.abs(found - said) > 1e-6 ? [{ header: headers[k] ?? '', said, found }] : []
    })
    if (off.length === 0) agreeing++
    for (const { header, said, found } of off) {
      notes.push(saying('exchange/note/total-differs', { line, label: label.trim(), header, said, found }))
    }
    blockStart = rowsAbove
  }
  if (agreeing > 0) notes.unshift(saying('exchange/note/totals-agree', { totals: agreeing }))
  return notes
}
