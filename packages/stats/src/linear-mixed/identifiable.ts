import { effectsOf, entryOf, fillProduct, type Term } from './random-terms.ts'

/** What is left of a variance's pattern beside the others, as part of its own square, must be more than this. Ours. */
const leastLeft = 1e-10

/** The sum of both orders of Z_a Z_b', over two: what one variance or covariance of a term adds to the variance of the response. */
interface Pattern {
  readonly term: number
  readonly a: number
  readonly b: number
}

/** Cells of two groupings crossed: for each row its cell, for each cell its two levels. */
interface Cells {
  readonly of: Int32Array
  readonly one: readonly number[]
  readonly other: readonly number[]
}

function cellsOf(one: Term, other: Term): Cells {
  const known = new Map<number, number>()
  const cells = { of: new Int32Array(one.of.length), one: [] as number[], other: [] as number[] }
  one.of.forEach((level, i) => {
    const across = other.of[i] as number
    const key = level * other.levels + across
    let cell = known.get(key)
    if (cell === undefined) {
      cell = known.size
      known.set(key, cell)
      cells.one.push(level)
      cells.other.push(across)
    }
    cells.of[i] = cell
  })
  return cells
}

/**
 * The first grouping whose variances cannot be told from the residual's, nor from those of the groupings before it, once the columns
 * are taken off: an intercept for each row, a grouping given twice, one that the columns hold already.
 *
 * It looks at the design alone: the patterns MZ_aZ_b'M and M must not depend on one another, M = I - QQ' what the columns leave.
 *
 * @param columns at right angles and of length 1
 * @returns null where all can be told
 * @source Rao C.R. (1971) J. Multivar. Anal. 1, 257-275, from memory: variances are told when traces of products of their patterns form
 *   a matrix of full rank.
 */
export function unidentifiedTerm(terms: readonly Term[], columns: readonly Float64Array[], rows: number): Term | null {
  const inOrder = terms.toSorted((one, other) => one.place - other.place)
  const m = columns.length
  const patterns = inOrder.flatMap(({ width, isCorrelated }, term): Pattern[] => [
    { term, a: 0, b: 0 },
    ...(width === 2 ? [{ term, a: 1, b: 1 }] : []),
    ...(isCorrelated ? [{ term, a: 0, b: 1 }] : []),
  ])
  // Z_k'Q, effects by m.
  const shares = inOrder.map((term) =>
    columns.map((column) => {
      const own = new Float64Array(effectsOf(term))
      fillProduct(term, column, own, 0)
      return own
    }),
  )
  const share = (k: number, level: number, a: number, r: number): number =>
    shares[k]?.[r]?.[level * (inOrder[k]?.width ?? 1) + a] ?? 0
  const cells = inOrder.map((one) => inOrder.map((other) => cellsOf(one, other)))

  /** Z_a'Z_c, one number for each cell. */
  function crossed(k: number, a: number, l: number, c: number): Float64Array {
    const { of, one } = (cells[k] as readonly Cells[])[l] as Cells
    const sums = new Float64Array(one.length)
    const left = inOrder[k] as Term
    const right = inOrder[l] as Term
    of.forEach((cell, i) => {
      sums[cell] = (sums[cell] as number) + entryOf(left, a, i) * entryOf(right, c, i)
    })
    return sums
  }

  /** Sum over all pairs of levels of (Z_a'MZ_c)(Z_b'MZ_d); a and b of term k, c and d of term l. `before` without M. */
  function overlap(k: number, a: number, b: number, l: number, c: number, d: number): { own: number; before: number } {
    const { one, other } = (cells[k] as readonly Cells[])[l] as Cells
    const ac = crossed(k, a, l, c)
    const bd = crossed(k, b, l, d)
    let before = 0
    let taken = 0
    for (let cell = 0; cell < one.length; cell++) {
      const j = one[cell] as number
      const h = other[cell] as number
      let byShareAC = 0
      let byShareBD = 0
      for (let r = 0; r < m; r++) {
        byShareAC += share(k, j, a, r) * share(l, h, c, r)
        byShareBD += share(k, j, b, r) * share(l, h, d, r)
      }
      before += (ac[cell] as number) * (bd[cell] as number)
      taken += (ac[cell] as number) * byShareBD + (bd[cell] as number) * byShareAC
    }
    let both = 0
    for (let r = 0; r < m; r++)
      for (let s = 0; s < m; s++) {
        let left = 0
        let right = 0
        for (let j = 0; j < (inOrder[k]?.levels ?? 0); j++) left += share(k, j, a, r) * share(k, j, b, s)
        for (let h = 0; h < (inOrder[l]?.levels ?? 0); h++) right += share(l, h, c, r) * share(l, h, d, s)
        both += left * right
      }
    return { own: before - taken + both, before }
  }

  /** Trace of a pattern between M and M, against the residual's pattern, M. */
  function trace({ term, a, b }: Pattern): number {
    const own = inOrder[term] as Term
    let sum = 0
    for (let i = 0; i < own.of.length; i++) sum += entryOf(own, a, i) * entryOf(own, b, i)
    for (let j = 0; j < own.levels; j++) for (let r = 0; r < m; r++) sum -= share(term, j, a, r) * share(term, j, b, r)
    return sum
  }

  const size = patterns.length + 1
  const gram = new Float64Array(size * size)
  const unprojected = new Float64Array(size).fill(rows)
  gram[0] = rows - m
  patterns.forEach((one, x) => {
    gram[(x + 1) * size] = trace(one)
    patterns.slice(0, x + 1).forEach((other, y) => {
      const straight = overlap(one.term, one.a, one.b, other.term, other.a, other.b)
      const turned = overlap(one.term, one.a, one.b, other.term, other.b, other.a)
      gram[(x + 1) * size + y + 1] = (straight.own + turned.own) / 2
      if (x === y) unprojected[x + 1] = (straight.before + turned.before) / 2
    })
  })
  // Cholesky by hand: the first pivot with nothing left names its grouping.
  for (let x = 0; x < size; x++) {
    let pivot = gram[x * size + x] as number
    for (let z = 0; z < x; z++) pivot -= (gram[x * size + z] as number) ** 2
    if (!(pivot > leastLeft * (unprojected[x] as number))) return inOrder[patterns[Math.max(0, x - 1)]?.term ?? 0] ?? null
    const root = Math.sqrt(pivot)
    gram[x * size + x] = root
    for (let y = x + 1; y < size; y++) {
      let sum = gram[y * size + x] as number
      for (let z = 0; z < x; z++) sum -= (gram[y * size + z] as number) * (gram[x * size + z] as number)
      gram[y * size + x] = sum / root
    }
  }
  return null
}
