import { type Fact, keptCopy } from '@thrum/model'
import { canonicalJson } from '@thrum/model/ground'

/**
 * Which of two copies of one id a log keeps: the smaller (`at`, `device`), as everywhere. Copies that agree in both
 * should be equal; if they are not (a fault, or the same sheet packed by two versions), the smaller in a fixed order of
 * everything else, so that the outcome never depends on which came first.
 */
export function keptOfTwo<A extends Fact, B extends Fact>(held: A, came: B): A | B {
  if (held.at !== came.at || held.device !== came.device) return keptCopy<A | B>(held, came)
  const a = everythingElse(held)
  const b = everythingElse(came)
  if (a !== b) return a < b ? held : came
  return compareBytes(held.data, came.data) <= 0 ? held : came
}

/** True where two copies of one id are the same to the letter. */
export function isSameCopy(a: Fact, b: Fact): boolean {
  return a.at === b.at && a.device === b.device && everythingElse(a) === everythingElse(b) && compareBytes(a.data, b.data) === 0
}

function everythingElse(fact: Fact): string {
  return canonicalJson([fact.by, fact.kind, fact.v, fact.subject, fact.body])
}

function compareBytes(a: Uint8Array | null, b: Uint8Array | null): number {
  if (a === null || b === null) return (a === null ? 0 : 1) - (b === null ? 0 : 1)
  if (a.length !== b.length) return a.length - b.length
  for (let k = 0; k < a.length; k++) {
    const difference = (a[k] ?? 0) - (b[k] ?? 0)
    if (difference !== 0) return difference
  }
  return 0
}
