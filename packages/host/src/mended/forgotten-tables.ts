import type { CountsRead, Mapping } from '@thrum/exchange'
import {
  type Fact,
  type FactBody,
  type NamedColumn,
  packColumns,
  redacted,
  rowsBrought,
  sheetRead,
  unpackColumns,
} from '@thrum/model'
import { canonicalJson } from '@thrum/model/ground'
import { type Forgetting, forgettingOf, type ProjectLog, withoutForgotten } from '@thrum/store'

/** Names and places that a project is to forget. */
export async function forgettingIn(log: ProjectLog): Promise<Forgetting> {
  const bodies: FactBody[] = []
  for await (const facts of log.factsAfter(0, { kinds: [redacted.kind] })) bodies.push(...facts.map(({ body }) => body))
  return forgettingOf(bodies)
}

/** The columns of a table as the log would keep them: as a batch, without what is forgotten. */
function withoutForgottenColumns(table: string, columns: readonly NamedColumn[], forgetting: Forgetting): readonly NamedColumn[] {
  const packed = packColumns(columns)
  const body = { sheet: '', table, batch: 0, first: 0, rows: packed.rows, columns: [...packed.heads] } as unknown as FactBody
  const envelope = { id: '', subject: null, at: '', by: '', device: '' }
  const fact: Fact = { ...envelope, kind: rowsBrought.kind, v: rowsBrought.v, body, data: packed.data }
  const left = withoutForgotten(fact, [], forgetting)
  if (left === fact) return columns
  const heads = left.body.columns as unknown as (typeof packed)['heads']
  return unpackColumns({ heads, rows: packed.rows, data: left.data ?? new Uint8Array() })
}

/** A file as it was read, without the names and places that the project is to forget. */
export function withoutForgottenTables(read: CountsRead, forgetting: Forgetting): CountsRead {
  if (forgetting.names === null && forgetting.places.size === 0) return read
  const of = (table: 'count' | 'tally' | 'setAside'): readonly NamedColumn[] =>
    read.tables[table].length === 0 ? [] : withoutForgottenColumns(table, read.tables[table], forgetting)
  return { ...read, tables: { count: of('count'), tally: of('tally'), setAside: of('setAside') } }
}

/** A mapping as the log would keep it: a name that is forgotten may stand in it as what is the same for every row. */
export function withoutForgottenMapping(mapping: Mapping, forgetting: Forgetting): unknown {
  const body = { mapping: JSON.parse(canonicalJson(mapping)) } as FactBody
  const fact: Fact = { id: '', kind: sheetRead.kind, v: 1, subject: null, at: '', by: '', device: '', body, data: null }
  return withoutForgotten(fact, [], forgetting).body.mapping
}
