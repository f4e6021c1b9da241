import { type Saying, saying, sha256Hex, ThrumError } from '@thrum/model/ground'
import { decodeBytes } from './decode-bytes.ts'
import { detectDelimiter } from './detect-delimiter.ts'
import { findHeader, type SplitLine } from './find-header.ts'
import type { FileFacts, Sheet } from './sheet.ts'
import { splitCells } from './split-cells.ts'
import { createTable, type TableWriter } from './table-writer.ts'

/** Lines among which the header is looked for. */
const headLines = 60

/**
 * Reads the bytes of a delimited text as a table of texts. Titles, totals, foot notes, blank lines and repeated headers
 * are told apart and kept as notes; lines that should be rows and are not are refused one by one, with the reason.
 *
 * @param facts what a person said about the file, where the reading should not be left to detection
 * @throws ThrumError exchange/file/* where it is no text, exchange/sheet/* where it is no table; then nothing was read
 */
export function readSheet(bytes: Uint8Array, facts: FileFacts = {}): Sheet {
  const decoded = decodeBytes(bytes, facts.encoding)
  const delimiter = facts.delimiter ?? detectDelimiter(decoded.text)
  if (delimiter === null) throw new ThrumError('exchange/sheet/not-a-table')

  const head: SplitLine[] = []
  let table: TableWriter | null = null
  const begin = (): TableWriter => {
    const header = findHeader(head, facts.header)
    const writer = createTable(header, head)
    const first = (header.at.at(-1) ?? 0) + 1
    for (const line of head.slice(first)) writer.take(line)
    return writer
  }
  splitCells(decoded.text, delimiter, (cells, line, strayQuote) => {
    if (table !== null) table.take({ cells, line, strayQuote })
    else {
      head.push({ cells, line, strayQuote })
      if (head.length >= headLines) table = begin()
    }
  })
  const { headers, columns, ...body } = (table ?? begin()).finish()
  if (body.rows + body.refused.length === 0) throw new ThrumError('exchange/sheet/no-rows')
  return {
    bytes: bytes.length,
    fileHash: sha256Hex(bytes),
    encoding: decoded.encoding,
    delimiter,
    lineEnds: decoded.lineEnds,
    headers,
    columns,
    ...body,
    notes: [...decoded.notes, ...body.notes, ...delimiterNote(delimiter)],
  }
}

/** True where nothing is said about the file that reading it by detection could have found otherwise. */
export function isReadByDetection({ encoding, delimiter, header }: FileFacts = {}): boolean {
  return encoding === undefined && delimiter === undefined && header === undefined
}

function delimiterNote(delimiter: Sheet['delimiter']): Saying[] {
  return delimiter === ',' ? [] : [saying('exchange/note/delimiter', { delimiter: delimiter === '\t' ? 'tab' : delimiter })]
}
