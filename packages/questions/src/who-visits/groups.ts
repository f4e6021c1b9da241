import type { OptionsOf, Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import {
  areSightingsOnly,
  auditRates,
  type FieldRate,
  type FieldShare,
  type Finding,
  fieldRate,
  type KindSet,
  kindSet,
  type Measure,
  type RateData,
  rateData,
  resolveFactor,
  type SelectedCounts,
  type SharedCounts,
  sharedCounts,
  sharesOf,
  talliesOf,
  windowMark,
} from '@thrum/survey'
import { selectByOptions } from '../contrast/selection.ts'
import type { whoVisitsOptions } from './options.ts'

export type WhoVisitsOptions = OptionsOf<typeof whoVisitsOptions>

export interface KindRate {
  readonly kind: KindSet
  readonly rows: readonly number[]
  /** Counts of the group made when this kind could not fly. */
  readonly outside: readonly number[]
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
  /** Counts that the shares rest on. */
  readonly shared: SharedCounts
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

/** How many fields these counts were made in; counts of an unknown field are of none. */
export function fieldsOf(snapshot: Snapshot, rows: readonly number[]): number {
  const fields = new Set<number>()
  for (const row of rows) {
    const field = snapshot.countField[row] ?? -1
    if (field >= 0) fields.add(field)
  }
  return fields.size
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
      const outside =
        (options.window ?? 'in') === 'all' ? [] : rows.filter((row) => windowMark(snapshot, row, kind.class) === 'out')
      const flying = outside.length === 0 ? rows : rows.filter((row) => windowMark(snapshot, row, kind.class) !== 'out')
      const data = rateData(snapshot, flying, talliesOf(snapshot, kind), measure, selected.unit)
      return { kind, rows: flying, outside, data, rate: data.fields.length === 0 || sightingsOnly ? null : fieldRate(data) }
    })
    const shared = sharedCounts(snapshot, rows, sightingsOnly)
    return { name, rows, rates, shared, shares: sharesOf(shared, kinds) }
  })
  const audited = auditRates({ snapshot, selected: all, kinds, measure, isSnapshot: selected.unit === 'snapshot' })
  return { snapshot, selected, measure, kinds, groups, findings: audited, sightingsOnly }
}
