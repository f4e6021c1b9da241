import type { Snapshot } from '@thrum/model'
import { inflation } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import { alikeFrame, takenTogetherFrom, weighed } from './alike-frame.ts'
import { columnOnFrame, type Frame, frameOf, nuisanceOnFrame, withinGroups } from './frame.ts'
import { type Nuisance, type NuisanceName, nuisancesOf } from './nuisance.ts'

/** How far one nuisance (or date with stage) is tangled with the contrast asked. */
export interface Tangle {
  readonly nuisances: readonly NuisanceName[]
  /** Variance of the contrast with the nuisance over that without; Infinity where they cannot be told apart. */
  readonly inflation: number
  /** Position in the design's levels of the level that is tangled worst with the reference. */
  readonly level: number
  /** Within every block all units of one level lie beyond all units of the other. */
  readonly apart: boolean
  /** Columns it would take to adjust for it. */
  readonly columns: number
}

export interface Tangles {
  readonly found: readonly Tangle[]
  /** Nuisances that could not be checked because units lack them. */
  readonly unchecked: readonly NuisanceName[]
  /** The contrast is lost already: blocks, fields or periods hold one level each. */
  readonly lost: boolean
}

/** Contrast columns: an indicator of each level but the reference; for before/after with controls, of that level afterwards. */
function contrastColumns(design: Design, frame: Frame): readonly Float64Array[] {
  if (design.measured !== null) {
    return [withinGroups(frame.groupOf, columnOnFrame(frame, design.effort, design.measured.values))]
  }
  const interaction = design.structure === 'before-after-control'
  return design.levels.slice(1).map((_, k) =>
    withinGroups(
      frame.groupOf,
      Float64Array.from(frame.levelOf, (level, row) => (level === k + 1 && (!interaction || frame.periodOf[row] === 1) ? 1 : 0)),
      frame.alike?.number,
    ),
  )
}

/**
 * Columns kept beside the contrasts: with controls, the period in each block, which is what blocks are to the fields' changes.
 * Blocks of fields, and fields, are in the grouping.
 */
function keptColumns(design: Design, frame: Frame): readonly Float64Array[] {
  if (design.structure !== 'before-after-control') return []
  return design.blocks.map((_, block) =>
    withinGroups(
      frame.groupOf,
      Float64Array.from(frame.periodOf, (period, row) => (design.fields[frame.groupOf[row] ?? -1]?.block === block ? period : 0)),
    ),
  )
}

/** Units for the overlap of levels: the frame's own; for before/after with controls, the fields' differences. */
function overlapUnits(design: Design, frame: Frame, column: Float64Array) {
  if (design.structure !== 'before-after-control') return { values: column, levels: frame.levelOf, groups: frame.groupOf }
  return {
    values: Float64Array.from(design.fields, (_, k) => (column[2 * k + 1] ?? Number.NaN) - (column[2 * k] ?? Number.NaN)),
    levels: Int32Array.from(design.fields, ({ level }) => level),
    groups: Int32Array.from(design.fields, ({ block }) => block),
  }
}

/** True if in every group that holds both levels all units of one lie beyond all of the other, the same way round. */
export function liesApart(values: Float64Array, levels: Int32Array, groups: Int32Array, level: number): boolean {
  const ends = new Map<number, { low: [number, number]; high: [number, number] }>()
  for (let k = 0; k < values.length; k++) {
    if (levels[k] !== 0 && levels[k] !== level) continue
    const side = levels[k] === 0 ? 0 : 1
    const group = groups[k] as number
    const found = ends.get(group) ?? { low: [Infinity, Infinity], high: [-Infinity, -Infinity] }
    found.low[side] = Math.min(found.low[side] as number, values[k] as number)
    found.high[side] = Math.max(found.high[side] as number, values[k] as number)
    ends.set(group, found)
  }
  const both = [...ends.values()].filter(({ low }) => low[0] !== Infinity && low[1] !== Infinity)
  if (both.length === 0) return false
  return both.every(({ low, high }) => low[1] > high[0]) || both.every(({ low, high }) => high[1] < low[0])
}

/** A nuisance that can be checked, its columns told from their group on a frame. */
interface Usable {
  readonly nuisance: Nuisance
  readonly columns: readonly Float64Array[]
}

/** How far some nuisances together are tangled with the contrasts: the greatest inflation over the levels asked. */
function measure(design: Design, frame: Frame, usable: readonly Usable[]): Tangle {
  const contrasts = contrastColumns(design, frame)
  const base = weighed(frame, [...contrasts, ...keptColumns(design, frame)])
  const columns = usable.flatMap((own) => own.columns)
  const nuisance = weighed(frame, columns)
  const each = contrasts.map((_, contrast) => inflation({ base, contrast, nuisance }))
  const worst = each.reduce((most, value, k) => (value > (each[most] ?? 0) ? k : most), 0)
  const apart = usable.some(({ nuisance: one }) => {
    // An hour and its square are one curve, and lie apart by the hour; shares of several words have no one order.
    const column = one.columns[0]
    if (column === undefined || (one.columns.length > 1 && one.name !== 'hour')) return false
    const units = overlapUnits(design, frame, columnOnFrame(frame, design.effort, column))
    return design.levels.slice(1).some((_, k) => liesApart(units.values, units.levels, units.groups, k + 1))
  })
  return {
    nuisances: usable.map(({ nuisance: { name } }) => name),
    inflation: each[worst] ?? 1,
    level: worst + 1,
    apart,
    columns: columns.length,
  }
}

/** True where the contrast is lost before any nuisance enters. */
function isLost(design: Design, frame: Frame): boolean {
  const contrasts = contrastColumns(design, frame)
  const base = weighed(frame, [...contrasts, ...keptColumns(design, frame)])
  return contrasts.some((_, contrast) => inflation({ base, contrast, nuisance: [] }) === Number.POSITIVE_INFINITY)
}

/**
 * Each nuisance alone, and date with stage as a pair; the greatest inflation over the levels asked stands for each.
 *
 * @param togetherFrom from how many counts on those that read alike are taken together: the same to some last digits
 */
export function tanglesOf(snapshot: Snapshot, design: Design, togetherFrom = takenTogetherFrom): Tangles {
  if (design.rows.length === 0) return { found: [], unchecked: [], lost: true }
  const plain = frameOf(design)
  const frameFor = (nuisances: readonly Nuisance[]): Frame => alikeFrame(design, nuisances, togetherFrom) ?? plain
  const unchecked: NuisanceName[] = []
  const usable: Usable[] = []
  const found: Tangle[] = []
  for (const nuisance of nuisancesOf(snapshot, design)) {
    const frame = frameFor([nuisance])
    const columns = nuisanceOnFrame(design, frame, nuisance)?.told ?? null
    if (columns === null) {
      if (nuisance.columns.length > 0 || nuisance.name === 'date' || nuisance.name === 'stage') unchecked.push(nuisance.name)
    } else if (columns.length > 0) {
      usable.push({ nuisance, columns })
      found.push(measure(design, frame, [{ nuisance, columns }]))
    }
  }
  const pair = usable.flatMap(({ nuisance }) => (nuisance.name === 'date' || nuisance.name === 'stage' ? [nuisance] : []))
  if (pair.length === 2) {
    const frame = frameFor(pair)
    const both = pair.map((nuisance) => ({ nuisance, columns: nuisanceOnFrame(design, frame, nuisance)?.told ?? [] }))
    found.push(measure(design, frame, both))
  }
  return { found, unchecked, lost: isLost(design, frameFor([])) }
}

/** The frame with the nuisance columns that an inflation was computed from, for anyone who wants to compute it again. */
export interface FrameTable {
  readonly frame: Frame
  /** Of a measured level, its mean in each row. */
  readonly measured: Float64Array | null
  readonly nuisances: readonly { readonly name: NuisanceName; readonly columns: readonly Float64Array[] }[]
}

export function frameTable(snapshot: Snapshot, design: Design): FrameTable {
  const frame = frameOf(design)
  const { measured } = design
  return {
    frame,
    measured: measured === null ? null : columnOnFrame(frame, design.effort, measured.values),
    nuisances: nuisancesOf(snapshot, design).flatMap((nuisance) => {
      const columns = nuisanceOnFrame(design, frame, nuisance)?.means ?? []
      return columns.length === 0 ? [] : [{ name: nuisance.name, columns }]
    }),
  }
}
