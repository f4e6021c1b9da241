import type { FactBody } from '@thrum/model'
import type { FactFilter, StoredFact } from '../port.ts'
import { type Connection, prepareQuery, type Query, type SqlRow } from './connection.ts'

const columns = 'seq, id, kind, v, subject, at, "by", device, body, data'

/** A chunk ends at this many facts, or at the fact that takes its bodies and data over this many bytes. */
const chunk = { facts: 500, bytes: 4_194_304 } as const

export interface FactRows {
  factsAfter(seq: number, filter?: FactFilter): AsyncIterable<readonly StoredFact[]>
  factById(id: string): Promise<StoredFact | null>
  factsBySubject(subject: string): AsyncIterable<readonly StoredFact[]>
  factCount(): Promise<number>
  lastSeq(): Promise<number>
}

export function toFact(row: SqlRow): StoredFact {
  const [seq, id, kind, v, subject, at, by, device, body, data] = row
  return {
    seq: seq as number,
    id: id as string,
    kind: kind as string,
    v: v as number,
    subject: subject as string | null,
    at: at as string,
    by: by as string,
    device: device as string,
    body: JSON.parse(body as string) as FactBody,
    data: data as Uint8Array | null,
  }
}

/** The query for one fact by its id, used by readers and by the append. */
export function queryFactById(connection: Connection): Query {
  return prepareQuery(connection.db, `select ${columns} from fact where id = ?`)
}

export function readFactRows(connection: Connection): FactRows {
  const { db, read } = connection
  const after = prepareQuery(db, `select ${columns} from fact where seq > ?1 order by seq limit ?2`)
  const afterOfKinds = prepareQuery(
    db,
    `select ${columns} from fact where seq > ?1 and kind in (select value from json_each(?3)) order by seq limit ?2`,
  )
  const bySubject = prepareQuery(db, `select ${columns} from fact where subject = ?3 and seq > ?1 order by seq limit ?2`)
  const byId = queryFactById(connection)
  const count = prepareQuery(db, 'select count(*) from fact')
  const last = prepareQuery(db, 'select coalesce(max(seq), 0) from fact')

  // Each chunk is a read of its own: a reader that takes its time holds nothing that a writer waits for.
  async function* inChunks(query: Query, start: number, ...more: string[]): AsyncGenerator<readonly StoredFact[]> {
    for (let cursor = start; ; ) {
      const from = cursor
      const facts = await read(() => takeChunk(query.each(from, chunk.facts, ...more)))
      const end = facts.at(-1)
      if (end === undefined) return
      cursor = end.seq
      yield facts
    }
  }

  return {
    factsAfter: (seq, filter) =>
      filter?.kinds === undefined ? inChunks(after, seq) : inChunks(afterOfKinds, seq, JSON.stringify(filter.kinds)),
    factById: (id) =>
      read(() => {
        const row = byId.first(id)
        return row === undefined ? null : toFact(row)
      }),
    factsBySubject: (subject) => inChunks(bySubject, 0, subject),
    factCount: () => read(() => Number(count.first()?.[0])),
    lastSeq: () => read(() => Number(last.first()?.[0])),
  }
}

function takeChunk(rows: Iterable<SqlRow>): readonly StoredFact[] {
  const facts: StoredFact[] = []
  let bytes = 0
  for (const row of rows) {
    const fact = toFact(row)
    facts.push(fact)
    bytes += (row[8] as string).length + (fact.data?.length ?? 0)
    if (bytes >= chunk.bytes) break
  }
  return facts
}
