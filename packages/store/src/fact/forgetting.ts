import {
  type BodyOf,
  type Column,
  type Fact,
  type Json,
  mark,
  type NamedColumn,
  packColumns,
  parseAddress,
  readFact,
  redacted,
  rowsBrought,
  sheetAccepted,
  unpackColumns,
} from '@thrum/model'
import { emptiedBody } from './sheet-of.ts'

/** Kinds the log itself needs: what must stay forgotten, and which sheets count. They hold nothing to forget. */
const neverEmptied: ReadonlySet<string> = new Set([redacted.kind, sheetAccepted.kind])

/** Which fact and row (-1: the whole fact) a `redacted` fact names; null for every other fact. */
export function whatIsForgotten(fact: Fact): { readonly fact: string; readonly row: number } | null {
  const of = fact.kind === redacted.kind ? fact.body.of : null
  return typeof of === 'string' ? parseAddress(of) : null
}

/**
 * The fact without what was to be forgotten: the whole body (-1 among `rows`), or single rows of a batch.
 * The envelope stays, so that a merge can't bring the body back; so do the hashes that tell which sheet it was of. Emptying twice equals emptying once, in any order.
 *
 * A batch of a newer version can't be opened here and is returned as it is, unless all of it is to be forgotten.
 */
export function withoutForgotten<F extends Fact>(fact: F, rows: readonly number[]): F {
  if (rows.length === 0 || neverEmptied.has(fact.kind)) return fact
  if (rows.includes(-1)) return { ...fact, body: emptiedBody(fact), data: null }
  const understood = fact.kind === rowsBrought.kind ? readFact(fact) : null
  if (understood?.kind !== 'read' || fact.data === null) return fact
  const body = understood.body as BodyOf<typeof rowsBrought>
  const columns = unpackColumns({ heads: body.columns, rows: body.rows, data: fact.data })
  const within = rows.filter((row) => row < body.rows)
  if (within.length === 0) return fact
  const packed = packColumns(columns.map((named): NamedColumn => ({ ...named, column: withoutRows(named.column, within) })))
  // Heads are plain JSON; their type says so only by its shape.
  return { ...fact, body: { ...fact.body, columns: packed.heads as unknown as Json }, data: packed.data }
}

function withoutRows(column: Column, rows: readonly number[]): Column {
  if (column.type === 'number') {
    const values = column.values.slice()
    const marks = column.marks?.slice() ?? new Uint8Array(values.length).fill(mark.asWritten)
    for (const row of rows) {
      values[row] = Number.NaN
      marks[row] = mark.lost
    }
    return { type: 'number', values, marks }
  }
  const codes = column.codes.slice()
  for (const row of rows) codes[row] = -1
  // A text that no other row holds must leave the dictionary too.
  const used = new Set(codes)
  const newCode = new Map<number, number>()
  const dictionary = column.dictionary.filter((_, code) => {
    if (used.has(code)) newCode.set(code, newCode.size)
    return used.has(code)
  })
  return { type: 'text', codes: codes.map((code) => newCode.get(code) ?? -1), dictionary }
}
