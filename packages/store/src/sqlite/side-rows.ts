import type { Derived, Peer } from '../port.ts'
import { type Connection, prepareQuery } from './connection.ts'
import type { ForgottenFacts } from './forgotten-facts.ts'

/** Caches: worked out from facts, gone without loss. */
export function readDerivedRows(connection: Connection): { derived(key: string): Promise<Derived | null> } {
  const byKey = prepareQuery(connection.db, 'select digest, bytes from derived where key = ?')
  return {
    derived: (key) =>
      connection.read(() => {
        const row = byKey.first(key)
        return row === undefined ? null : { digest: row[0] as string, bytes: row[1] as Uint8Array }
      }),
  }
}

export function writeDerivedRows(connection: Connection): {
  keepDerived(key: string, derived: Derived): Promise<void>
  forgetDerived(): Promise<void>
} {
  const { db, write } = connection
  const keep = db.prepare('insert or replace into derived (key, digest, bytes) values (?, ?, ?)')
  const forget = db.prepare('delete from derived')
  return {
    keepDerived: async (key, { digest, bytes }) => void (await write(() => keep.run(key, digest, bytes))),
    forgetDerived: async () => void (await write(() => forget.run())),
  }
}

/** Who this project was exchanged with, and how far. */
export function readPeerRows(connection: Connection): { peers(): Promise<readonly Peer[]> } {
  const all = prepareQuery(connection.db, 'select id, name, key, sent, received from peer order by id')
  return {
    peers: () =>
      connection.read(() =>
        all.all().map(([id, name, key, sent, received]) => ({
          id: id as string,
          name: name as string,
          key: key as string,
          sent: sent as number,
          received: received as number,
        })),
      ),
  }
}

export function writePeerRows(
  connection: Connection,
  forgotten: Pick<ForgottenFacts, 'forgetting'>,
): { keepPeer(peer: Peer): Promise<void> } {
  const keep = connection.db.prepare('insert or replace into peer (id, name, key, sent, received) values (?, ?, ?, ?, ?)')
  return {
    keepPeer: async ({ id, name, key, sent, received }) =>
      void (await connection.write(() => {
        const { names } = forgotten.forgetting()
        keep.run(id, names?.without(name) ?? name, key, sent, received)
      })),
  }
}
