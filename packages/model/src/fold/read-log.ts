import { compareFacts, type Fact, keptCopy } from '../facts/fact.ts'
import type { BodyOf, FactKind } from '../facts/kinds.ts'
import { factKinds, redacted, sheetAccepted } from '../facts/kinds.ts'
import { isOfSheet } from '../facts/of-sheet.ts'
import { readFact } from '../facts/read-fact.ts'
import { isForgotten, spokenChain } from '../facts/spoken-of.ts'
import { takenBackIn } from './withdrawals.ts'

/** A fact whose body this version understands. */
export interface ReadEntry {
  readonly fact: Fact
  readonly body: unknown
  readonly about: 'data' | 'asking'
}

/** The log in its own order, read, with what was withdrawn or redacted told apart. */
export interface ReadLog {
  /** Every fact, one copy of each id, in log order: those that wait or were emptied among them. */
  readonly facts: readonly Fact[]
  readonly entries: readonly ReadEntry[]
  readonly waiting: readonly { readonly id: string; readonly kind: string; readonly because: string }[]
  /** Addresses (facts or rows of batches) that are taken back, by a withdrawal or with a mended file; and forgotten rows. */
  readonly withdrawn: ReadonlySet<string>
  of<K extends FactKind>(kind: K): readonly { readonly fact: Fact; readonly body: BodyOf<K> }[]
}

/**
 * A fact of an accepted sheet as of the moment, and by the person, that accepted it: from then on it counts. When and where the
 * file was read differs between copies that read it by themselves, and only acceptances reach all of them.
 */
function asAccepted(byId: ReadonlyMap<string, Fact>): (fact: Fact) => Fact {
  const acceptance = new Map<string | null, Fact>()
  for (const fact of byId.values()) {
    if (fact.kind !== sheetAccepted.kind) continue
    const known = acceptance.get(fact.subject)
    if (known === undefined || compareFacts(fact, known) < 0) acceptance.set(fact.subject, fact)
  }
  return (fact) => {
    const accepted = isOfSheet(fact) ? acceptance.get(fact.subject) : undefined
    return accepted === undefined ? fact : { ...fact, at: accepted.at, by: accepted.by, device: accepted.device }
  }
}

/** What a fact is about; a correction or a withdrawal is about what the fact at its root is about. */
function aboutOf(fact: Fact, factOf: (id: string) => Fact | undefined): ReadEntry['about'] {
  const root = factOf(spokenChain(fact.id, factOf).at(-1) ?? fact.id) ?? fact
  return factKinds.get(root.kind)?.about ?? 'data'
}

/** Sorts, joins copies of one id, lifts and checks bodies. Order of arrival does not matter. */
export function readLog(facts: Iterable<Fact>): ReadLog {
  const byId = new Map<string, Fact>()
  for (const fact of facts) {
    const known = byId.get(fact.id)
    byId.set(fact.id, known === undefined ? fact : keptCopy(known, fact))
  }
  const understood: ReadEntry[] = []
  const waiting: { id: string; kind: string; because: string }[] = []
  const ordered = [...byId.values()].map(asAccepted(byId)).sort(compareFacts)
  const factOf = (id: string): Fact | undefined => byId.get(id)
  for (const fact of ordered) {
    const read = readFact(fact)
    if (read.kind === 'read') understood.push({ fact, body: read.body, about: aboutOf(fact, factOf) })
    else waiting.push({ id: fact.id, kind: fact.kind, because: read.because })
  }
  const named = new Set(
    understood.flatMap(({ fact, body }) => (fact.kind === redacted.kind ? ((body as BodyOf<typeof redacted>).of ?? []) : [])),
  )
  const isGone = (id: string): boolean => named.size > 0 && isForgotten(id, (of) => named.has(of), factOf)
  // A forgotten fact is out of the log whether its body has been emptied yet or not, so that all copies have one digest.
  const entries = understood.filter(({ fact }) => !isGone(fact.id))
  const takenBack = takenBackIn(ordered, entries, isGone)
  // Of a row that was forgotten nothing is left to be counted; no withdrawal of it can be withdrawn.
  for (const of of named) if (of.includes('#')) takenBack.add(of)
  const standing = Map.groupBy(
    entries.filter(({ fact }) => !takenBack.has(fact.id)),
    ({ fact }) => fact.kind,
  )
  return {
    facts: ordered,
    entries,
    // A redacted fact has an empty body that no shape fits: it is told as redacted, not as waiting.
    waiting: waiting.filter(({ id }) => !isGone(id)),
    withdrawn: takenBack,
    of: (kind) => (standing.get(kind.kind) ?? []) as { fact: Fact; body: BodyOf<typeof kind> }[],
  }
}
