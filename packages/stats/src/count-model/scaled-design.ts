import { type AliasedColumn, aliasedIn } from '../least-squares/aliased.ts'
import { rankTolerance } from '../least-squares/least-squares.ts'
import type { Matrix } from '../least-squares/matrix.ts'
import { scaleColumns } from '../least-squares/scaled-columns.ts'

/** A design fit for a search: aliased columns left out, the others centred on the intercept and of mean square 1. */
export interface ScaledDesign {
  readonly columns: readonly Float64Array[]
  readonly aliased: readonly AliasedColumn[]
  /** Columns that were kept, as they came. */
  readonly kept: readonly number[]
  /** Coefficients of the columns as they came are `map` times those of the scaled ones; p rows, row major. */
  readonly map: Float64Array
  readonly rows: number
}

export function scaleDesign(design: Matrix): ScaledDesign {
  const { rows: n, columns: p } = design
  const scaled = scaleColumns(design)
  const aliased = aliasedIn(scaled, rankTolerance)
  const gone = new Set(aliased.map(({ column }) => column))
  const kept = Array.from({ length: p }, (_, j) => j).filter((j) => !gone.has(j))
  const root = Math.sqrt(n)
  const m = kept.length
  const map = new Float64Array(p * m)
  kept.forEach((j, k) => {
    const width = (scaled.scale[j] as number) / root
    map[j * m + k] = 1 / width
    const moved = scaled.shift[j] as number
    // A column is centred on column 0 alone, which then is kept and comes first.
    if (j > 0 && moved !== 0) map[k] = (map[k] as number) - moved / width
  })
  const columns = kept.map((j) => (scaled.columns[j] as Float64Array).map((value) => value * root))
  return { columns, aliased, kept, map, rows: p }
}

/** Coefficients on the columns as they came. */
export function coefficientsOf({ map, rows, columns }: ScaledDesign, inner: ArrayLike<number>): Float64Array {
  const m = columns.length
  return Float64Array.from({ length: rows }, (_, j) => {
    let sum = 0
    for (let k = 0; k < m; k++) sum += (map[j * m + k] as number) * (inner[k] as number)
    return sum
  })
}

/**
 * Covariance of the coefficients on the columns as they came, p by p.
 *
 * @param inner of all that was estimated, `width` by `width`
 * @param from where the coefficients of this design begin in it
 */
export function covarianceOf(
  { map, rows: p, columns }: ScaledDesign,
  inner: Float64Array,
  width: number,
  from: number,
): Float64Array {
  const m = columns.length
  const covariance = new Float64Array(p * p)
  for (let j = 0; j < p; j++)
    for (let l = 0; l < p; l++) {
      let sum = 0
      for (let a = 0; a < m; a++)
        for (let b = 0; b < m; b++)
          sum += (map[j * m + a] as number) * (inner[(from + a) * width + from + b] as number) * (map[l * m + b] as number)
      covariance[j * p + l] = sum
    }
  return covariance
}
