import type { Fact } from '../facts/fact.ts'
import { amended, type BodyOf, sheetRead, withdrawn } from '../facts/kinds.ts'
import type { ReadEntry } from './read-log.ts'

/** Lists under their keys, in the order in which they come. */
function gather(pairs: Iterable<readonly [key: string, value: string]>): ReadonlyMap<string, readonly string[]> {
  const lists = new Map<string, string[]>()
  for (const [key, value] of pairs) {
    const list = lists.get(key)
    if (list === undefined) lists.set(key, [value])
    else list.push(value)
  }
  return lists
}

const sheetsReadIn = (facts: readonly Fact[]): ReadonlyMap<string, readonly string[]> =>
  gather(
    facts.flatMap(({ id, kind, body }) =>
      kind === sheetRead.kind && typeof body.sheet === 'string' ? [[body.sheet, id] as const] : [],
    ),
  )

/**
 * Addresses (facts or rows of batches) that a withdrawal which itself stands has taken back; and the corrections and
 * withdrawals that a mended file made, where that file was taken back or forgotten. Withdrawals that take back each other are
 * no reason to go round for ever: the one that is looked at first stands.
 *
 * @param facts the whole log in its order; `entries` those of it that are understood and not forgotten
 */
export function takenBackIn(facts: readonly Fact[], entries: readonly ReadEntry[], isGone: (id: string) => boolean): Set<string> {
  const own = entries.filter(({ fact }) => fact.kind === withdrawn.kind)
  const withdrawals = gather(own.map(({ fact, body }) => [(body as BodyOf<typeof withdrawn>).of, fact.id] as const))
  const reads = sheetsReadIn(facts)
  const readsBehind = new Map<string, readonly string[]>()
  for (const { fact, body } of entries) {
    if (fact.kind !== withdrawn.kind && fact.kind !== amended.kind) continue
    const { sheet } = body as BodyOf<typeof withdrawn> | BodyOf<typeof amended>
    const read = sheet === undefined ? undefined : reads.get(sheet)
    if (read !== undefined) readsBehind.set(fact.id, read)
  }
  const known = new Map<string, boolean>()
  const isTakenBack = (address: string): boolean => {
    const seen = known.get(address)
    if (seen !== undefined) return seen
    known.set(address, false)
    const result =
      (withdrawals.get(address) ?? []).some((withdrawal) => !isTakenBack(withdrawal)) ||
      (readsBehind.get(address)?.every((read) => isGone(read) || isTakenBack(read)) ?? false)
    known.set(address, result)
    return result
  }
  return new Set([...withdrawals.keys(), ...readsBehind.keys()].filter(isTakenBack))
}
