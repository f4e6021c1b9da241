import { type Fact, factEnvelope, redacted } from '@thrum/model'
import { canonicalJson } from '@thrum/model/ground'
import { storeError } from '../errors.ts'
import { whatIsForgotten } from '../fact/forgetting.ts'
import { isSameCopy, keptOfTwo } from '../fact/kept-of-two.ts'
import { sheetOf } from '../fact/sheet-of.ts'
import type { Appended } from '../port.ts'
import type { Connection } from './connection.ts'
import { queryFactById, toFact } from './fact-rows.ts'
import type { ForgottenFacts } from './forgotten-facts.ts'
import type { ForgottenFiles } from './forgotten-files.ts'

/** The append of a project file. One transaction a call; the contract is the port's. */
export function createAppend(
  connection: Connection,
  forgotten: ForgottenFacts,
  files: ForgottenFiles,
): (facts: readonly Fact[]) => Promise<Appended> {
  const { db, write } = connection
  const insert = db.prepare(
    `insert into fact (id, kind, v, subject, at, "by", device, body, data) values (?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (id) do nothing`,
  )
  const replace = db.prepare(
    `update fact set seq = (select max(seq) + 1 from fact), kind = ?, v = ?, subject = ?, at = ?, "by" = ?, device = ?, body = ?, data = ?
     where id = ?`,
  )
  const byId = queryFactById(connection)

  const append = (came: Fact, isAnyForgotten: boolean): 'added' | 'replaced' | 'known' => {
    const fact = isAnyForgotten ? forgotten.without(came) : came
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

  /** What the facts that came mean for what was there, and for the files. */
  const forget = (came: readonly Fact[]): void => {
    const redactions = came.filter(({ kind }) => kind === redacted.kind)
    for (const redaction of redactions) {
      const named = whatIsForgotten(redaction)
      if (named === null) continue
      forgotten.sweepOne(named.fact)
      files.dropOfSheets(sheetsOf(named.fact))
      files.dropWithRowsOf(named.fact)
    }
    // What was said of it may have come before it, and so may what was said of that.
    const isSpokenOf = redactions.some((redaction) => whatIsForgotten(redaction) !== null)
    if (isSpokenOf || (forgotten.isAny() && came.some(forgotten.speaksOfForgotten))) forgotten.sweepSpeaking()
    if (redactions.some((redaction) => whatIsForgotten(redaction) === null)) {
      forgotten.sweep()
      files.dropAll()
      return
    }
    if (!forgotten.isAny()) return
    const { places } = forgotten.forgetting()
    for (const { id, body } of came) {
      if (typeof body.field === 'string' && places.has(body.field)) forgotten.sweepCorrectionsOf(id)
    }
    files.dropOfSheets(new Set(came.flatMap((fact) => sheetOf(fact) ?? [])))
  }

  const sheetsOf = (id: string): readonly string[] => {
    const row = byId.first(id)
    const sheet = row === undefined ? null : sheetOf(toFact(row))
    return sheet === null ? [] : [sheet]
  }

  return async (facts) => {
    for (const fact of facts) requireEnvelope(fact)
    if (facts.length === 0) return { added: [], replaced: [] }
    return await write(() => {
      const added: string[] = []
      const replaced: string[] = []
      const taken: Fact[] = []
      let isAnyForgotten = forgotten.isAny()
      for (const fact of facts) {
        const outcome = append(fact, isAnyForgotten)
        if (outcome === 'known') continue
        if (outcome === 'added') added.push(fact.id)
        else replaced.push(fact.id)
        taken.push(fact)
        isAnyForgotten ||= fact.kind === redacted.kind
      }
      if (isAnyForgotten) forget(taken)
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
