import { type FactBody, rowsBrought } from '@thrum/model'
import { type Forgetting, mayHoldPlace } from '../fact/forgetting.ts'
import type { Names } from '../fact/forgotten-names.ts'
import { holdsName } from '../fact/forgotten-text.ts'
import { type HeldRow, heldRows } from '../fact/held-rows.ts'
import { type Connection, prepareQuery, type SqlRow } from './connection.ts'
import type { ForgottenFacts } from './forgotten-facts.ts'

/** Original files that hold what is forgotten: they go, and don't come back. All inside the caller's transaction. */
export interface ForgottenFiles {
  /** True where a file may not be kept: a sheet read from it had something forgotten, or its text holds a forgotten name. */
  mustGo(hash: string, media: string, parts: () => Iterable<Uint8Array>): boolean
  /** Drops the files of these sheets that hold what is forgotten. */
  dropOfSheets(sheets: Iterable<string>): void
  /** Drops the files of mended versions that hold a forgotten row of this batch, which an earlier version brought. */
  dropWithRowsOf(batch: string): void
  /** Drops every file that holds what is forgotten. */
  dropAll(): void
}

export function createForgottenFiles(connection: Connection, facts: ForgottenFacts): ForgottenFiles {
  const { db } = connection
  const ofSheet = prepareQuery(
    db,
    `select id, kind, body, data from fact where subject = ? and kind in ('sheet-read', 'rows-brought') order by kind desc`,
  )
  const sheetsWithRowsOf = prepareQuery(
    db,
    `select distinct subject from fact where kind = 'rows-brought' and body ->> 'table' = 'heldLine' and instr(body, ?) > 0`,
  )
  const sheetsOfFile = prepareQuery(
    db,
    `select distinct body ->> 'sheet' from fact where kind = 'sheet-read' and body ->> 'fileHash' = ?`,
  )
  const heads = prepareQuery(db, 'select hash, media from attachment')
  const parts = prepareQuery(db, 'select bytes from attachment_part where hash = ? order by part')
  const dropParts = db.prepare('delete from attachment_part where hash = ?')
  const drop = db.prepare('delete from attachment where hash = ?')

  const holdsForgottenRow = (held: readonly HeldRow[]): boolean =>
    [...Map.groupBy(held, ({ batch }) => batch)].some(([batch, own]) => {
      const gone = new Set(facts.rowsOf(batch))
      return gone.has(-1) || own.some(({ row }) => gone.has(row))
    })
  const isTouched = ([id, kind, text, data]: SqlRow, { names, places }: Forgetting): boolean => {
    if ((names?.heldOne(text as string) ?? false) || facts.rowsOf(id as string).length > 0) return true
    const body = JSON.parse(text as string) as FactBody
    if (places.size > 0 && mayHoldPlace({ body }, places)) return true
    return kind === rowsBrought.kind && body.table === 'heldLine' && holdsForgottenRow(heldRows(body, data as Uint8Array | null))
  }
  const isSheetTouched = (sheet: string, forgetting: Forgetting): boolean =>
    ofSheet.all(sheet).some((fact) => isTouched(fact, forgetting))
  const textHolds = (media: string, names: Names | null, bytes: Iterable<Uint8Array>): boolean =>
    names !== null && media.startsWith('text/') && holdsName(bytes, names)
  const keptParts = function* (hash: string): Generator<Uint8Array> {
    for (const [bytes] of parts.each(hash)) yield bytes as Uint8Array
  }
  const dropOne = (hash: string): void => {
    dropParts.run(hash)
    drop.run(hash)
  }
  const mustGo: ForgottenFiles['mustGo'] = (hash, media, bytes) => {
    if (!facts.isAny()) return false
    const forgetting = facts.forgetting()
    const sheets = sheetsOfFile.all(hash).map(([sheet]) => String(sheet))
    return sheets.some((sheet) => isSheetTouched(sheet, forgetting)) || textHolds(media, forgetting.names, bytes())
  }
  const dropOfSheets: ForgottenFiles['dropOfSheets'] = (sheets) => {
    const forgetting = facts.forgetting()
    for (const sheet of sheets) {
      if (!isSheetTouched(sheet, forgetting)) continue
      for (const [, kind, body] of ofSheet.all(sheet)) {
        const { fileHash } = JSON.parse(body as string) as FactBody
        if (kind === 'sheet-read' && typeof fileHash === 'string') dropOne(fileHash)
      }
    }
  }
  return {
    mustGo,
    dropOfSheets,
    dropWithRowsOf: (batch) => dropOfSheets(sheetsWithRowsOf.all(batch).map(([sheet]) => String(sheet))),
    dropAll: () => {
      for (const [hash, media] of heads.all()) {
        if (mustGo(hash as string, media as string, () => keptParts(hash as string))) dropOne(hash as string)
      }
    },
  }
}
