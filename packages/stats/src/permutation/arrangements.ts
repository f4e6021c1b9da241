import type { Rng } from '@thrum/model/ground'

/** All rearrangements of values within blocks that differ from each other, one after the other. */
export interface Arrangements {
  /** How many differ; Infinity when past every whole number we can count. */
  readonly count: number
  /** Whether every arrangement has a mirror image among them, about the block means. */
  readonly isMirrored: boolean
  /** Calls `visit` with each distinct arrangement. The array is filled anew each time: read it, do not keep it. */
  forEach(visit: (arrangement: Float64Array) => void): void
  /** One drawn evenly from all, into `out`. */
  fillDraw(rng: Rng, out: Float64Array): void
}

/**
 * The ways in which values could have been dealt to the units of each block.
 *
 * Equal values are not told apart: 3 units with and 3 without are 20 arrangements, not 720.
 *
 * @param values one per unit, such as 0 and 1
 * @param block block code per unit
 * @source Knuth D.E. (2005) The Art of Computer Programming 4, fascicle 2, 7.2.1.2 (algorithm L, multisets in lexicographic order).
 * @check 0, 0, 0, 1, 1, 1 in one block: 20; in blocks of 3 as 0, 0, 1 and 0, 1, 1: 9
 */
export function arrangementsWithin(values: readonly number[], block: readonly number[]): Arrangements {
  const groups = [...new Set(block)].map((code) => [...block.keys()].filter((i) => block[i] === code))
  const sorted = groups.map((places) => places.map((i) => values[i] ?? 0).sort((a, b) => a - b))
  const count = sorted.reduce((product, own) => product * distinctOrders(own), 1)
  return {
    count,
    isMirrored: count > 1 && sorted.every(isSymmetric),
    forEach: (visit) => {
      const current = sorted.map((own) => [...own])
      const out = new Float64Array(values.length)
      const write = (g: number): void => {
        groups[g]?.forEach((place, k) => {
          out[place] = current[g]?.[k] ?? 0
        })
      }
      for (let g = 0; g < groups.length; g++) write(g)
      // An odometer of blocks: each turns to its next order, and on wrapping round lets the one after it turn.
      for (;;) {
        visit(out)
        let g = 0
        while (g < groups.length && !turn(current[g] ?? [])) {
          write(g)
          g += 1
        }
        if (g === groups.length) return
        write(g)
      }
    },
    fillDraw: (rng, out) => {
      groups.forEach((places, g) => {
        const own = sorted[g] ?? []
        const pool = [...own]
        places.forEach((place, k) => {
          const pick = k + rng.below(pool.length - k)
          const value = pool[pick] ?? 0
          pool[pick] = pool[k] ?? 0
          pool[k] = value
          out[place] = value
        })
      })
    },
  }
}

/** n! over the factorials of how often each value occurs, built as a product of binomials so that it stays a whole number. */
function distinctOrders(sorted: readonly number[]): number {
  let total = 1
  let run = 0
  sorted.forEach((value, i) => {
    run = i > 0 && value === sorted[i - 1] ? run + 1 : 1
    total = Math.round((total * (i + 1)) / run)
  })
  return Number.isSafeInteger(total) ? total : Number.POSITIVE_INFINITY
}

/** Whether the values lie evenly about their middle, so that a mirror image is a rearrangement. */
function isSymmetric(sorted: readonly number[]): boolean {
  const least = sorted[0] ?? 0
  const most = sorted[sorted.length - 1] ?? 0
  const dust = 1e-12 * Math.max(Math.abs(least), Math.abs(most))
  return sorted.every((value, i) => Math.abs(value - least - (most - (sorted[sorted.length - 1 - i] ?? 0))) <= dust)
}

/** Turns a list to its next order in place; after the last, back to the first, and says false. */
function turn(list: number[]): boolean {
  const at = (i: number): number => list[i] ?? 0
  const swap = (i: number, j: number): void => {
    const held = at(i)
    list[i] = at(j)
    list[j] = held
  }
  const reverseFrom = (start: number): void => {
    for (let i = start, j = list.length - 1; i < j; i++, j--) swap(i, j)
  }
  let i = list.length - 2
  while (i >= 0 && at(i) >= at(i + 1)) i -= 1
  if (i < 0) {
    reverseFrom(0)
    return false
  }
  let j = list.length - 1
  while (at(j) <= at(i)) j -= 1
  swap(i, j)
  reverseFrom(i + 1)
  return true
}
