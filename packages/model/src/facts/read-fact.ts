import type { Fact } from './fact.ts'
import { factKinds } from './kinds.ts'

/** A fact as this version understands it, or the reason why it waits. Nothing is ever dropped. */
export type ReadFact =
  | { readonly kind: 'read'; readonly body: unknown; readonly about: 'data' | 'asking' }
  | { readonly kind: 'waits'; readonly because: 'unknown kind' | 'newer version' | 'misshapen' }

/** Lifts an older body to the newest version and checks it. Unknown kinds and newer versions wait, unharmed. */
export function readFact(fact: Pick<Fact, 'kind' | 'v' | 'body'>): ReadFact {
  const kind = factKinds.get(fact.kind)
  if (kind === undefined) return { kind: 'waits', because: 'unknown kind' }
  if (fact.v > kind.v) return { kind: 'waits', because: 'newer version' }
  let body: unknown = fact.body
  for (let v = fact.v; v < kind.v; v++) {
    const lift = kind.lifts?.[v]
    if (lift === undefined) return { kind: 'waits', because: 'misshapen' }
    body = lift(body)
  }
  const checked = kind.shape.safeParse(body)
  return checked.success ? { kind: 'read', body: checked.data, about: kind.about } : { kind: 'waits', because: 'misshapen' }
}
