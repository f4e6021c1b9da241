import { cholesky, solveCholesky } from './symmetric.ts'

/** A factor whose levels have intercepts drawn at random: for each row the place of its level. */
export interface Grouping {
  readonly name: string
  /** Length n, each from 0 to `levels` - 1. */
  readonly of: Int32Array
  readonly levels: number
}

/** Random intercepts of several factors as one vector: factor k begins at `start[k]`. */
export interface Intercepts {
  readonly groupings: readonly Grouping[]
  readonly start: readonly number[]
  readonly total: number
}

export function joinIntercepts(groupings: readonly Grouping[]): Intercepts {
  const start: number[] = []
  let total = 0
  for (const { levels } of groupings) {
    start.push(total)
    total += levels
  }
  return { groupings, start, total }
}

/**
 * H = I + L Z'WZ L, the curvature of the random intercepts, where L holds the signed standard deviations.
 *
 * Of one factor it is diagonal; of several a dense Cholesky factor holds it.
 */
export interface Curvature {
  /** Takes the weights in. @returns false where H is not positive definite */
  assemble(sd: Float64Array, weight: Float64Array): boolean
  /** H x = b, in place of b. */
  solve(b: Float64Array): void
  logDeterminant(): number
  /** H^-1 at the levels of one row: entry (k, l), K by K, row major. */
  inverseAt(row: number, into: Float64Array): void
}

function diagonal({ groupings, total }: Intercepts): Curvature {
  const h = new Float64Array(total)
  const of = groupings[0]?.of ?? new Int32Array(0)
  return {
    assemble: (sd, weight) => {
      const scale = (sd[0] ?? 0) ** 2
      h.fill(0)
      for (let i = 0; i < of.length; i++) h[of[i] as number] = (h[of[i] as number] as number) + (weight[i] as number)
      let isPositive = true
      for (let j = 0; j < total; j++) {
        h[j] = 1 + scale * (h[j] as number)
        if (!((h[j] as number) > 0)) isPositive = false
      }
      return isPositive
    },
    solve: (b) => {
      for (let j = 0; j < total; j++) b[j] = (b[j] as number) / (h[j] as number)
    },
    logDeterminant: () => {
      let sum = 0
      for (let j = 0; j < total; j++) sum += Math.log(h[j] as number)
      return sum
    },
    inverseAt: (row, into) => {
      into[0] = 1 / (h[of[row] as number] as number)
    },
  }
}

function dense({ groupings, start, total: q }: Intercepts): Curvature {
  const factor = new Float64Array(q * q)
  const inverse = new Float64Array(q * q)
  let isInverted = false
  const places = groupings.map(({ of }, k) => of.map((level) => level + (start[k] as number)))

  function invert(): void {
    const unit = new Float64Array(q)
    for (let j = 0; j < q; j++) {
      unit.fill(0)
      unit[j] = 1
      solveCholesky(factor, q, unit)
      inverse.set(unit, j * q)
    }
    isInverted = true
  }

  return {
    assemble: (sd, weight) => {
      isInverted = false
      factor.fill(0)
      for (let k = 0; k < places.length; k++) {
        const own = places[k] as Int32Array
        for (let l = 0; l <= k; l++) {
          const other = places[l] as Int32Array
          const scale = (sd[k] as number) * (sd[l] as number)
          for (let i = 0; i < weight.length; i++) {
            const at = (own[i] as number) * q + (other[i] as number)
            factor[at] = (factor[at] as number) + scale * (weight[i] as number)
          }
        }
      }
      for (let j = 0; j < q; j++) factor[j * q + j] = (factor[j * q + j] as number) + 1
      return cholesky(factor, q)
    },
    solve: (b) => solveCholesky(factor, q, b),
    logDeterminant: () => {
      let sum = 0
      for (let j = 0; j < q; j++) sum += Math.log(factor[j * q + j] as number)
      return 2 * sum
    },
    inverseAt: (row, into) => {
      if (!isInverted) invert()
      const count = places.length
      for (let k = 0; k < count; k++)
        for (let l = 0; l < count; l++)
          into[k * count + l] = inverse[
            ((places[k] as Int32Array)[row] as number) * q + ((places[l] as Int32Array)[row] as number)
          ] as number
    },
  }
}

export const curvatureOf = (intercepts: Intercepts): Curvature =>
  intercepts.groupings.length <= 1 ? diagonal(intercepts) : dense(intercepts)
