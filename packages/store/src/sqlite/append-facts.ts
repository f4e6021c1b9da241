import { type Fact, factEnvelope, parseAddress } from '@thrum/model'
import { canonicalJson } from '@thrum/model/ground'
import { storeError } from '../errors.ts'
import { whatIsForgotten, withoutForgotten } from '../fact/forgetting.ts'
import { isSameCopy, keptOfTwo } from '../fact/kept-of-two.ts'
import type { Appended } from '../port.ts'
import { type Connection, prepareQuery } from './connection.ts'
import { queryFactById, toFact } from './fact-rows.ts'

/** The append of a project file. One transaction a call; the contract is the port's. */
export function createAppend(connection: Connection): (facts: readonly Fact[]) => Promise<Appended> {
  const { db, write } = connection
  const insert = db.prepare(
    `insert into fact (id, kind, v, subject, at, "by", device, body, data) values (?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (id) do nothing`,
  )
  const replace = db.prepare(
    `update fact set seq = (select max(seq) + 1 from fact), kind = ?, v = ?, subject = ?, at = ?, "by" = ?, device = ?, body = ?, data = ?
     where id = ?`,
  )
  const empty = db.prepare('update fact set body = ?, data = ? where seq = ?')
  const dropDerived = db.prepare('delete from derived')
  const byId = queryFactById(connection)
  // Everything that starts with the id and '#', or is the id: '$' is the character after '#'.
  const forgotten = prepareQuery(
    db,
    `select body ->> 'of' from fact where kind = 'redacted' and body ->> 'of' >= ?1 and body ->> 'of' < ?1 || '$'`,
  )

  const forgottenRows = (id: string): readonly number[] =>
    forgotten
      .all(id)
      .map(([of]) => parseAddress(of as string))
      .filter((address) => address.fact === id)
      .map((address) => address.row)

  const append = (came: Fact): 'added' | 'replaced' | 'known' => {
    const fact = withoutForgotten(came, forgottenRows(came.id))
    const { id, kind, v, subject, at, by, device, data } = fact
    const body = canonicalJson(fact.body)
    if (insert.run(id, kind, v, subject, at, by, device, body, data).changes === 1) return 'added'
    const row = byId.first(id)
    if (row === undefined) return 'known'
    const held = toFact(row)
    if (isSameCopy(held, fact) || keptOfTwo(held, fact) === held) return 'known'
    replace.run(kind, v, subject, at, by, device, body, data, id)
    return 'replaced'
  }

  const forget = (fact: Fact): void => {
    const named = whatIsForgotten(fact)
    const row = named === null ? undefined : byId.first(named.fact)
    if (named === null || row === undefined) return
    const held = toFact(row)
    const emptied = withoutForgotten(held, [named.row])
    if (emptied === held) return
    empty.run(canonicalJson(emptied.body), emptied.data, held.seq)
    // Whatever was worked out from it may still hold it.
    dropDerived.run()
  }

  return async (facts) => {
    for (const fact of facts) requireEnvelope(fact)
    if (facts.length === 0) return { added: [], replaced: [] }
    return await write(() => {
      const added: string[] = []
      const replaced: string[] = []
      for (const fact of facts) {
        const outcome = append(fact)
        if (outcome === 'known') continue
        if (outcome === 'added') added.push(fact.id)
        else replaced.push(fact.id)
        forget(fact)
      }
      return { added, replaced }
    })
  }
}

/** Texts a database gives back as they were put in: no half of a surrogate pair, no zero character. */
function isPlain(text: string): boolean {
  return text.isWellFormed() && !text.includes('\u0000')
}

function requireEnvelope(fact: Fact): void {
  const checked = factEnvelope.safeParse(fact)
  const first = checked.error?.issues[0]
  if (first !== undefined) {
    throw storeError('store/fact-misshapen', { id: String(fact.id), where: first.path.join('.'), what: first.message })
  }
  const odd = (['id', 'kind', 'subject', 'at', 'by', 'device'] as const).find((name) => !isPlain(fact[name] ?? ''))
  if (odd !== undefined) {
    throw storeError('store/fact-misshapen', {
      id: fact.id.toWellFormed(),
      where: odd,
      what: 'holds a character that no text may hold',
    })
  }
}
