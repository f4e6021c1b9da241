import { norm } from './scaled-columns.ts'

/** Columns taken apart as Q R, those that add nothing set aside. */
export interface Factors {
  readonly rows: number
  readonly rank: number
  /** Column numbers: first the `rank` ones kept, in their order, then those set aside. */
  readonly order: readonly number[]
  /** Upper triangle: entry (r, k) for the k-th column of `order`, for all columns. */
  upper(r: number, k: number): number
  /** Q' y, in place. */
  applyTransposed(y: Float64Array): void
  /** Q y, in place. */
  apply(y: Float64Array): void
}

/**
 * Householder QR with limited column pivoting: columns are taken in order, and one of which less than `tolerance` is left
 * beside its predecessors goes to the end. So the later of two aliased columns is the one set aside.
 *
 * @param columns p columns of length n, each of length 1 or all zeros
 * @param tolerance part of a column that must be left, such as 1e-7
 * @source Businger P. & Golub G.H. (1965) Numer. Math. 7, 269-276; pivoting limited as above.
 */
export function factorise(columns: readonly Float64Array[], tolerance: number): Factors {
  const rows = columns[0]?.length ?? 0
  const work = columns.map((column) => column.slice())
  const kept: number[] = []
  const aside: number[] = []
  const reflectors: Float64Array[] = []

  work.forEach((column, j) => {
    const r = kept.length
    reflectors.forEach((reflector, k) => {
      reflect(reflector, k, column)
    })
    const rest = column.subarray(r)
    const length = norm(rest)
    if (!(length > tolerance)) {
      rest.fill(0)
      aside.push(j)
      return
    }
    const lead = rest[0] ?? 0
    const diagonal = lead > 0 ? -length : length
    const reflector = rest.slice()
    reflector[0] = lead - diagonal
    const size = norm(reflector)
    for (let i = 0; i < reflector.length; i++) reflector[i] = (reflector[i] ?? 0) / size
    reflectors.push(reflector)
    kept.push(j)
    rest.fill(0)
    rest[0] = diagonal
  })

  const order = [...kept, ...aside]
  return {
    rows,
    rank: kept.length,
    order,
    upper: (r, k) => work[order[k] ?? -1]?.[r] ?? 0,
    applyTransposed: (y) => {
      reflectors.forEach((reflector, k) => {
        reflect(reflector, k, y)
      })
    },
    apply: (y) => {
      for (let k = reflectors.length - 1; k >= 0; k--) {
        const reflector = reflectors[k]
        if (reflector) reflect(reflector, k, y)
      }
    },
  }
}

/** Mirrors the part of y from `from` on at the plane across a unit vector. */
function reflect(unit: Float64Array, from: number, y: Float64Array): void {
  let dot = 0
  for (let i = 0; i < unit.length; i++) dot += (unit[i] ?? 0) * (y[from + i] ?? 0)
  for (let i = 0; i < unit.length; i++) y[from + i] = (y[from + i] ?? 0) - 2 * dot * (unit[i] ?? 0)
}

/** Solves the upper triangle of the kept columns for one right side of length `rank`. */
export function solveUpper(factors: Factors, right: ArrayLike<number>): Float64Array {
  const { rank } = factors
  const out = new Float64Array(rank)
  for (let r = rank - 1; r >= 0; r--) {
    let value = right[r] ?? 0
    for (let k = r + 1; k < rank; k++) value -= factors.upper(r, k) * (out[k] ?? 0)
    out[r] = value / factors.upper(r, r)
  }
  return out
}
