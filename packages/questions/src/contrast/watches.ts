import { type Interval, rateRatioExact } from '@thrum/stats'
import {
  againstTheRest,
  allKinds,
  type Cell,
  type Design,
  type FieldShare,
  type KindSet,
  kindSet,
  type RelativeCount,
  type SharedCounts,
  sharedCounts,
  sharesOf,
} from '@thrum/survey'
import type { ContrastCase, KindContrast } from './contrast-case.ts'
import { groupName, levelOfCell } from './phrases.ts'

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
  const sides = design.structure === 'before-after-control' ? [0, 1] : [null]
  return design.levels.flatMap((_, level) =>
    sides.map((period) => ({
      name: groupName(design, level, period ?? 0),
      holds: ({ field, side }: Cell) => levelOfCell(design, field, side) === level && (period === null || side === period),
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

/** Counts of the design at one level (null: at any) that shares of kinds can be made of. */
function sharedAt({ snapshot, design, sightingsOnly }: ContrastCase, side: number | null): SharedCounts {
  const sides = design.structure === 'before-after-control' ? design.periodOf : design.levelOf
  const rows = side === null ? design.rows : design.rows.filter((_, k) => sides[k] === side)
  return sharedCounts(snapshot, rows, sightingsOnly)
}

const everyKind = ({ snapshot }: ContrastCase): readonly KindSet[] =>
  kindSet(snapshot, allKinds).kinds.map((kind) => kindSet(snapshot, snapshot.kinds[kind]?.name ?? ''))

/** Share of each kind among all visitors counted at one level, and how many watches these were. */
export function sharesAt(
  asked: ContrastCase,
  side: number,
): { readonly shares: readonly FieldShare[]; readonly watches: number } {
  const shared = sharedAt(asked, side)
  return { shares: sharesOf(shared, everyKind(asked)), watches: shared.rows.length }
}

/** A kind against all other kinds together at one level; null where there is no other kind, or neither was counted. */
export function relativeAt(asked: ContrastCase, kind: KindSet, side: number): RelativeCount | null {
  return againstTheRest(sharedAt(asked, side), kind)
}

/** The kind counted most often in the rows of the design; null where none was. */
export function commonestKind(asked: ContrastCase): string | null {
  const { totalsOf } = sharedAt(asked, null)
  const totals = everyKind(asked).map((kind) => ({ kind: kind.label, total: totalsOf(kind).reduce((a, b) => a + b, 0) }))
  const most = totals.reduce((best, own) => (own.total > best.total ? own : best), { kind: '', total: 0 })
  return most.total > 0 ? most.kind : null
}
