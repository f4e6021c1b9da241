import {
  type CountsRead,
  describeRead,
  type Mapping,
  plainName,
  proposeMapping,
  readCounts,
  readSheet,
  type Sheet,
  sheetFacts,
  words,
} from '@thrum/exchange'
import { createLogicalClock, foldFacts, mark } from '@thrum/model'
import { type Saying, type SayingValue, ThrumError, unwatched } from '@thrum/model/ground'
import { numbersOf, textsOf } from '../files.ts'
import { linesUnaccounted } from './lines-unaccounted.ts'

/** What became of one file: refused with a code, or read; anything else is a failure. */
export type Outcome =
  | { readonly kind: 'refused'; readonly code: string }
  | {
      readonly kind: 'read'
      readonly accepted: number
      readonly waiting: number
      readonly refused: number
      readonly cells: number
    }
  | { readonly kind: 'failed'; readonly because: string }

const failed = (because: string): Outcome => ({ kind: 'failed', because })

function withoutWords(saying: Saying): string[] {
  const inner = (value: SayingValue): string[] =>
    typeof value === 'string' || typeof value === 'number'
      ? []
      : 'id' in value
        ? withoutWords(value)
        : value.flatMap(withoutWords)
  return [...(words[saying.id] === undefined ? [saying.id] : []), ...Object.values(saying.values).flatMap(inner)]
}

function refusal(error: unknown): Outcome {
  if (!(error instanceof ThrumError))
    return failed(`crash: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`)
  const missing = [...withoutWords(error.saying), ...withoutWords(error.remedy)]
  return missing.length > 0 ? failed(`no words for ${missing.join(', ')}`) : { kind: 'refused', code: error.code }
}

/**
 * Prints every clean count of a wide sheet back: it must equal what was written, or its reading must be shown.
 * Kinds that are the sum of several columns are left out, and so are rows in which another line filled a blank.
 */
function printBack(sheet: Sheet, mapping: Mapping, read: CountsRead): { readonly cells: number; readonly wrong: string | null } {
  if (mapping.shape !== 'wide' || read.tallies === 0) return { cells: 0, wrong: null }
  const headerOf = new Map<string, string[]>()
  for (const { as, kind, header } of mapping.columns) {
    if (as === 'tally') headerOf.set(plainName(kind ?? header), [...(headerOf.get(plainName(kind ?? header)) ?? []), header])
  }
  const rowOfLine = new Map(Array.from(sheet.lines, (line, row) => [line, row]))
  const lines = numbersOf(read.tables.count, 'line')
  const kinds = textsOf(read.tables.tally, 'kind')
  const counts = numbersOf(read.tables.tally, 'count')
  const column = read.tables.tally.find(({ name }) => name === 'number')?.column
  const shown = new Set(read.shown.map((one) => JSON.stringify([one.column, one.written, one.value])))
  let cells = 0
  for (let tally = 0; tally < read.tallies; tally++) {
    if (column?.type !== 'number' || (column.marks?.[tally] ?? mark.asWritten) !== mark.asWritten) continue
    const headers = headerOf.get(kinds[tally] ?? '') ?? []
    const header = headers[0] ?? ''
    const cellsOf = sheet.columns[sheet.headers.indexOf(header)]
    const row = rowOfLine.get(lines[counts[tally] ?? -1] ?? -1) ?? -1
    const written = (cellsOf?.dictionary[cellsOf.codes[row] ?? -1] ?? '').trim()
    if (headers.length !== 1 || written === '') continue
    cells++
    const value = column.values[tally]
    if (String(value) !== written && !shown.has(JSON.stringify([header, written, value]))) {
      return { cells, wrong: `"${written}" became ${value} in silence, column ${header}` }
    }
  }
  return { cells, wrong: null }
}

/** Reads a file as a person would bring it: as proposed, with the answers that a proposal leaves open. */
export async function checkInput(bytes: Uint8Array, given: Mapping | null): Promise<Outcome> {
  let sheet: Sheet
  let read: CountsRead
  let mapping: Mapping
  try {
    sheet = readSheet(bytes, given?.file)
    mapping = given ?? { ...proposeMapping(sheet).mapping, effort: 'not recorded' }
    read = await readCounts(sheet, mapping, unwatched)
  } catch (error) {
    return refusal(error)
  }
  const { rows } = read
  if (rows.accepted + rows.waiting + rows.refused !== rows.read) return failed(`rows do not add up: ${JSON.stringify(rows)}`)
  if (rows.read !== sheet.rows + sheet.refused.length) return failed('rows in differ from rows of the sheet')
  const lines = linesUnaccounted(bytes, sheet, given)
  if (lines !== 0) return failed(`${lines} lines of the file are in no row, note or refusal`)
  const missing = describeRead(read).flatMap(withoutWords)
  if (missing.length > 0) return failed(`no words for ${missing.join(', ')}`)
  const { cells, wrong } = printBack(sheet, mapping, read)
  if (wrong !== null) return failed(wrong)
  try {
    const clock = createLogicalClock({ now: () => 0, monotonic: () => 0, zone: () => 'UTC' }, 'trial')
    const author = { by: 'trial', device: 'trial', clock }
    const { tables } = foldFacts(sheetFacts({ project: 'project-trial', file: 'mutated.csv', bytes, mapping, read, author }))
    if (tables.count.rows !== read.counts || tables.tally.rows !== read.tallies)
      return failed('folded rows differ from rows read')
    const aside = new Set(Array.from(tables.setAside.columns.line.values)).size
    if (aside !== rows.waiting + rows.refused) return failed('lines set aside differ from lines told')
  } catch (error) {
    return failed(`facts: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`)
  }
  return { kind: 'read', accepted: rows.accepted, waiting: rows.waiting, refused: rows.refused, cells }
}
