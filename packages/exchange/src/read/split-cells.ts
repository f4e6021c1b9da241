import Papa from 'papaparse'
import { limits } from './limits.ts'

export type Delimiter = ',' | ';' | '\t' | '|'
export const delimiters: readonly Delimiter[] = [',', ';', '\t', '|']

/** A stretch of text whose quotes are cells' quotes, or a line in which a quote was opened and never closed. */
interface Stretch {
  readonly from: number
  readonly to: number
  readonly quotes: boolean
}

const isBlank = (code: number): boolean => code === 32 || code === 160

/** Where a cell that opens with a quote at `open` closes, or -1 when it never does in reach. */
function closingQuote(text: string, open: number, delimiter: Delimiter): number {
  const reach = open + limits.cellLength * 2
  let lines = 0
  let looked = open + 1
  for (let at = text.indexOf('"', open + 1); at >= 0 && at <= reach; at = text.indexOf('"', at + 1)) {
    for (let k = looked; k < at; k++) if (text.charCodeAt(k) === 10) lines++
    looked = at
    if (lines > limits.linesInCell) return -1
    if (text[at + 1] === '"') {
      at++
      continue
    }
    let after = at + 1
    while (isBlank(text.charCodeAt(after))) after++
    if (after >= text.length || text[after] === delimiter || text[after] === '\n') return at
  }
  return -1
}

function stretches(text: string, delimiter: Delimiter): Stretch[] {
  const found: Stretch[] = []
  let from = 0
  for (let at = text.indexOf('"'); at >= 0; ) {
    const before = at === 0 ? '\n' : text[at - 1]
    const opens = before === '\n' || before === delimiter
    if (!opens) {
      at = text.indexOf('"', at + 1)
      continue
    }
    const close = closingQuote(text, at, delimiter)
    if (close >= 0) {
      at = text.indexOf('"', close + 1)
      continue
    }
    const start = text.lastIndexOf('\n', at) + 1
    const end = text.indexOf('\n', at)
    const to = end < 0 ? text.length : end + 1
    if (start > from) found.push({ from, to: start, quotes: true })
    found.push({ from: start, to, quotes: false })
    from = to
    at = text.indexOf('"', to)
  }
  if (from < text.length) found.push({ from, to: text.length, quotes: true })
  return found
}

/** Characters of a piece handed to the parser at once: keeps its rows few at any moment. */
const pieceLength = 256 * 1024
/** A character that no text of ours holds stands for "no quotes here". */
const noQuote = '\u{10ffff}'

/** What is done with each line: its cells, the number of its first line in the file, and whether it held a stray quote. */
export type LineTaker = (cells: readonly string[], line: number, strayQuote: boolean) => void

/**
 * Splits a text (line ends LF) into cells, by RFC 4180 as far as the text follows it. A quote that opens and never
 * closes spoils its own line only.
 */
export function splitCells(text: string, delimiter: Delimiter, take: LineTaker, mostLines?: number): void {
  let line = 1
  let taken = 0
  for (const stretch of stretches(text, delimiter)) {
    const ended = text[stretch.to - 1] === '\n'
    // The parser would read the end of a last line as one more, empty line.
    const piece = text.slice(stretch.from, ended ? stretch.to - 1 : stretch.to)
    const rows = (data: string[][]): void => {
      for (const cells of data) {
        if (mostLines === undefined || taken < mostLines) take(cells, line, !stretch.quotes)
        taken++
        line++
        if (stretch.quotes) for (const cell of cells) line += linesInside(cell)
      }
    }
    if (piece === '') rows([['']])
    else {
      Papa.parse(piece, {
        delimiter,
        newline: '\n',
        quoteChar: stretch.quotes ? '"' : noQuote,
        chunkSize: pieceLength,
        chunk: (results) => rows(results.data),
      })
    }
    if (mostLines !== undefined && taken >= mostLines) return
  }
}

function linesInside(cell: string): number {
  let lines = 0
  for (let at = cell.indexOf('\n'); at >= 0; at = cell.indexOf('\n', at + 1)) lines++
  return lines
}
