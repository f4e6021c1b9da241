import { type OptionsOf, type Snapshot, textAt } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import {
  allKinds,
  auditRates,
  type FieldRate,
  type FieldShare,
  type Finding,
  fieldRate,
  fieldShares,
  type KindSet,
  kindSet,
  type Measure,
  type RateData,
  rateData,
  resolveFactor,
  type SelectedCounts,
  type ShareData,
  talliesOf,
  windowMark,
} from '@thrum/survey'
import { selectByOptions } from '../contrast/selection.ts'
import type { whoVisitsOptions } from './options.ts'

export type WhoVisitsOptions = OptionsOf<typeof whoVisitsOptions>

export interface KindRate {
  readonly kind: KindSet
  readonly rows: readonly number[]
  readonly data: RateData
  /** Null where no count of it has effort. */
  readonly rate: FieldRate | null
}

/** Rates and shares in one group of counts (all of them, or one level of what `by` names). */
export interface VisitGroup {
  readonly name: string | null
  readonly rows: readonly number[]
  readonly rates: readonly KindRate[]
  readonly shares: readonly FieldShare[]
}

export interface VisitCase {
  readonly snapshot: Snapshot
  readonly selected: SelectedCounts
  readonly measure: Measure
  readonly kinds: readonly KindSet[]
  readonly groups: readonly VisitGroup[]
  readonly findings: readonly Finding[]
  /** Shares are among sightings only. */
  readonly sightingsOnly: boolean
}

/** Kinds asked; where none were named, every kind of the project. */
function kindsOf(snapshot: Snapshot, options: WhoVisitsOptions): readonly KindSet[] {
  const names = options.kinds === undefined || options.kinds.length === 0 ? snapshot.kinds.map(({ name }) => name) : options.kinds
  return names.map((name) => kindSet(snapshot, name))
}

/**
 * Tallies that shares are made of: counts in which every kind of the project was looked for. Among sightings, where an
 * absent row says nothing, an absent kind adds nothing.
 */
export function shareTallies(snapshot: Snapshot, kind: KindSet, sightingsOnly: boolean): Float64Array {
  if (!sightingsOnly) return talliesOf(snapshot, kind)
  const each = kind.kinds.map((own) => talliesOf(snapshot, { ...kind, kinds: [own] }))
  return Float64Array.from({ length: snapshot.tables.count.rows }, (_, row) =>
    each.reduce((sum, tallies) => sum + (Number.isNaN(tallies[row] as number) ? 0 : (tallies[row] as number)), 0),
  )
}

/** True where the file of some count does not say whether an absent kind was looked for. */
export function areSightingsOnly(snapshot: Snapshot, rows: readonly number[]): boolean {
  return rows.some((row) => textAt(snapshot.tables.count.columns.zeros, row) === 'not-known')
}

function sharesOf(
  snapshot: Snapshot,
  kinds: readonly KindSet[],
  rows: readonly number[],
  sightingsOnly: boolean,
): readonly FieldShare[] {
  const all = shareTallies(snapshot, kindSet(snapshot, allKinds), sightingsOnly)
  const counted = rows.filter((row) => !Number.isNaN(all[row] as number) && (snapshot.countField[row] ?? -1) >= 0)
  const fields = [...new Set(counted.map((row) => snapshot.countField[row] as number))]
  const place = new Map(fields.map((field, k) => [field, k]))
  const totals = (tallies: Float64Array): number[] => {
    const sums = fields.map(() => 0)
    for (const row of counted) {
      const at = place.get(snapshot.countField[row] as number) ?? 0
      sums[at] = (sums[at] ?? 0) + (tallies[row] as number)
    }
    return sums
  }
  const wholes = totals(all)
  const data = kinds.map(
    (kind): ShareData => ({ kind: kind.label, parts: totals(shareTallies(snapshot, kind, sightingsOnly)), wholes }),
  )
  return fieldShares(data)
}

function groupRows(
  snapshot: Snapshot,
  rows: readonly number[],
  by: string | undefined,
): readonly { readonly name: string | null; readonly rows: readonly number[] }[] {
  if (by === undefined) return [{ name: null, rows }]
  const factor = resolveFactor(snapshot, by)
  const byLevel = Map.groupBy(
    rows.filter((row) => (factor.levelOf[row] ?? -1) >= 0),
    (row) => factor.levelOf[row] as number,
  )
  if (byLevel.size === 0) throw new ThrumError('questions/no-levels', { factor: by })
  return factor.levels.flatMap((name, level) => (byLevel.has(level) ? [{ name, rows: byLevel.get(level) ?? [] }] : []))
}

/** Rates and shares of kinds over the counts asked about, group by group, with the audit of the counts behind them. */
export function visitCase(snapshot: Snapshot, options: WhoVisitsOptions): VisitCase {
  const selected = selectByOptions(snapshot, options)
  const measure = options.per ?? 'time'
  const kinds = kindsOf(snapshot, options)
  const all = Array.from(selected.rows)
  const sightingsOnly = areSightingsOnly(snapshot, all)
  const groups = groupRows(snapshot, all, options.by).map(({ name, rows }): VisitGroup => {
    const rates = kinds.map((kind): KindRate => {
      const flying =
        (options.window ?? 'in') === 'all' ? rows : rows.filter((row) => windowMark(snapshot, row, kind.class) !== 'out')
      const data = rateData(snapshot, flying, talliesOf(snapshot, kind), measure, selected.unit)
      return { kind, rows: flying, data, rate: data.fields.length === 0 || sightingsOnly ? null : fieldRate(data) }
    })
    return { name, rows, rates, shares: sharesOf(snapshot, kinds, rows, sightingsOnly) }
  })
  const audited = auditRates({ snapshot, selected: all, kinds, measure, isSnapshot: selected.unit === 'snapshot' })
  return { snapshot, selected, measure, kinds, groups, findings: audited, sightingsOnly }
}
