import { unpackColumns } from '../columns/codec.ts'
import type { Fact } from '../facts/fact.ts'
import { type BodyOf, rowsBrought, sheetAccepted, sheetDiscarded, sheetRead } from '../facts/kinds.ts'
import type { Sheet } from '../snapshot/snapshot.ts'
import { isTableName, type TableName } from '../tables/declarations.ts'
import type { Block } from '../tables/table-builder.ts'
import type { ReadLog } from './read-log.ts'

export interface AcceptedSheets {
  readonly sheets: readonly Sheet[]
  readonly unfinished: readonly string[]
  /** Batches of accepted sheets, in the order of their rows. */
  readonly blocks: ReadonlyMap<TableName, readonly Block[]>
  /** Sheet of each batch fact. */
  readonly sheetOf: ReadonlyMap<string, string>
  /** Batch facts of sheets that were never accepted: neither folded nor part of the digest. */
  readonly leftOut: ReadonlySet<string>
}

type Batch = { readonly fact: Fact; readonly body: BodyOf<typeof rowsBrought> }

function inRowOrder(position: ReadonlyMap<string, number>): (a: Batch, b: Batch) => number {
  const place = ({ body }: Batch): number => position.get(body.sheet) ?? 0
  return (a, b) => place(a) - place(b) || a.body.first - b.body.first || a.body.batch - b.body.batch
}

/** A sheet counts only once `sheet-accepted` is in the log, with as many batches as it promised. */
export function acceptedSheets(log: ReadLog): AcceptedSheets {
  const discarded = new Set(log.of(sheetDiscarded).map(({ body }) => body.sheet))
  const promised = new Map(log.of(sheetAccepted).map(({ body }) => [body.sheet, body.batches]))
  const batches = log.of(rowsBrought)
  const found = new Map<string, number>()
  for (const { body } of batches) found.set(body.sheet, (found.get(body.sheet) ?? 0) + 1)

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
  const blocks = new Map<TableName, Block[]>()
  const sheetOf = new Map<string, string>()
  const leftOut = new Set<string>()
  for (const { fact, body } of [...batches].sort(inRowOrder(position))) {
    if (!position.has(body.sheet) || !isTableName(body.table)) {
      leftOut.add(fact.id)
      continue
    }
    sheetOf.set(fact.id, body.sheet)
    const list = blocks.get(body.table) ?? []
    const columns = unpackColumns({ heads: body.columns, rows: body.rows, data: fact.data ?? new Uint8Array() })
    list.push({ source: fact.id, rows: body.rows, columns })
    blocks.set(body.table, list)
  }
  return { sheets, unfinished, blocks, sheetOf, leftOut }
}
