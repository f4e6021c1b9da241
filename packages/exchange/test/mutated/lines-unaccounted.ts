import type { Mapping, Sheet } from '@thrum/exchange'
import { decodeBytes } from '../../src/read/decode-bytes.ts'
import { limits } from '../../src/read/limits.ts'

/** Lines of the file less those that rows, refusals, notes, headers and blanks stand on. */
export function linesUnaccounted(bytes: Uint8Array, sheet: Sheet, given: Mapping | null): number {
  // Of an enormous row only the beginning is kept beside its reason.
  if (sheet.refused.some(({ written }) => written.length === limits.keptOfLine)) return 0
  const { text } = decodeBytes(bytes, given?.file?.encoding)
  // A cell of nothing but line ends is blank, and keeps none of its lines.
  if (/"\s*\n\s*"/u.test(text)) return 0
  const inside = (cell: string): number => cell.split('\n').length - 1
  let told = sheet.rows + sheet.refused.length + sheet.asides.length + sheet.blankLines
  for (const { codes, dictionary } of sheet.columns) {
    const longer = dictionary.map(inside)
    for (const code of codes) told += longer[code] ?? 0
  }
  for (const { cells } of sheet.asides) for (const cell of cells) told += inside(cell)
  for (const { written } of sheet.refused) told += inside(written)
  return text.split('\n').length - (text.endsWith('\n') ? 1 : 0) - told
}
