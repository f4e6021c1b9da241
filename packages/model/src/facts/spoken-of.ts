import { type Fact, parseAddress } from './fact.ts'
import { amended, cellSettled, withdrawn } from './kinds.ts'

const speaking: ReadonlySet<string> = new Set([amended.kind, cellSettled.kind, withdrawn.kind])

/** The fact or row that a correction, a settlement or a withdrawal speaks of; null for every other fact. */
export function spokenOf({ kind, body }: Pick<Fact, 'kind' | 'body'>): string | null {
  return speaking.has(kind) && typeof body.of === 'string' ? body.of : null
}

type FactOf = (id: string) => Pick<Fact, 'kind' | 'body'> | undefined

/** An address, what the fact there speaks of, what that speaks of, and so on; each once, also where they go round. */
export function spokenChain(address: string, factOf: FactOf): readonly string[] {
  const chain: string[] = []
  for (let of: string | null = address; of !== null && !chain.includes(of); ) {
    chain.push(of)
    const fact = factOf(of)
    of = fact === undefined ? null : spokenOf(fact)
  }
  return chain
}

/**
 * True for what a `redacted` fact names, for a row of a batch that one names, and for corrections, settlements and
 * withdrawals of any of these: what is said of a forgotten row is forgotten with it.
 *
 * @param isNamed whether a `redacted` fact names exactly this address
 */
export function isForgotten(address: string, isNamed: (address: string) => boolean, factOf: FactOf): boolean {
  return spokenChain(address, factOf).some((of) => isNamed(of) || isNamed(parseAddress(of).fact))
}
