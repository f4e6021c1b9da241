import { effectsOf, entryOf, type Term } from './random-terms.ts'

/** What the rows of one level of the first term have in common with the other terms: its part of Z'Z. */
export interface Neighbourhood {
  /** d by d, row major: the level with itself. */
  readonly own: Float64Array
  /** Of `own`; for d of 2 from the slope about its mean in the level, so that nothing cancels. */
  readonly determinant: number
  /** Which effects of the other terms it meets, counted over those terms alone, term after term; t of them. */
  readonly columns: Int32Array
  /** How many levels of each other term it meets. */
  readonly met: readonly number[]
  /** d by t, row major: the level with those effects. */
  readonly entries: Float64Array
}

/** The neighbourhoods of the first term's levels, and Z'Z of the other terms (q by q, row major), where effects begin at `starts`. */
export interface Neighbours {
  readonly levels: readonly Neighbourhood[]
  readonly starts: readonly number[]
  readonly effects: number
  readonly others: Float64Array
}

function rowsByLevel({ of, levels }: Term): readonly number[][] {
  const rows: number[][] = Array.from({ length: levels }, () => [])
  of.forEach((level, i) => void rows[level]?.push(i))
  return rows
}

function determinantOf(term: Term, rows: readonly number[]): number {
  if (term.width === 1) return rows.length
  let mean = 0
  for (const i of rows) mean += entryOf(term, 1, i) / rows.length
  let square = 0
  for (const i of rows) square += (entryOf(term, 1, i) - mean) ** 2
  return rows.length * square
}

export function neighboursOf(first: Term, others: readonly Term[]): Neighbours {
  const starts: number[] = []
  let effects = 0
  for (const term of others) {
    starts.push(effects)
    effects += effectsOf(term)
  }
  const position = new Int32Array(effects).fill(-1)
  const levels = rowsByLevel(first).map((rows): Neighbourhood => {
    const columns: number[] = []
    const met = others.map((term, k) => {
      const before = columns.length
      for (const i of rows) {
        const at = (starts[k] as number) + (term.of[i] as number) * term.width
        if (position[at] !== -1) continue
        position[at] = columns.length
        for (let b = 0; b < term.width; b++) columns.push(at + b)
      }
      return (columns.length - before) / term.width
    })
    const d = first.width
    const t = columns.length
    const own = new Float64Array(d * d)
    const entries = new Float64Array(d * t)
    for (const i of rows)
      for (let a = 0; a < d; a++) {
        const x = entryOf(first, a, i)
        for (let b = 0; b < d; b++) own[a * d + b] = (own[a * d + b] as number) + x * entryOf(first, b, i)
        others.forEach((term, k) => {
          const at = a * t + (position[(starts[k] as number) + (term.of[i] as number) * term.width] as number)
          for (let b = 0; b < term.width; b++) entries[at + b] = (entries[at + b] as number) + x * entryOf(term, b, i)
        })
      }
    for (const column of columns) position[column] = -1
    return { own, determinant: determinantOf(first, rows), columns: Int32Array.from(columns), met, entries }
  })
  return { levels, starts, effects, others: crossOf(others, starts, effects) }
}

function crossOf(terms: readonly Term[], starts: readonly number[], q: number): Float64Array {
  const matrix = new Float64Array(q * q)
  const n = terms[0]?.of.length ?? 0
  terms.forEach((one, k) => {
    terms.forEach((other, l) => {
      for (let i = 0; i < n; i++)
        for (let a = 0; a < one.width; a++)
          for (let b = 0; b < other.width; b++) {
            const row = (starts[k] as number) + (one.of[i] as number) * one.width + a
            const at = row * q + (starts[l] as number) + (other.of[i] as number) * other.width + b
            matrix[at] = (matrix[at] as number) + entryOf(one, a, i) * entryOf(other, b, i)
          }
    })
  })
  return matrix
}
