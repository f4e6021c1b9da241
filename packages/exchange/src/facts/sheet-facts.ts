import {
  type Author,
  type Fact,
  factorDescribed,
  makeFact,
  type NamedColumn,
  packColumns,
  rowsBrought,
  rowsOf,
  sheetAccepted,
  sheetRead,
} from '@thrum/model'
import { canonicalJson, type Saying, sha256Hex } from '@thrum/model/ground'
import type { Mapping } from '../mapping/shape.ts'
import type { CountsRead } from '../rows/counts-read.ts'

/** Rows of one batch fact at most. */
const rowsOfBatch = 65_536

/** What a sheet becomes facts with. `project` is the project's id, `file` the name the file had. */
export interface SheetToBring {
  readonly project: string
  readonly file: string
  readonly bytes: Uint8Array
  readonly mapping: Mapping
  readonly read: CountsRead
  readonly author: Author
  /** Where the file is a mended one: the sheet it mends, and what identifies the part of it that is new. */
  readonly mends?: { readonly sheet: string; readonly content: string }
}

/**
 * The id of a sheet: the same project, bytes and mapping give the same id on every machine. Of a mended file only what is
 * new is brought, so the sheet it mends and that part belong to its id.
 */
export function sheetId(project: string, fileHash: string, mapping: Mapping, mends?: SheetToBring['mends']): string {
  const more = mends === undefined ? [] : [mends.sheet, mends.content]
  return sha256Hex(canonicalJson([project, fileHash, mapping, ...more]))
}

function sliceOf({ name, unit, column }: NamedColumn, from: number, to: number): NamedColumn {
  const named = unit === undefined ? { name } : { name, unit }
  if (column.type === 'number') {
    const marks = column.marks?.subarray(from, to) ?? null
    const marked = marks?.some((mark) => mark !== 0) ?? false
    return { ...named, column: { type: 'number', values: column.values.subarray(from, to), marks: marked ? marks : null } }
  }
  const codes = column.codes.subarray(from, to)
  const whole = rowsOf(column) === codes.length
  if (whole) return { ...named, column }
  // A batch carries only the words its own rows use.
  const newCode = new Map<number, number>()
  const dictionary: string[] = []
  const own = codes.map((code) => {
    if (code < 0) return -1
    const known = newCode.get(code)
    if (known !== undefined) return known
    newCode.set(code, dictionary.length)
    return dictionary.push(column.dictionary[code] ?? '') - 1
  })
  return { ...named, column: { type: 'text', codes: own, dictionary } }
}

/** Values of a note as a fact keeps them: flat texts and numbers. */
function flatNote({ id, values }: Saying): { id: string; values: { [name: string]: string | number } } {
  const flat = Object.entries(values).map(([name, value]): [string, string | number] => [
    name,
    typeof value === 'string' || typeof value === 'number' ? value : canonicalJson(value),
  ])
  return { id, values: Object.fromEntries(flat) }
}

/**
 * The facts that bring a sheet: `sheet-read`, the batches of its tables, what the mapping says about factors, and last
 * `sheet-accepted`. Ids are hashes, so that the same file brought twice is the same facts.
 */
export function* sheetFacts(sheet: SheetToBring): Generator<Fact> {
  const { project, file, bytes, mapping, read, author, mends } = sheet
  const { fileHash } = read
  const id = sheetId(project, fileHash, mapping, mends)
  const idOf = (...parts: readonly (string | number)[]): string => sha256Hex(canonicalJson([id, ...parts]))

  yield makeFact(
    sheetRead,
    {
      sheet: id,
      file,
      fileHash,
      bytes: bytes.length,
      mapping: JSON.parse(canonicalJson(mapping)),
      rows: read.rows,
      notes: read.notes.map(flatNote),
      ...(mends === undefined ? {} : { mends: mends.sheet }),
    },
    author,
    { id: idOf('sheet-read'), subject: id },
  )
  for (const [factor, assigned] of Object.entries(mapping.assigned ?? {})) {
    yield makeFact(factorDescribed, { factor, assigned }, author, { id: idOf('factor', factor), subject: id })
  }
  let batches = 0
  for (const [table, columns] of Object.entries(read.tables)) {
    const rows = columns[0] === undefined ? 0 : rowsOf(columns[0].column)
    for (let first = 0, batch = 0; first < rows; first += rowsOfBatch, batch++) {
      const packed = packColumns(columns.map((column) => sliceOf(column, first, Math.min(rows, first + rowsOfBatch))))
      batches++
      yield makeFact(rowsBrought, { sheet: id, table, batch, first, rows: packed.rows, columns: [...packed.heads] }, author, {
        id: idOf(table, batch),
        subject: id,
        data: packed.data,
      })
    }
  }
  yield makeFact(sheetAccepted, { sheet: id, batches }, author, { id: idOf('sheet-accepted'), subject: id })
}
