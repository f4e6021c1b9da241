import { type Columns, residualsAfter } from '../least-squares/inflation.ts'
import { norm } from '../least-squares/scaled-columns.ts'

/** A part of a level, or of an outcome, this small beside the whole is rounding. */
const dust = 1e-9

/**
 * Absolute partial correlation of a level with an outcome, beside base columns: |t| on a bounded scale, in the same order.
 *
 * Base directions are made orthonormal once, so each arrangement costs their number times the units.
 *
 * @param left residuals of the outcome after the base; not all 0
 * @param base columns that stay with their units
 * @returns for a level: from 0 to 1, or null when nothing of it is left beside the base
 */
export function adjustedEffect(left: Float64Array, base: Columns): (level: Float64Array) => number | null {
  const directions = orthonormal(base)
  const outcome = norm(left)
  return (level) => {
    let whole = 0
    let along = 0
    for (let i = 0; i < level.length; i++) {
      const value = level[i] ?? 0
      whole += value * value
      along += value * (left[i] ?? 0)
    }
    let rest = whole
    for (const direction of directions) {
      let dot = 0
      for (let i = 0; i < level.length; i++) dot += (direction[i] ?? 0) * (level[i] ?? 0)
      rest -= dot * dot
    }
    if (!(rest > dust * whole)) return null
    const effect = Math.abs(along) / (Math.sqrt(rest) * outcome)
    return effect <= dust ? 0 : effect
  }
}

/** Unit vectors that span the base: what is left of each column after those before it. */
function orthonormal(base: Columns): readonly Float64Array[] {
  const out: Float64Array[] = []
  for (const column of base) {
    const left = residualsAfter(column, out)
    const length = norm(left)
    if (length > dust * norm(column)) out.push(left.map((value) => value / length))
  }
  return out
}
