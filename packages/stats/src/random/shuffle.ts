import type { Rng } from '@thrum/model/ground'

/**
 * The same items in an order drawn evenly from all orders. The list given is left as it is.
 *
 * @source Durstenfeld R. (1964) Commun. ACM 7, 420 (algorithm 235).
 * @check all 6 orders of 3 items equally often, chi-square, seeded
 */
export function shuffled<T>(rng: Rng, items: readonly T[]): T[] {
  const out = [...items]
  for (let i = out.length - 1; i > 0; i--) {
    const j = rng.below(i + 1)
    const held = out[i] as T
    out[i] = out[j] as T
    out[j] = held
  }
  return out
}
