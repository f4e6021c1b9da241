import type { TextColumn } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { type Reading, valueOfReading } from '../cell/reading.ts'
import type { Mapping } from '../mapping/shape.ts'
import type { CellSource } from './cell-source.ts'
import type { TextSource } from './text-cells.ts'

/** Everything that rows say, in a form in which two rows can be compared. */
export interface ComparedCells {
  readonly texts: readonly TextSource[]
  readonly numbers: readonly { readonly column: string; readonly source: CellSource }[]
  /** Every column of the sheet, as written. */
  readonly columns: readonly TextColumn[]
  readonly lineOf: (row: number) => number
  readonly rows: number
}

export interface RowOut {
  readonly state: 'waiting' | 'refused'
  readonly because: string
  readonly values: { readonly [name: string]: string | number }
}

/** What becomes of rows that were entered more than once, or that a person decided about. */
export interface RowDecisions {
  /** Rows that go into no table. */
  readonly out: ReadonlyMap<number, RowOut>
  /** By header: readings that stand in a row instead of its own cell. */
  readonly readings: ReadonlyMap<string, ReadonlyMap<number, Reading>>
  /** By column: rows whose text is taken from another row, because their own is blank. */
  readonly textRows: ReadonlyMap<string, ReadonlyMap<number, number>>
  readonly notes: readonly Saying[]
}

/** Columns that tell two watches apart even where they share an id. */
const identity: ReadonlySet<string> = new Set(['field', 'plot', 'date'])

/** `whole-row` where two equal rows can hardly be two watches though no column names them. */
export type SameWatch = 'id' | 'whole-row' | 'nothing'

interface Difference {
  readonly header: string
  /** Undefined for texts, which cannot wait. */
  readonly reading?: Reading
}

const both = (a: Reading, b: Reading): Reading => ({
  kind: 'waiting',
  written: `${a.written.trim()} / ${b.written.trim()}`,
  because: 'exchange/row/cell-in-conflict',
})

function differs(a: Reading, b: Reading): boolean {
  if (a === b || a.kind === 'not-looked-for' || b.kind === 'not-looked-for') return false
  return a.kind !== b.kind || !Object.is(valueOfReading(a), valueOfReading(b)) || ('value' in a ? false : a.written !== b.written)
}

function textDiffers(source: TextSource, a: number, b: number): boolean {
  const first = source.codeAt(a)
  const second = source.codeAt(b)
  return first >= 0 && second >= 0 && first !== second
}

/** True where two rows cannot be one watch: their field, plot or date differ. */
function differentWatch({ texts, numbers }: ComparedCells, a: number, b: number): boolean {
  return (
    texts.some((source) => identity.has(source.column) && textDiffers(source, a, b)) ||
    numbers.some(({ column, source }) => identity.has(column) && differs(source.at(a), source.at(b)))
  )
}

function differencesOf({ texts, numbers }: ComparedCells, a: number, b: number): Difference[] {
  return [
    ...texts.filter((source) => source.column !== 'note' && textDiffers(source, a, b)).map(({ header }) => ({ header })),
    ...numbers
      .filter(({ source }) => differs(source.at(a), source.at(b)))
      .map(({ source }) => ({ header: source.header, reading: both(source.at(a), source.at(b)) })),
  ]
}

/** Rows of a sheet that are equal in every cell, mapped or not. */
function equalRows(columns: readonly TextColumn[], rows: number): readonly (readonly number[])[] {
  const equal = (a: number, b: number): boolean => columns.every(({ codes }) => codes[a] === codes[b])
  const firstOf = new Map<number, number>()
  const groups = new Map<number, number[]>()
  for (let row = 0; row < rows; row++) {
    let hash = 0x811c9dc5
    for (const { codes } of columns) hash = Math.imul(hash ^ (codes[row] as number), 0x01000193)
    // Rows of one hash that differ take the next free one.
    let first = firstOf.get(hash)
    while (first !== undefined && !equal(first, row)) first = firstOf.get(++hash)
    if (first === undefined) firstOf.set(hash, row)
    else groups.set(first, [...(groups.get(first) ?? [first]), row])
  }
  return [...groups.values()]
}

function rowsOfOneId(id: TextSource, rows: number): readonly (readonly number[])[] {
  const groups = new Map<number, number[]>()
  for (let row = 0; row < rows; row++) {
    const code = id.codeAt(row)
    if (code < 0) continue
    const known = groups.get(code)
    if (known === undefined) groups.set(code, [row])
    else known.push(row)
  }
  return [...groups.values()].filter((alike) => alike.length > 1)
}

/** Rows by what could make them one watch: a shared id, or else being equal in every cell. */
function rowsAlike({ texts, columns, rows }: ComparedCells, by: SameWatch): readonly (readonly number[])[] {
  if (by === 'nothing') return []
  const id = by === 'id' ? texts.find(({ column }) => column === 'key') : undefined
  return id === undefined ? equalRows(columns, rows) : rowsOfOneId(id, rows)
}

/**
 * Decides about rows that were entered twice: equal ones are kept once, kept or asked about, as the mapping says; rows
 * that contradict each other wait, as does every cell in which they do; different watches that share an id both stand.
 *
 * @param by what makes two rows the same watch: an id they share, or being equal in every cell
 */
export function decideRows(cells: ComparedCells, mapping: Mapping, by: SameWatch): RowDecisions {
  const out = new Map<number, RowOut>()
  const readings = new Map<string, Map<number, Reading>>()
  const textRows = new Map<string, Map<number, number>>()
  const notes: Saying[] = []
  const { lineOf, texts, numbers } = cells

  const said = (row: number): 'keep' | 'leave-out' | undefined => mapping.lines?.[String(lineOf(row))]
  if (mapping.lines !== undefined) {
    for (let row = 0; row < cells.rows; row++) {
      if (said(row) === 'leave-out') out.set(row, { state: 'refused', because: 'exchange/row/left-out', values: {} })
    }
  }
  const replace = (header: string, row: number, reading: Reading): void => {
    const known = readings.get(header) ?? new Map<number, Reading>()
    known.set(row, reading)
    readings.set(header, known)
  }
  const fillBlanks = (row: number, from: number): void => {
    for (const { source } of numbers) {
      if (source.at(row).kind === 'not-looked-for' && source.at(from).kind !== 'not-looked-for')
        replace(source.header, row, source.at(from))
    }
    for (const source of texts) {
      if (source.codeAt(row) >= 0 || source.codeAt(from) < 0) continue
      const known = textRows.get(source.column) ?? new Map<number, number>()
      known.set(row, from)
      textRows.set(source.column, known)
    }
  }
  const decidePair = (first: number, row: number): void => {
    const values = { first: lineOf(first), line: lineOf(row) }
    const differences = differencesOf(cells, first, row)
    if (differences.length > 0) {
      const headers = differences.map(({ header }) => header).join(', ')
      out.set(row, { state: 'waiting', because: 'exchange/row/in-conflict', values: { ...values, headers } })
      for (const { header, reading } of differences) if (reading !== undefined) replace(header, first, reading)
      return
    }
    if (mapping.duplicates === 'keep-all') return
    const once = mapping.duplicates === 'keep-one'
    out.set(row, {
      state: once ? 'refused' : 'waiting',
      because: once ? 'exchange/row/entered-twice' : 'exchange/row/entered-twice-asked',
      values,
    })
    if (once) fillBlanks(first, row)
  }
  for (const rows of rowsAlike(cells, by)) {
    const standing: number[] = []
    for (const row of rows) {
      if (out.has(row)) continue
      const first = said(row) === 'keep' ? undefined : standing.find((other) => !differentWatch(cells, other, row))
      if (first === undefined) {
        const other = standing[0]
        if (other !== undefined) notes.push(saying('exchange/note/shared-id', { first: lineOf(other), line: lineOf(row) }))
        standing.push(row)
      } else decidePair(first, row)
    }
  }
  return { out, readings, textRows, notes: [...notes, ...shortIds(texts)] }
}

/** Ids of digits that lack the leading zero of all others. */
function shortIds(texts: readonly TextSource[]): Saying[] {
  const ids = texts.find(({ column }) => column === 'key')?.words ?? []
  const long = ids.filter((id) => /^0\d+$/u.test(id))
  const length = long[0]?.length ?? 0
  if (long.length < 2 || long.some((id) => id.length !== length)) return []
  return ids
    .filter((id) => /^[1-9]\d*$/u.test(id) && id.length < length)
    .map((id) => saying('exchange/note/short-id', { id, proposed: id.padStart(length, '0') }))
}

/** A source in which decided readings stand in for the cells of their rows. */
export function decided<S extends CellSource>(source: S, decisions: RowDecisions): S {
  const readings = decisions.readings.get(source.header)
  return readings === undefined ? source : { ...source, at: (row: number) => readings.get(row) ?? source.at(row) }
}

export function decidedText(source: TextSource, decisions: RowDecisions): TextSource {
  const rows = decisions.textRows.get(source.column)
  if (rows === undefined) return source
  return {
    column: source.column,
    header: source.header,
    get words() {
      return source.words
    },
    codeAt: (row) => source.codeAt(rows.get(row) ?? row),
  }
}
