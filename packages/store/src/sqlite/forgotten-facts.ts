import { type Fact, type FactBody, isForgotten, parseAddress, spokenOf } from '@thrum/model'
import { canonicalJson } from '@thrum/model/ground'
import {
  type Forgetting,
  forgettingOf,
  quotesPlace,
  withoutForgotten,
  withoutQuotedPlace,
  withoutSaying,
} from '../fact/forgetting.ts'
import type { StoredFact } from '../port.ts'
import { type Connection, prepareQuery } from './connection.ts'
import { queryFactById, toFact } from './fact-rows.ts'

/** Facts read at once while a whole log is gone through. */
const atOnce = 200

/** What is to be forgotten in a project file, and the means to do so. Everything here runs inside the caller's transaction. */
export interface ForgottenFacts {
  /** False in nearly every project: nothing at all was ever to be forgotten. */
  isAny(): boolean
  /** Names and places that are forgotten, as the log says now. */
  forgetting(): Forgetting
  /** Rows of a fact (-1: all of it) that are forgotten. */
  rowsOf(id: string): readonly number[]
  /** True for a correction, a settlement or a withdrawal of something forgotten. */
  speaksOfForgotten(fact: Fact): boolean
  /** The fact without what is forgotten of it. */
  without<F extends Fact>(fact: F): F
  /** Goes through the facts and peers that are there, and takes out of each what is forgotten. */
  sweep(): void
  /** The same for one fact. */
  sweepOne(id: string): void
  /** The same for all corrections, settlements and withdrawals. */
  sweepSpeaking(): void
  /** The same for corrections of one fact: what they quote may have been said of a place only now. */
  sweepCorrectionsOf(id: string): void
}

export function createForgottenFacts(connection: Connection): ForgottenFacts {
  const { db } = connection
  const empty = db.prepare('update fact set subject = ?, "by" = ?, body = ?, data = ? where seq = ?')
  const dropDerived = db.prepare('delete from derived')
  const byId = queryFactById(connection)
  const any = prepareQuery(db, `select 1 from fact where kind = 'redacted' limit 1`)
  // Everything that starts with the id and '#', or is the id: '$' is the character after '#'.
  const rows = prepareQuery(
    db,
    `select body ->> 'of' from fact where kind = 'redacted' and body ->> 'of' >= ?1 and body ->> 'of' < ?1 || '$'`,
  )
  const wherever = prepareQuery(db, `select body from fact where kind = 'redacted' and body ->> 'of' is null`)
  const after = prepareQuery(
    db,
    `select seq, id, kind, v, subject, at, "by", device, body, data from fact where seq > ? order by seq limit ${atOnce}`,
  )
  const isNamed = prepareQuery(db, `select 1 from fact where kind = 'redacted' and body ->> 'of' = ?`)
  const speaking = prepareQuery(
    db,
    `select seq, id, kind, v, subject, at, "by", device, body, data from fact where kind in ('amended', 'cell-settled', 'withdrawn')`,
  )
  const correctionsOf = prepareQuery(
    db,
    `select seq, id, kind, v, subject, at, "by", device, body, data from fact where kind = 'amended' and body ->> 'of' = ?`,
  )
  const peers = prepareQuery(db, 'select id, name from peer')
  const namePeer = db.prepare('update peer set name = ? where id = ?')
  let known: { readonly text: string; readonly forgetting: Forgetting } | null = null

  const forgetting = (): Forgetting => {
    const bodies = wherever.all().map(([body]) => body as string)
    const text = bodies.join('\n')
    if (known?.text !== text) known = { text, forgetting: forgettingOf(bodies.map((body) => JSON.parse(body) as FactBody)) }
    return known.forgetting
  }
  const rowsOf = (id: string): readonly number[] =>
    rows
      .all(id)
      .map(([of]) => parseAddress(of as string))
      .filter((address) => address.fact === id)
      .map((address) => address.row)
  const factOf = (id: string): Fact | undefined => {
    const row = byId.first(id)
    return row === undefined ? undefined : toFact(row)
  }
  const isOfForgottenPlace = (id: string, places: ReadonlySet<string>): boolean => {
    const field = factOf(id)?.body.field
    return typeof field === 'string' && places.has(field)
  }
  const speaksOfForgotten = (fact: Fact): boolean => {
    const of = spokenOf(fact)
    return of !== null && isForgotten(of, (address) => isNamed.first(address) !== undefined, factOf)
  }
  const without = <F extends Fact>(fact: F): F => {
    const more = forgetting()
    const said = speaksOfForgotten(fact) ? withoutSaying(fact) : fact
    const left = withoutForgotten(said, rowsOf(fact.id), more)
    const quotes = more.places.size > 0 && fact.kind === 'amended' && quotesPlace(left)
    return quotes && isOfForgottenPlace(String(left.body.of), more.places) ? withoutQuotedPlace(left) : left
  }
  const put = (held: StoredFact): void => {
    const left = without(held)
    if (left === held) return
    empty.run(left.subject, left.by, canonicalJson(left.body), left.data, held.seq)
    // Whatever was worked out from it may still hold it.
    dropDerived.run()
  }
  const sweepPeers = (): void => {
    const { names } = forgetting()
    if (names === null) return
    for (const [id, name] of peers.all()) namePeer.run(names.without(name as string), id as string)
  }

  return {
    isAny: () => any.first() !== undefined,
    forgetting,
    rowsOf,
    speaksOfForgotten,
    without,
    sweep: () => {
      for (let cursor = 0; ; ) {
        const facts = after.all(cursor).map(toFact)
        const last = facts.at(-1)
        if (last === undefined) break
        for (const fact of facts) put(fact)
        cursor = last.seq
      }
      sweepPeers()
    },
    sweepOne: (id) => {
      const row = byId.first(id)
      if (row !== undefined) put(toFact(row))
    },
    sweepSpeaking: () => {
      for (const fact of speaking.all().map(toFact)) put(fact)
    },
    sweepCorrectionsOf: (id) => {
      for (const fact of correctionsOf.all(id).map(toFact)) put(fact)
    },
  }
}
