import { log } from '../elementary.ts'
import { type AliasedColumn, aliasedColumns } from '../least-squares/aliased.ts'
import { factorise, solveUpper } from '../least-squares/householder.ts'
import { rankTolerance } from '../least-squares/least-squares.ts'
import type { Matrix } from '../least-squares/matrix.ts'
import { scaleColumns } from '../least-squares/scaled-columns.ts'

/** A design turned into columns at right angles and of length 1, aliased columns left out: no product of them loses digits. */
export interface OrthonormalDesign {
  /** m of them, each of length n. */
  readonly columns: readonly Float64Array[]
  readonly aliased: readonly AliasedColumn[]
  /** For each column as it came, the weights of the m turned coefficients that make up its own. */
  readonly map: readonly Float64Array[]
  /** log of the root of det X'X, X the kept columns as they came: the unit of a covariate moves a restricted likelihood by it. */
  readonly logVolume: number
}

/** @source Golub G.H. (1965) Numer. Math. 7, 206-216, from memory: X = Q R by reflections. */
export function orthonormalDesign(design: Matrix): OrthonormalDesign {
  const { rows: n, columns: p } = design
  const scaled = scaleColumns(design)
  const factors = factorise(scaled.columns, rankTolerance)
  const { rank, order } = factors
  const map = Array.from({ length: p }, () => new Float64Array(rank))
  const columns: Float64Array[] = []
  let logVolume = 0
  for (let k = 0; k < rank; k++) {
    const turned = new Float64Array(n)
    turned[k] = 1
    factors.apply(turned)
    columns.push(turned)
    logVolume += log(Math.abs(factors.upper(k, k)) * (scaled.scale[order[k] as number] as number))
    const unit = new Float64Array(rank)
    unit[k] = 1
    solveUpper(factors, unit).forEach((value, r) => {
      const j = order[r] as number
      const own = value / (scaled.scale[j] as number)
      const row = map[j] as Float64Array
      row[k] = (row[k] as number) + own
      const moved = scaled.shift[j] as number
      const first = map[0] as Float64Array
      if (moved !== 0) first[k] = (first[k] as number) - own * moved
    })
  }
  return { columns, aliased: aliasedColumns(factors, scaled), map, logVolume }
}

/** Takes the columns' share off a vector, in two passes: the second takes up what the first one rounded away. @returns that share */
export function takeOff(columns: readonly Float64Array[], vector: Float64Array): Float64Array {
  const share = new Float64Array(columns.length)
  for (let pass = 0; pass < 2; pass++)
    columns.forEach((column, k) => {
      let dot = 0
      for (let i = 0; i < vector.length; i++) dot += (column[i] as number) * (vector[i] as number)
      for (let i = 0; i < vector.length; i++) vector[i] = (vector[i] as number) - dot * (column[i] as number)
      share[k] = (share[k] as number) + dot
    })
  return share
}
