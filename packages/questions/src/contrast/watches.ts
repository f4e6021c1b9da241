import type { Snapshot } from '@thrum/model'
import { type Interval, rateRatioExact } from '@thrum/stats'
import {
  after,
  before,
  type Cell,
  type Design,
  type FieldShare,
  fieldShares,
  kindSet,
  type RelativeCount,
  relativeCount,
  type ShareData,
  talliesOf,
} from '@thrum/survey'
import type { ContrastCase, KindContrast } from './contrast-case.ts'

/** What was counted at one level, whatever may be concluded from it. */
export interface LevelCounted {
  readonly level: string
  readonly total: number
  readonly effort: number
  readonly watches: number
  readonly fields: number
}

/** The groups that counts are told by: the levels; with controls each level before and after. */
function groupsOf(design: Design): readonly { readonly name: string; readonly holds: (cell: Cell) => boolean }[] {
  if (design.structure !== 'before-after-control') {
    return design.levels.map((name, level) => ({ name, holds: (cell) => cell.side === level }))
  }
  return design.levels.flatMap((name, level) =>
    [before, after].map((period, side) => ({
      name: `${name}, ${period}`,
      holds: (cell: Cell) => cell.side === side && design.fields[cell.field]?.level === level,
    })),
  )
}

/** Totals of a kind in each group. */
export function countedByLevel({ design }: ContrastCase, { contrast }: KindContrast): readonly LevelCounted[] {
  return groupsOf(design).map(({ name, holds }) => {
    const cells = contrast.cells.filter(holds)
    return {
      level: name,
      total: cells.reduce((sum, { total }) => sum + total, 0),
      effort: cells.reduce((sum, { effort }) => sum + effort, 0),
      watches: cells.reduce((sum, { counts }) => sum + counts, 0),
      fields: cells.length,
    }
  })
}

/** Exact conditional ratio of two levels' pooled counts: these watches only, never a headline. Null without effort or insects. */
export function exactRatio(
  levels: readonly LevelCounted[],
  level: number,
): { readonly ratio: number; readonly limits: Interval } | null {
  const [reference, other] = [levels[0], levels[level]]
  if (reference === undefined || other === undefined || !(reference.effort > 0) || !(other.effort > 0)) return null
  const found = rateRatioExact({ count1: other.total, effort1: other.effort, count2: reference.total, effort2: reference.effort })
  return found.kind === 'nothing-counted' ? null : found
}

/** Each kind's tallies by field at one level, over the rows of the design in which all kinds were looked for. */
function tallyByField(
  snapshot: Snapshot,
  design: Design,
  side: number | null,
): { readonly kind: string; readonly byField: Map<number, number> }[] {
  const sets = snapshot.kinds.map((kind) => kindSet(snapshot, kind.name))
  const tallies = sets.map((set) => talliesOf(snapshot, set))
  const sides = design.structure === 'before-after-control' ? design.periodOf : design.levelOf
  const rows = Array.from(design.rows).flatMap((row, k) =>
    side === null || sides[k] === side ? [{ row, field: design.fieldOf[k] as number }] : [],
  )
  return sets.map((set, s) => {
    const byField = new Map<number, number>()
    for (const { row, field } of rows) {
      const tally = tallies[s]?.[row] ?? Number.NaN
      if (!Number.isNaN(tally)) byField.set(field, (byField.get(field) ?? 0) + tally)
    }
    return { kind: set.label, byField }
  })
}

/** Share of each kind among all visitors counted, at one level or over all rows of the design (null). */
export function sharesAt({ snapshot, design }: ContrastCase, side: number | null): readonly FieldShare[] {
  const found = tallyByField(snapshot, design, side)
  const fields = [...new Set(found.flatMap(({ byField }) => [...byField.keys()]))]
  const wholes = fields.map((field) => found.reduce((sum, { byField }) => sum + (byField.get(field) ?? 0), 0))
  const data = found.map(
    ({ kind, byField }): ShareData => ({ kind, parts: fields.map((field) => byField.get(field) ?? 0), wholes }),
  )
  return fieldShares(data)
}

/** A kind against all other kinds together, at one level or over all (null). */
export function againstTheRest({ snapshot, design }: ContrastCase, kind: string, side: number | null): RelativeCount | null {
  const found = tallyByField(snapshot, design, side)
  const fields = [...new Set(found.flatMap(({ byField }) => [...byField.keys()]))]
  const own = found.find((entry) => entry.kind === kind)
  if (own === undefined || found.length < 2) return null
  const first = fields.map((field) => own.byField.get(field) ?? 0)
  const rest = fields.map((field) =>
    found.reduce((sum, entry) => (entry.kind === kind ? sum : sum + (entry.byField.get(field) ?? 0)), 0),
  )
  return relativeCount(first, rest)
}

/** The kind counted most often in the rows of the design; null where none was. */
export function commonestKind({ snapshot, design }: ContrastCase): string | null {
  const totals = tallyByField(snapshot, design, null).map(({ kind, byField }) => ({
    kind,
    total: [...byField.values()].reduce((a, b) => a + b, 0),
  }))
  const most = totals.reduce((best, own) => (own.total > best.total ? own : best), { kind: '', total: 0 })
  return most.total > 0 ? most.kind : null
}
