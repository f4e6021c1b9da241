import type { Design } from '../design/design.ts'

/** What one field holds at one level (or in one period): the total of a kind and the effort behind it. */
export interface Cell {
  /** Position in the design's fields. */
  readonly field: number
  /** Position in the design's levels; for before/after with controls: 0 before, 1 after. */
  readonly side: number
  readonly total: number
  readonly effort: number
  readonly counts: number
}

/**
 * Totals of a kind by field and level, over the counts in which it was looked for.
 *
 * @param tallies for each count of the snapshot how many; NaN where it was not looked for
 */
export function cellsOf(design: Design, tallies: Float64Array): readonly Cell[] {
  const sides = Math.max(2, design.levels.length)
  const byPeriod = design.structure === 'before-after-control'
  const total = new Float64Array(design.fields.length * sides)
  const effort = new Float64Array(total.length)
  const counts = new Int32Array(total.length)
  for (let k = 0; k < design.rows.length; k++) {
    const tally = tallies[design.rows[k] as number] as number
    if (Number.isNaN(tally)) continue
    const side = byPeriod ? (design.periodOf[k] as number) : (design.levelOf[k] as number)
    const at = (design.fieldOf[k] as number) * sides + side
    total[at] = (total[at] as number) + tally
    effort[at] = (effort[at] as number) + (design.effort[k] as number)
    counts[at] = (counts[at] as number) + 1
  }
  const cells: Cell[] = []
  for (let at = 0; at < total.length; at++) {
    if ((counts[at] as number) === 0) continue
    cells.push({
      field: Math.floor(at / sides),
      side: at % sides,
      total: total[at] as number,
      effort: effort[at] as number,
      counts: counts[at] as number,
    })
  }
  return cells
}
