/** Both tails of a continuous distribution at one point. Each is computed for itself: neither is 1 minus a near-1 other. */
export type Tails = { readonly lower: number; readonly upper: number }

/** Which tail a probability counts. */
export type Tail = 'lower' | 'upper'
