import { writtenOf } from '@thrum/exchange'
import {
  addressOf,
  type BodyOf,
  type Column,
  type Fact,
  type NamedColumn,
  numberAt,
  parseAddress,
  readFact,
  rowsBrought,
  sheetAccepted,
  sheetRead,
  textAt,
  unpackColumns,
} from '@thrum/model'
import type { Project } from '../project/project.ts'

/** One batch of a sheet, as its file brought it: corrections are not in it. */
export interface BroughtBatch {
  readonly id: string
  readonly table: string
  /** Row of its first row among the rows of its table in the sheet. */
  readonly first: number
  readonly rows: number
  readonly columns: ReadonlyMap<string, Column>
}

/** A file that was brought and accepted, withdrawn or not. */
export interface BroughtSheet {
  readonly sheet: string
  /** Id of its `sheet-read`: what a withdrawal of the whole file names. */
  readonly fact: string
  readonly file: string
  readonly fileHash: string
  readonly mapping: unknown
  /** The sheet of the earlier version that it mends; null where there is none. */
  readonly mends: string | null
  readonly at: string
  /** False where the file was withdrawn as a whole, or is unfinished. */
  readonly stands: boolean
  readonly batches: readonly BroughtBatch[]
  /** What was written in a cell that waits, by table, column, and row among the rows of the table in the sheet. */
  written(table: string, column: string, row: number): string | undefined
}

/** What was written in the cells that a sheet set aside; each batch is gone through once, when it is first asked. */
function writtenIn(batches: readonly BroughtBatch[]): BroughtSheet['written'] {
  let asides: readonly BroughtSheet['written'][] | null = null
  return (table, column, row) => {
    asides ??= batches
      .filter((batch) => batch.table === 'setAside')
      .map(({ columns }) => writtenOf([...columns].map(([name, own]): NamedColumn => ({ name, column: own }))))
    for (const written of asides) {
      const found = written(table, column, row)
      if (found !== undefined) return found
    }
    return undefined
  }
}

const asMap = (columns: readonly NamedColumn[]): ReadonlyMap<string, Column> =>
  new Map(columns.map(({ name, column }) => [name, column]))

function batchOf({ id, data }: Fact, body: BodyOf<typeof rowsBrought>): BroughtBatch {
  const columns = unpackColumns({ heads: body.columns, rows: body.rows, data: data ?? new Uint8Array() })
  return { id, table: body.table, first: body.first, rows: body.rows, columns: asMap(columns) }
}

/**
 * Every accepted file of a project with its rows as they were brought, in the order in which files were read. Batches that
 * were forgotten, or that this version cannot read, are left out.
 */
export async function readBroughtSheets(project: Pick<Project, 'log' | 'snapshot'>): Promise<readonly BroughtSheet[]> {
  const { log } = project
  const standing = new Set((await project.snapshot()).sheets.map(({ sheet }) => sheet))
  const read: { readonly fact: Fact; readonly body: BodyOf<typeof sheetRead> }[] = []
  const batches = new Map<string, BroughtBatch[]>()
  const accepted = new Set<string>()
  for await (const facts of log.factsAfter(0, { kinds: [sheetRead.kind, rowsBrought.kind, sheetAccepted.kind] })) {
    for (const fact of facts) {
      const understood = readFact(fact)
      if (understood.kind !== 'read') continue
      if (fact.kind === sheetRead.kind) read.push({ fact, body: understood.body as BodyOf<typeof sheetRead> })
      else if (fact.kind === sheetAccepted.kind) accepted.add((understood.body as BodyOf<typeof sheetAccepted>).sheet)
      else {
        const body = understood.body as BodyOf<typeof rowsBrought>
        batches.set(body.sheet, [...(batches.get(body.sheet) ?? []), batchOf(fact, body)])
      }
    }
  }
  return read
    .filter(({ body }) => accepted.has(body.sheet))
    .sort((a, b) => (a.fact.at < b.fact.at ? -1 : a.fact.at > b.fact.at ? 1 : a.fact.id < b.fact.id ? -1 : 1))
    .map(({ fact, body }) => {
      const own = (batches.get(body.sheet) ?? []).sort((a, b) => a.first - b.first)
      return {
        sheet: body.sheet,
        fact: fact.id,
        file: body.file,
        fileHash: body.fileHash,
        mapping: body.mapping,
        mends: body.mends ?? null,
        at: fact.at,
        stands: standing.has(body.sheet),
        batches: own,
        written: writtenIn(own),
      }
    })
}

/** A file and the earlier versions it mends, the latest first. */
export function versionsOf(latest: BroughtSheet, sheets: readonly BroughtSheet[]): readonly BroughtSheet[] {
  const byId = new Map(sheets.map((sheet) => [sheet.sheet, sheet]))
  const chain: BroughtSheet[] = []
  for (let sheet: BroughtSheet | undefined = latest; sheet !== undefined && !chain.includes(sheet); ) {
    chain.push(sheet)
    sheet = sheet.mends === null ? undefined : byId.get(sheet.mends)
  }
  return chain
}

/** The batch and the row in it of a row of a table of one sheet; null where there is none. */
export function batchRow(
  sheet: BroughtSheet,
  table: string,
  rowOfSheet: number,
): { readonly batch: BroughtBatch; readonly row: number } | null {
  const batch = sheet.batches.find((own) => own.table === table && rowOfSheet >= own.first && rowOfSheet < own.first + own.rows)
  return batch === undefined ? null : { batch, row: rowOfSheet - batch.first }
}

export function textIn(batch: BroughtBatch, column: string, row: number): string | null {
  const found = batch.columns.get(column)
  return found?.type === 'text' ? textAt(found, row) : null
}

export function numberIn(batch: BroughtBatch, column: string, row: number): number | null {
  const found = batch.columns.get(column)
  return found?.type === 'number' ? numberAt(found, row) : null
}

/** A row where it was brought. */
export interface RowPlace {
  readonly sheet: BroughtSheet
  readonly batch: BroughtBatch
  readonly row: number
}

/** Where the row of an address was brought; null where no batch has it. */
export function placeOf(sheets: readonly BroughtSheet[], address: string): RowPlace | null {
  const { fact, row } = parseAddress(address)
  for (const sheet of sheets) {
    const batch = sheet.batches.find(({ id }) => id === fact)
    if (batch !== undefined) return row >= 0 && row < batch.rows ? { sheet, batch, row } : null
  }
  return null
}

/** The count that a tally belongs to: by its row among the counts of the sheet, or by its address. */
export function countOfTally({ sheet, batch, row }: RowPlace): string | null {
  const address = textIn(batch, 'of', row)
  if (address !== null) return address
  const ordinal = numberIn(batch, 'count', row)
  const found = ordinal === null ? null : batchRow(sheet, 'count', ordinal)
  return found === null ? null : addressOf(found.batch.id, found.row)
}
