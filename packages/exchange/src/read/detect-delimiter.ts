import { type Delimiter, delimiters, splitCells } from './split-cells.ts'

const lookedAtLines = 120
const lookedAtLength = 128 * 1024

/** How regular a table the delimiter makes: the share of lines that have the commonest number of cells, and that number. */
function regularity(text: string, delimiter: Delimiter): { readonly share: number; readonly width: number } {
  const widths = new Map<number, number>()
  let lines = 0
  splitCells(
    text,
    delimiter,
    (cells) => {
      if (cells.every((cell) => cell.trim() === '')) return
      lines++
      widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1)
    },
    lookedAtLines,
  )
  let width = 1
  let most = 0
  for (const [cells, times] of widths) if (cells > 1 && times > most) [width, most] = [cells, times]
  return { share: lines === 0 ? 0 : most / lines, width }
}

/** The delimiter that makes the most regular table; null where none makes one. */
export function detectDelimiter(text: string): Delimiter | null {
  const whole = text.length <= lookedAtLength
  const end = whole ? text.length : text.lastIndexOf('\n', lookedAtLength)
  const sample = end <= 0 ? text.slice(0, lookedAtLength) : text.slice(0, end)
  let best: { delimiter: Delimiter; share: number; width: number } | null = null
  for (const delimiter of delimiters) {
    const { share, width } = regularity(sample, delimiter)
    if (width < 2) continue
    // A wider table wins only where it is about as regular.
    const better = best === null || share > best.share + 0.05 || (share > best.share - 0.05 && width > best.width)
    if (better) best = { delimiter, share, width }
  }
  return best === null || best.share < 0.3 ? null : best.delimiter
}
