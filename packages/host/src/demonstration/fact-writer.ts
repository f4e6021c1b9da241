import {
  type Author,
  type Column,
  declarationOf,
  type Fact,
  type FactKind,
  makeFact,
  type NamedColumn,
  numberColumn,
  packColumns,
  rowsBrought,
  sheetAccepted,
  sheetRead,
  type TableName,
  textColumn,
} from '@thrum/model'
import { canonicalJson, sha256Hex } from '@thrum/model/ground'
import type { z } from 'zod'

/** A table of the demonstration: cells by column, null where there is none. */
export interface PlantedTable {
  readonly table: TableName
  readonly columns: { readonly [column: string]: readonly (string | null)[] | readonly (number | null)[] }
}

/** Writes facts whose ids follow from the seed and from what they say, so that one seed gives one and the same log. */
export interface FactWriter {
  one<S extends z.ZodType>(kind: FactKind<S>, body: z.infer<S>, subject: string): Fact
  /** The facts of an accepted sheet that brings these tables. */
  sheet(file: string, tables: readonly PlantedTable[]): readonly Fact[]
}

/** Name of the generator; a change of a single draw or word needs a new one. */
const generator = 'ostrel-vale/1'

function columnOf(table: TableName, name: string, cells: readonly (string | number | null)[]): NamedColumn {
  const declared = declarationOf(table, name)
  const column: Column =
    declared?.type === 'number'
      ? numberColumn(cells.map((cell) => (typeof cell === 'number' ? cell : null)))
      : textColumn(cells.map((cell) => (cell === null ? null : String(cell))))
  return declared?.unit === undefined ? { name, column } : { name, unit: declared.unit, column }
}

export function createFactWriter(seed: string, author: Author): FactWriter {
  const idOf = (...parts: readonly unknown[]): string => sha256Hex(canonicalJson([generator, seed, ...parts]))
  const one: FactWriter['one'] = (kind, body, subject) => makeFact(kind, body, author, { id: idOf(kind.kind, body), subject })

  const sheet: FactWriter['sheet'] = (file, tables) => {
    const text = canonicalJson(tables)
    const id = idOf('sheet', file, text)
    const rows = tables.map(({ columns }) => Object.values(columns)[0]?.length ?? 0)
    const read = rows[0] ?? 0
    const batches = tables.map(({ table, columns }) => {
      const packed = packColumns(Object.entries(columns).map(([name, cells]) => columnOf(table, name, cells)))
      const body = { sheet: id, table, batch: 0, first: 0, rows: packed.rows, columns: [...packed.heads] }
      return makeFact(rowsBrought, body, author, { id: idOf(id, table), subject: id, data: packed.data })
    })
    const body = {
      sheet: id,
      file,
      fileHash: sha256Hex(text),
      bytes: text.length,
      mapping: { madeBy: generator, seed },
      rows: { read, accepted: read, waiting: 0, refused: 0 },
      notes: [],
    }
    return [
      makeFact(sheetRead, body, author, { id: idOf(id, 'read'), subject: id }),
      ...batches,
      makeFact(sheetAccepted, { sheet: id, batches: batches.length }, author, { id: idOf(id, 'accepted'), subject: id }),
    ]
  }
  return { one, sheet }
}
