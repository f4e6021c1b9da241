import { cholesky, solveCholesky } from '../count-model/symmetric.ts'
import { log } from '../elementary.ts'
import { type Neighbourhood, neighboursOf } from './neighbours.ts'
import { effectsOf, multiplyLevels, type Term } from './random-terms.ts'

/**
 * H = I + L'Z'ZL, the curvature of the standardised random effects, L made of one block for each term.
 *
 * The first term's part is block diagonal and is taken out level by level; what it leaves of the others is held by a dense factor.
 */
export interface Curvature {
  readonly effects: number
  /** Where each term's effects begin. */
  readonly starts: readonly number[]
  /** @returns false where H cannot be factored in floating point */
  assemble(blocks: readonly Float64Array[]): boolean
  /** H x = b, in place of b. */
  solve(b: Float64Array): void
  logDeterminant(): number
  /** For each term, the sum over its levels of the d by d diagonal blocks of Z'ZLH^-1: half of what log det H gains by each entry of its block. */
  traces(): readonly Float64Array[]
}

/** A level of the first term as assembled: with D its block of H, B its coupling to the others. */
interface Level extends Neighbourhood {
  /** Z'Z L of the level with itself, d by d, and with the effects it meets, d by t. */
  readonly ownTurned: Float64Array
  readonly turned: Float64Array
  /** D^-1, d by d. */
  readonly inverse: Float64Array
  /** B and D^-1 B, d by t. */
  readonly coupling: Float64Array
  readonly solved: Float64Array
}

const levelOf = (met: Neighbourhood): Level => ({
  ...met,
  ownTurned: met.own.slice(),
  inverse: met.own.slice(),
  turned: met.entries.slice(),
  coupling: met.entries.slice(),
  solved: met.entries.slice(),
})

/** a (d by d) or its transpose times b (d by t), into `into`. */
function multiplySmall(
  a: Float64Array,
  way: 'along' | 'across',
  b: Float64Array,
  d: number,
  t: number,
  into: Float64Array,
): void {
  for (let r = 0; r < d; r++)
    for (let s = 0; s < t; s++) {
      let sum = 0
      for (let k = 0; k < d; k++) sum += (a[way === 'along' ? r * d + k : k * d + r] as number) * (b[k * t + s] as number)
      into[r * t + s] = sum
    }
}

/**
 * Inverse of I + m, d of 1 or 2, in place.
 *
 * @param ofM determinant of m, known better than m's entries tell it
 * @returns determinant of I + m
 */
function invertPlusUnit(m: Float64Array, d: number, ofM: number): number {
  const a = 1 + (m[0] as number)
  if (d === 1) {
    m[0] = 1 / a
    return a
  }
  const b = ((m[1] as number) + (m[2] as number)) / 2
  const c = 1 + (m[3] as number)
  const determinant = a + (m[3] as number) + ofM
  m[0] = c / determinant
  m[1] = -b / determinant
  m[2] = -b / determinant
  m[3] = a / determinant
  return determinant
}

/** @param terms at least one */
export function curvatureOf([first, ...others]: readonly [Term, ...Term[]]): Curvature {
  const d = first.width
  const { levels: neighbourhoods, starts, effects: q, others: cross } = neighboursOf(first, others)
  const levels = neighbourhoods.map(levelOf)
  const begin = effectsOf(first)
  const crossTurned = new Float64Array(q * q)
  const factor = new Float64Array(q * q)
  const line = new Float64Array(q)
  const rest = new Float64Array(q)
  let logOfLevels = 0

  /** Each row of a matrix times L of the other terms. */
  function turnCross(blocks: readonly Float64Array[]): void {
    for (let r = 0; r < q; r++) {
      line.set(cross.subarray(r * q, r * q + q))
      others.forEach((term, k) => {
        multiplyLevels(term, blocks[k + 1] as Float64Array, 'across', line, line, starts[k] as number)
      })
      crossTurned.set(line, r * q)
    }
    for (let s = 0; s < q; s++) {
      for (let r = 0; r < q; r++) line[r] = crossTurned[r * q + s] as number
      others.forEach((term, k) => {
        multiplyLevels(term, blocks[k + 1] as Float64Array, 'across', line, line, starts[k] as number)
      })
      for (let r = s; r < q; r++) factor[r * q + s] = (line[r] as number) + Number(r === s)
    }
  }

  function assembleLevel(level: Level, blocks: readonly Float64Array[]): number {
    const { own, ownTurned, inverse, columns, met, entries, turned, coupling, solved } = level
    const block = blocks[0] as Float64Array
    const t = columns.length
    multiplySmall(own, 'along', block, d, d, ownTurned)
    multiplySmall(block, 'across', ownTurned, d, d, inverse)
    const [scale = 0, , , slope = 0] = block
    const ofBlock = d === 1 ? scale : scale * slope - (block[1] as number) * (block[2] as number)
    const determinant = invertPlusUnit(inverse, d, ofBlock ** 2 * level.determinant)
    turned.set(entries)
    for (let a = 0; a < d; a++) {
      let from = a * t
      others.forEach(({ width }, k) => {
        const count = met[k] as number
        multiplyLevels({ levels: count, width }, blocks[k + 1] as Float64Array, 'across', turned, turned, from)
        from += count * width
      })
    }
    multiplySmall(block, 'across', turned, d, t, coupling)
    multiplySmall(inverse, 'along', coupling, d, t, solved)
    for (let r = 0; r < t; r++)
      for (let s = 0; s < t; s++) {
        const at = (columns[r] as number) * q + (columns[s] as number)
        if ((columns[r] as number) < (columns[s] as number)) continue
        for (let a = 0; a < d; a++)
          factor[at] = (factor[at] as number) - (coupling[a * t + r] as number) * (solved[a * t + s] as number)
      }
    return determinant
  }

  function inverseOfOthers(): Float64Array {
    const inverse = new Float64Array(q * q)
    for (let r = 0; r < q; r++) {
      const unit = inverse.subarray(r * q, r * q + q)
      unit[r] = 1
      solveCholesky(factor, q, unit)
    }
    return inverse
  }

  /** What one level of the first term adds to the traces of all terms; `inverse` of the dense part. */
  function addTraces(level: Level, block: Float64Array, inverse: Float64Array, sums: readonly Float64Array[]): void {
    const { ownTurned, inverse: ownInverse, columns, met, entries, turned, solved } = level
    const t = columns.length
    const far = new Float64Array(d * t)
    for (let a = 0; a < d; a++)
      for (let s = 0; s < t; s++) {
        let sum = 0
        for (let r = 0; r < t; r++)
          sum += (solved[a * t + r] as number) * (inverse[(columns[r] as number) * q + (columns[s] as number)] as number)
        far[a * t + s] = sum
      }
    const own = sums[0] as Float64Array
    for (let a = 0; a < d; a++)
      for (let b = 0; b < d; b++) {
        let sum = 0
        for (let c = 0; c < d; c++) {
          let at = ownInverse[c * d + b] as number
          for (let r = 0; r < t; r++) at += (far[c * t + r] as number) * (solved[b * t + r] as number)
          sum += (ownTurned[a * d + c] as number) * at
        }
        for (let r = 0; r < t; r++) sum -= (turned[a * t + r] as number) * (far[b * t + r] as number)
        own[a * d + b] = (own[a * d + b] as number) + sum
      }
    let from = 0
    others.forEach(({ width }, k) => {
      const sum = sums[k + 1] as Float64Array
      for (const end = from + (met[k] as number) * width; from < end; from += width)
        for (let a = 0; a < width; a++)
          for (let c = 0; c < d; c++) {
            let cross = 0
            for (let e = 0; e < d; e++) cross += (entries[e * t + from + a] as number) * (block[e * d + c] as number)
            for (let b = 0; b < width; b++)
              sum[a * width + b] = (sum[a * width + b] as number) - cross * (far[c * t + from + b] as number)
          }
    })
  }

  let assembled: readonly Float64Array[] = []
  return {
    effects: begin + q,
    starts: [0, ...starts.map((start) => begin + start)],
    assemble: (blocks) => {
      assembled = blocks
      turnCross(blocks)
      logOfLevels = 0
      for (const level of levels) logOfLevels += log(assembleLevel(level, blocks))
      return Number.isFinite(logOfLevels) && cholesky(factor, q)
    },
    solve: (b) => {
      rest.set(b.subarray(begin))
      levels.forEach(({ columns, solved }, j) => {
        const t = columns.length
        for (let a = 0; a < d; a++)
          for (let r = 0; r < t; r++)
            rest[columns[r] as number] =
              (rest[columns[r] as number] as number) - (solved[a * t + r] as number) * (b[j * d + a] as number)
      })
      solveCholesky(factor, q, rest)
      const own = new Float64Array(d)
      levels.forEach(({ columns, inverse, solved }, j) => {
        const t = columns.length
        own.set(b.subarray(j * d, j * d + d))
        for (let a = 0; a < d; a++) {
          let sum = 0
          for (let c = 0; c < d; c++) sum += (inverse[a * d + c] as number) * (own[c] as number)
          for (let r = 0; r < t; r++) sum -= (solved[a * t + r] as number) * (rest[columns[r] as number] as number)
          b[j * d + a] = sum
        }
      })
      b.set(rest, begin)
    },
    logDeterminant: () => {
      let sum = logOfLevels
      for (let r = 0; r < q; r++) sum += 2 * log(factor[r * q + r] as number)
      return sum
    },
    traces: () => {
      const sums = [first, ...others].map(({ width }) => new Float64Array(width * width))
      const inverse = inverseOfOthers()
      for (const level of levels) addTraces(level, assembled[0] as Float64Array, inverse, sums)
      others.forEach(({ levels: count, width }, k) => {
        const sum = sums[k + 1] as Float64Array
        for (let j = 0; j < count; j++)
          for (let a = 0; a < width; a++)
            for (let b = 0; b < width; b++) {
              const row = ((starts[k] as number) + j * width + a) * q
              const column = ((starts[k] as number) + j * width + b) * q
              for (let r = 0; r < q; r++)
                sum[a * width + b] =
                  (sum[a * width + b] as number) + (crossTurned[row + r] as number) * (inverse[column + r] as number)
            }
      })
      return sums
    },
  }
}
