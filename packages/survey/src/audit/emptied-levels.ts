import type { Snapshot } from '@thrum/model'
import type { Design, LeftOut } from '../design/design.ts'

/** Position in the design's levels of a count that did not enter; -1 where it has none. */
function levelOfRow(snapshot: Snapshot, design: Design, row: number): number {
  const { factor, levels, since } = design
  if (factor !== null) return levels.indexOf(factor.levels[factor.levelOf[row] ?? -1] ?? '')
  return since === null ? -1 : (snapshot.tables.count.columns.date.values[row] ?? Number.NaN) >= since ? 1 : 0
}

/** Levels of which no count is left, and some counts were left out for this reason. */
export function levelsEmptiedBy(snapshot: Snapshot, design: Design, left: LeftOut): readonly string[] {
  const touched = new Set(left.rows.map((row) => levelOfRow(snapshot, design, row)))
  return design.levels.filter((_, level) => touched.has(level) && !design.levelOf.includes(level))
}
