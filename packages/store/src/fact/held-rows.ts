import { type BodyOf, type FactBody, numberAt, readFact, rowsBrought, textAt, unpackColumns } from '@thrum/model'

/** A row that an earlier version of a file brought and a mended version still has. */
export interface HeldRow {
  readonly batch: string
  readonly row: number
}

/** The rows that a batch of the table `heldLine` names; none where it was emptied, or cannot be read by this version. */
export function heldRows(body: FactBody, data: Uint8Array | null): readonly HeldRow[] {
  const understood = readFact({ kind: rowsBrought.kind, v: rowsBrought.v, body })
  if (understood.kind !== 'read' || data === null) return []
  const { columns: heads, rows } = understood.body as BodyOf<typeof rowsBrought>
  const columns = new Map(unpackColumns({ heads, rows, data }).map(({ name, column }) => [name, column]))
  const source = columns.get('source')
  const row = columns.get('row')
  if (source?.type !== 'text' || row?.type !== 'number') return []
  return Array.from({ length: rows }, (_, at): HeldRow => ({ batch: textAt(source, at) ?? '', row: numberAt(row, at) ?? -1 }))
}
