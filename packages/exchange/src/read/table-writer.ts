import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { foldedName, plainName } from '../cell/plain-name.ts'
import { shortened } from '../cell/shortened.ts'
import { checkTotals, type TotalLine, totalNumbers } from './check-totals.ts'
import { type ColumnWriter, createColumnWriter } from './column-writer.ts'
import { type Header, longestHeader, type SplitLine } from './find-header.ts'
import { limits } from './limits.ts'
import { holdsOnlyNumbers, isTotalLabel, repeatedHeader } from './line-kinds.ts'
import type { AsideLine, RefusedLine, Sheet } from './sheet.ts'

type TableBody = Pick<
  Sheet,
  'headers' | 'headerLines' | 'columns' | 'lines' | 'rows' | 'blankLines' | 'asides' | 'refused' | 'notes'
>

/** Takes the lines under a header and sorts them into rows, lines set aside and lines refused. */
export interface TableWriter {
  take(line: SplitLine): void
  /** @throws ThrumError exchange/sheet/not-a-table where most lines do not fit their header */
  finish(): TableBody
}

interface Filled {
  readonly first: number
  readonly last: number
  readonly count: number
  readonly longest: number
}

function filledOf(cells: readonly string[]): Filled {
  let first = -1
  let last = -1
  let count = 0
  let longest = 0
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as string
    if (cell.length > longest) longest = cell.length
    if (cell === '' || cell.trim() === '') continue
    if (first < 0) first = k
    last = k
    count++
  }
  return { first, last, count, longest }
}

export function createTable(header: Header, head: readonly SplitLine[]): TableWriter {
  if (header.names.length > limits.columns) throw new ThrumError('exchange/sheet/too-wide', { limit: limits.columns })
  const headers = [...header.names]
  const writers: ColumnWriter[] = headers.map(() => createColumnWriter())
  /** The first column of each name; names as they are compared. */
  const known = new Map<string, number>()
  const taken = new Set(headers)
  for (const [k, name] of headers.map(foldedName).entries()) if (!known.has(name)) known.set(name, k)
  /** Column of each place of a line; changes where a header is repeated in another order. */
  let places = headers.map((_, k) => k)
  let lines = new Int32Array(1024)
  let rows = 0
  let blankLines = 0
  const asides: AsideLine[] = []
  const refused: RefusedLine[] = []
  const totals: TotalLine[] = []
  const notes: Saying[] = []
  const headerLines = header.at.map((k) => head[k]?.line ?? 0)
  for (const { cells, line } of head.slice(0, header.at[0])) {
    if (filledOf(cells).count === 0) blankLines++
    else asides.push({ line, what: 'title', cells })
  }
  for (const k of header.at) asides.push({ line: head[k]?.line ?? 0, what: 'header', cells: head[k]?.cells ?? [] })

  const refuse = (line: SplitLine, id: string, values: Saying['values'] = {}): void => {
    const written = line.cells.join('\t').slice(0, limits.keptOfLine)
    refused.push({ line: line.line, written, because: saying(id, values) })
  }
  const startBlock = (line: SplitLine, names: readonly string[]): void => {
    if (names.length > limits.columns) throw new ThrumError('exchange/sheet/too-wide', { limit: limits.columns })
    places = names.map((name, k) => {
      const column = known.get(name)
      if (column !== undefined) return column
      const written = shortened(plainName(line.cells[k] ?? ''), longestHeader)
      let added = written === '' ? `column ${headers.length + 1}` : written
      while (taken.has(added)) added = `${added} (2)`
      taken.add(added)
      if (!known.has(foldedName(added))) known.set(foldedName(added), headers.length)
      const writer = createColumnWriter()
      writer.fillTo(rows)
      writers.push(writer)
      return headers.push(added) - 1
    })
    if (headers.length > limits.columns) throw new ThrumError('exchange/sheet/too-wide', { limit: limits.columns })
    asides.push({ line: line.line, what: 'header', cells: line.cells })
    notes.push(saying('exchange/note/repeated-header', { line: line.line }))
  }
  const writeRow = (cells: readonly string[], line: number): void => {
    if (rows >= limits.rows) throw new ThrumError('exchange/sheet/too-long', { limit: limits.rows })
    if (rows === lines.length) {
      const longer = new Int32Array(lines.length * 2)
      longer.set(lines)
      lines = longer
    }
    for (let k = 0; k < places.length; k++) writers[places[k] as number]?.put(cells[k] ?? '')
    lines[rows++] = line
    if (places.length !== writers.length) for (const writer of writers) writer.fillTo(rows)
  }

  return {
    take: (line) => {
      const { cells } = line
      const filled = filledOf(cells)
      if (filled.count === 0) {
        blankLines++
        return
      }
      const label = cells[filled.first] as string
      if (filled.longest > limits.cellLength) {
        return refuse(line, 'exchange/row/cell-too-long', { length: filled.longest, limit: limits.cellLength })
      }
      if (line.strayQuote) return refuse(line, 'exchange/row/stray-quote')
      if (filled.count === 1 && places.length > 2) {
        asides.push({ line: line.line, what: 'note', cells: [label] })
        return
      }
      if (filled.count < places.length && isTotalLabel(label) && holdsOnlyNumbers(cells, filled.first)) {
        const byColumn = new Array<string>(headers.length).fill('')
        places.forEach((column, k) => {
          byColumn[column] = cells[k] ?? ''
        })
        totals.push({ line: line.line, label, numbers: totalNumbers(byColumn), rowsAbove: rows })
        asides.push({ line: line.line, what: 'total', cells })
        return
      }
      // Names of columns do not begin with a digit, ids and dates do: most rows are known as rows at once.
      const first = label.charCodeAt(0)
      if ((first < 48 || first > 57) && known.has(foldedName(label))) {
        const names = repeatedHeader(cells, known)
        if (names !== null) return startBlock(line, names)
      }
      if (filled.last >= places.length)
        return refuse(line, 'exchange/row/too-many-cells', { cells: filled.last + 1, columns: places.length })
      if (cells.length < places.length)
        return refuse(line, 'exchange/row/too-few-cells', { cells: cells.length, columns: places.length })
      writeRow(cells, line.line)
    },
    finish: () => {
      if (refused.length > rows) throw new ThrumError('exchange/sheet/not-a-table', { rows, refused: refused.length })
      const columns = writers.map((writer) => {
        writer.fillTo(rows)
        return writer.finish()
      })
      return {
        headers,
        headerLines,
        columns,
        lines: lines.slice(0, rows),
        rows,
        blankLines,
        asides,
        refused,
        notes: [...notes, ...checkTotals(totals, columns, headers)],
      }
    },
  }
}
