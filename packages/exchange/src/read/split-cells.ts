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

const countOf = (sign: string, text: string, from: number, to: number): number => {
  let found = 0
  for (let at = text.indexOf(sign, from); at >= 0 && at < to; at = text.indexOf(sign, at + 1)) found++
  return found
}

/** The line on which a quote stands: where it starts, and where its end (LF) is, or the end of the text. */
interface Line {
  readonly start: number
  readonly end: number
}

/** The delimiters between two places: looked for sign by sign, because one that does not come again is far away. */
function delimitersBetween(text: string, from: number, to: number, delimiter: Delimiter): number {
  const sign = delimiter.charCodeAt(0)
  let found = 0
  for (let at = from; at < to; at++) if (text.charCodeAt(at) === sign) found++
  return found
}

/**
 * True where a cell over several lines would swallow a whole line that looks like a row of its own: at least half as many
 * delimiters as the line on which the cell opens.
 */
function swallowsRows(text: string, line: Line, close: number, delimiter: Delimiter): boolean {
  let { end } = line
  const own = delimitersBetween(text, line.start, end, delimiter)
  while (own > 0 && end < close) {
    const next = text.indexOf('\n', end + 1)
    if (next < 0 || next > close) return false
    if (delimitersBetween(text, end, next, delimiter) >= own / 2) return true
    end = next
  }
  return false
}

/**
 * Where a cell that opens with a quote at `open` closes: at a quote before a delimiter or a line's end. -1 where it
 * never does in reach, or where a quote inside it is not doubled and it goes on past its line: then the quote is a stray one.
 */
function closingQuote(text: string, open: number, line: Line, delimiter: Delimiter): number {
  const reach = open + limits.cellLength * 2
  let lone = false
  let lines = 0
  let counted = open
  for (let at = text.indexOf('"', open + 1); at >= 0 && at <= reach; at = text.indexOf('"', at + 1)) {
    const beyond = at > line.end
    if (beyond) {
      for (; counted < at; counted++) if (text.charCodeAt(counted) === 10) lines++
      if (lone || lines > limits.linesInCell) return -1
    }
    if (text[at + 1] === '"') {
      at++
      continue
    }
    let after = at + 1
    while (isBlank(text.charCodeAt(after))) after++
    const closes = after >= text.length || text[after] === delimiter || text[after] === '\n'
    if (closes) return beyond && swallowsRows(text, line, at, delimiter) ? -1 : at
    if (beyond) return -1
    lone = true
  }
  return -1
}

/** Characters of a stretch, about: its rows are in memory at once. */
const stretchLength = 256 * 1024

/** The text in stretches that end with a line: cut where no quote is open, and around lines whose quote never closes. */
function* stretches(text: string, delimiter: Delimiter): Generator<Stretch> {
  let from = 0
  /** From here on no cell has opened with a quote so far. */
  let plain = 0
  /** Stretches that end before `until`, which stands before any further cell with a quote. */
  function* cutBefore(until: number): Generator<Stretch> {
    for (;;) {
      const end = text.indexOf('\n', Math.max(from + stretchLength, plain))
      if (end < 0 || end >= until) return
      yield { from, to: end + 1, quotes: true }
      from = end + 1
    }
  }
  let line: Line = { start: 0, end: -1 }
  for (let at = text.indexOf('"'); at >= 0; ) {
    const before = at === 0 ? '\n' : text[at - 1]
    const opens = before === '\n' || before === delimiter
    if (!opens) {
      at = text.indexOf('"', at + 1)
      continue
    }
    yield* cutBefore(at)
    if (at > line.end) {
      const end = text.indexOf('\n', at)
      line = { start: at === 0 ? 0 : text.lastIndexOf('\n', at - 1) + 1, end: end < 0 ? text.length : end }
    }
    const close = closingQuote(text, at, line, delimiter)
    if (close >= 0) {
      plain = close + 1
      at = text.indexOf('"', close + 1)
      continue
    }
    const to = Math.min(line.end + 1, text.length)
    if (line.start > from) yield { from, to: line.start, quotes: true }
    yield { from: line.start, to, quotes: false }
    from = to
    plain = to
    at = text.indexOf('"', to)
  }
  yield* cutBefore(text.length)
  if (from < text.length) yield { from, to: text.length, quotes: true }
}

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
    // One whole stretch at a time: in pieces of its own choosing the parser would keep the rows of all of them to the end.
    const quoteChar = stretch.quotes ? '"' : noQuote
    const data = piece === '' ? [['']] : Papa.parse(piece, { delimiter, newline: '\n', quoteChar }).data
    for (const cells of data) {
      if (mostLines !== undefined && taken >= mostLines) return
      take(cells, line, !stretch.quotes)
      taken++
      line++
      if (stretch.quotes) for (const cell of cells) line += linesInside(cell)
    }
  }
}

const linesInside = (cell: string): number => countOf('\n', cell, 0, cell.length)
