import { unpackColumns } from '../columns/codec.ts'
import type { Fact } from '../facts/fact.ts'
import { type BodyOf, redacted, rowsBrought, sheetAccepted, sheetDiscarded, sheetRead, withdrawn } from '../facts/kinds.ts'
import { isOfSheet } from '../facts/of-sheet.ts'
import type { Sheet } from '../snapshot/snapshot.ts'
import { isTableName, type TableName } from '../tables/declarations.ts'
import type { Block } from '../tables/table-builder.ts'
import { type ReadLog, readLog } from './read-log.ts'

export interface AcceptedSheets {
  readonly sheets: readonly Sheet[]
  readonly unfinished: readonly string[]
  /** Batches of accepted sheets, in the order of their rows. */
  readonly blocks: ReadonlyMap<TableName, readonly SheetBlock[]>
}

/** A batch of an accepted sheet. Its columns are unpacked when they are asked for, so that few lie unpacked at any moment. */
export interface SheetBlock extends Block {
  readonly sheet: string
  /** Row of its first row among the rows of its table in the sheet. */
  readonly first: number
}

type Batch = { readonly fact: Fact; readonly body: BodyOf<typeof rowsBrought> }

function inRowOrder(position: ReadonlyMap<string, number>): (a: Batch, b: Batch) => number {
  const place = ({ body }: Batch): number => position.get(body.sheet) ?? 0
  return (a, b) => place(a) - place(b) || a.body.first - b.body.first || a.body.batch - b.body.batch
}

/** Sheets for which `sheet-accepted` is in the log, whatever became of them later. */
export function everAccepted(log: ReadLog): ReadonlySet<string> {
  return new Set(
    log.entries
      .filter(({ fact }) => fact.kind === sheetAccepted.kind)
      .map(({ body }) => (body as BodyOf<typeof sheetAccepted>).sheet),
  )
}

/** True for what a sheet brought before it was accepted: it is neither folded nor part of the digest. */
export function waitsForAcceptance(fact: Fact, accepted: ReadonlySet<string>): boolean {
  return isOfSheet(fact) && !accepted.has(fact.subject ?? '')
}

/** Batches of each sheet that the log holds, those emptied by a redaction among them. */
function batchesFound(log: ReadLog): ReadonlyMap<string, number> {
  const found = new Map<string, number>()
  for (const { kind, subject } of log.facts) {
    if (kind === rowsBrought.kind && subject !== null) found.set(subject, (found.get(subject) ?? 0) + 1)
  }
  return found
}

/** A sheet counts only once `sheet-accepted` is in the log, with as many batches as it promised. */
export function acceptedSheets(log: ReadLog): AcceptedSheets {
  const discarded = new Set(log.of(sheetDiscarded).map(({ body }) => body.sheet))
  const promised = new Map(log.of(sheetAccepted).map(({ body }) => [body.sheet, body.batches]))
  const found = batchesFound(log)

  const sheets: Sheet[] = []
  const unfinished: string[] = []
  for (const { fact, body } of log.of(sheetRead)) {
    if (discarded.has(body.sheet)) continue
    if (promised.get(body.sheet) !== (found.get(body.sheet) ?? 0)) unfinished.push(body.sheet)
    else
      sheets.push({
        sheet: body.sheet,
        file: body.file,
        fileHash: body.fileHash,
        rows: body.rows,
        notes: body.notes,
        mapping: body.mapping,
        at: fact.at,
      })
  }
  const position = new Map(sheets.map(({ sheet }, k) => [sheet, k]))
  const blocks = new Map<TableName, SheetBlock[]>()
  for (const { fact, body } of [...log.of(rowsBrought)].sort(inRowOrder(position))) {
    if (!position.has(body.sheet) || !isTableName(body.table)) continue
    const list = blocks.get(body.table) ?? []
    list.push({
      source: fact.id,
      rows: body.rows,
      sheet: body.sheet,
      first: body.first,
      get columns() {
        return unpackColumns({ heads: body.columns, rows: body.rows, data: fact.data ?? new Uint8Array() })
      },
    })
    blocks.set(body.table, list)
  }
  return { sheets, unfinished, blocks }
}

/** Kinds of facts on which it hangs whether a sheet counts. */
export const sheetKinds: readonly string[] = [sheetRead, rowsBrought, sheetAccepted, sheetDiscarded, withdrawn, redacted].map(
  ({ kind }) => kind,
)

/** The names of the sheets that count, from facts of these kinds, with the bytes of their batches or without. */
export function countedSheets(facts: Iterable<Fact>): ReadonlySet<string> {
  return new Set(acceptedSheets(readLog(facts)).sheets.map(({ sheet }) => sheet))
}
