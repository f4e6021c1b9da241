import type { KindClass } from '@thrum/biology'
import { type CountingUnit, dayNumber, type Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import type { Factor } from '../factor/factor.ts'
import { halvesOf, type MeasuredFactor, measuredFactor } from '../factor/measured-factor.ts'
import { resolveFactor } from '../factor/resolve-factor.ts'
import type { Design, DesignField, LeftOut, Measure, Measured, Structure } from './design.ts'
import { effortOf, watchedMinutes } from './effort.ts'
import { windowMark } from './window.ts'

/** What a contrast is between. At least one of `between` and `since` is given. */
export interface ContrastAsked {
  readonly between: string | null
  /** Levels asked, the reference first; null: all there are, in their order. */
  readonly levels: readonly string[] | null
  /** ISO date on which "after" begins. */
  readonly since: string | null
  /** One slope per so large a step of a measured level; null: its levels are compared. */
  readonly step: number | null
  readonly measure: Measure
  /** Whether counts made when the insects could not fly are left out. */
  readonly window: 'in' | 'all'
  /** Whose weather window holds. */
  readonly kindClass: KindClass
}

export const before = 'before'
export const after = 'after'

interface Row {
  readonly row: number
  readonly field: number
  level: number
  readonly period: number
}

function levelsAsked(factor: Factor, asked: readonly string[] | null): readonly string[] {
  if (asked === null) return factor.levels
  const missing = asked.find((level) => !factor.levels.includes(level))
  if (missing !== undefined) {
    throw new ThrumError('survey/factor/no-such-level', { name: factor.name, level: missing, known: factor.levels.join(', ') })
  }
  return asked
}

/** Collects what is left out by reason, naming fields once each. */
function collector(snapshot: Snapshot) {
  const rows = new Map<LeftOut['because'], number[]>()
  return {
    add: (because: LeftOut['because'], row: number): void => {
      const list = rows.get(because)
      if (list === undefined) rows.set(because, [row])
      else list.push(row)
    },
    list: (): readonly LeftOut[] =>
      [...rows].map(([because, list]) => ({
        because,
        rows: list,
        fields: [...new Set(list.map((row) => snapshot.fields[snapshot.countField[row] ?? -1]?.name ?? ''))].filter(
          (name) => name !== '',
        ),
      })),
  }
}

/** How the levels lie over fields: one level a field, or several. Minutes decide nothing here, only where counts are. */
function structureOf(levelsOfField: ReadonlyMap<number, ReadonlySet<number>>, asked: ContrastAsked): Structure {
  if (asked.since !== null) return asked.between === null ? 'before-after' : 'before-after-control'
  const holding = [...levelsOfField.values()]
  const several = holding.filter((levels) => levels.size > 1).length
  return several > 0 && several >= holding.length - several ? 'within-fields' : 'between-fields'
}

/**
 * The day on which one level gave way to the other in every field that holds both: a treatment that began everywhere at once
 * is a comparison of before and after, whatever it is called. Null where the levels lie side by side in time.
 */
function dayOfChange(snapshot: Snapshot, rows: readonly Row[], factor: Factor | null): number | null {
  if (factor !== null && factor.about !== 'other' && factor.about !== 'hives') return null
  const { date } = snapshot.tables.count.columns
  const spans = new Map<number, { first: [number, number]; last: [number, number] }>()
  for (const { row, field, level } of rows) {
    const day = date.values[row] ?? Number.NaN
    if (Number.isNaN(day) || (level !== 0 && level !== 1)) return null
    const span = spans.get(field) ?? { first: [Infinity, Infinity], last: [-Infinity, -Infinity] }
    span.first[level] = Math.min(span.first[level], day)
    span.last[level] = Math.max(span.last[level], day)
    spans.set(field, span)
  }
  const both = [...spans.values()].filter(({ first }) => first[0] !== Infinity && first[1] !== Infinity)
  for (const later of [1, 0] as const) {
    const earlier = later === 1 ? 0 : 1
    if (both.length > 0 && both.every(({ first, last }) => first[later] > last[earlier])) {
      return both.reduce((least, { first }) => Math.min(least, first[later]), Number.POSITIVE_INFINITY)
    }
  }
  return null
}

/** The one level of a field in a before/after comparison with controls: its level afterwards, else before. */
function settleLevels(rows: readonly Row[]): void {
  const levelOf = new Map<number, number>()
  for (const period of [0, 1])
    for (const row of rows) if (row.period === period && row.level >= 0) levelOf.set(row.field, row.level)
  for (const row of rows) row.level = levelOf.get(row.field) ?? -1
}

function blockNames(snapshot: Snapshot, rows: readonly Row[], factor: Factor | null): ReadonlyMap<number, string> {
  const { crop } = snapshot.tables.count.columns
  const planned = snapshot.plan?.block ?? null
  // What is asked about is no block of its own: crops are not, and a planned block is not either.
  const declared = planned === null || planned === factor?.name ? null : resolveFactor(snapshot, planned)
  const words = new Map<number, Set<string>>()
  for (const { row, field } of rows) {
    const parts = [
      factor?.about === 'crop' ? '' : (crop.dictionary[crop.codes[row] ?? -1] ?? ''),
      declared === null ? '' : (declared.levels[declared.levelOf[row] ?? -1] ?? ''),
    ]
    const set = words.get(field) ?? new Set()
    set.add(parts.filter((part) => part !== '').join(', '))
    words.set(field, set)
  }
  return new Map([...words].map(([field, set]) => [field, [...set].sort().join(' and ')]))
}

/**
 * The design of a contrast over selected counts: which field, level and period each belongs to, its effort, and what could
 * not enter. Counts (how many insects) are not looked at.
 *
 * @throws ThrumError survey/contrast/nothing-asked, survey/factor/...
 */
export function buildDesign(
  snapshot: Snapshot,
  selected: ArrayLike<number>,
  unit: CountingUnit | null,
  asked: ContrastAsked,
): Design {
  const measured = asked.step === null || asked.between === null ? null : measuredFactor(snapshot, asked.between)
  const factor =
    asked.between === null
      ? null
      : measured === null
        ? resolveFactor(snapshot, asked.between)
        : halvesOf(snapshot, selected, measured)
  if (factor === null && asked.since === null) throw new ThrumError('survey/contrast/nothing-asked')
  const since = asked.since === null ? null : dayNumber(asked.since)
  const levels = factor === null ? [before, after] : levelsAsked(factor, asked.levels)
  const place = factor === null ? [] : factor.levels.map((level) => levels.indexOf(level))
  const left = collector(snapshot)
  const { date } = snapshot.tables.count.columns

  const found: Row[] = []
  for (const row of Array.from(selected)) {
    const field = snapshot.countField[row] ?? -1
    const day = date.values[row] ?? Number.NaN
    const period = since === null ? 0 : day >= since ? 1 : 0
    const code = factor === null ? 0 : (factor.levelOf[row] ?? -1)
    const level = factor === null ? period : (place[code] ?? -1)
    if (field < 0) left.add('no-field', row)
    else if (since !== null && Number.isNaN(day)) left.add('no-date', row)
    else if (code < 0 && since === null) left.add('no-level', row)
    else if (level < 0 && since === null) left.add('level-not-asked', row)
    else if (Number.isNaN(effortOf(snapshot, row, asked.measure, unit))) left.add('no-effort', row)
    else if (asked.window === 'in' && windowMark(snapshot, row, asked.kindClass) === 'out') left.add('outside-window', row)
    else found.push({ row, field, level, period })
  }
  if (factor !== null && since !== null) settleLevels(found)

  const levelsOfField = new Map<number, Set<number>>()
  for (const { field, level, period } of found) {
    const set = levelsOfField.get(field) ?? new Set()
    set.add(since === null ? level : period)
    levelsOfField.set(field, set)
  }
  const lying = structureOf(levelsOfField, asked)
  const begun =
    lying === 'within-fields' && levels.length === 2 && measured === null ? dayOfChange(snapshot, found, factor) : null
  const structure = begun === null ? lying : 'before-after'
  const kept = found.filter(({ row, field, level }) => {
    const holds = levelsOfField.get(field)?.size ?? 0
    if (level < 0) left.add('no-level', row)
    else if (structure === 'between-fields' && holds > 1) left.add('field-holds-both-levels', row)
    else if (structure !== 'between-fields' && holds < (structure === 'within-fields' ? Math.min(levels.length, 2) : 2)) {
      left.add('field-lacks-a-level', row)
    } else return true
    return false
  })
  const rows = begun === null ? kept : kept.map((row) => ({ ...row, period: row.level }))
  return assemble(snapshot, rows, {
    structure,
    factor,
    levels,
    since: since ?? begun,
    measured,
    asked,
    unit,
    leftOut: left.list(),
  })
}

interface Parts {
  readonly structure: Structure
  readonly factor: Factor | null
  readonly levels: readonly string[]
  readonly since: number | null
  readonly measured: MeasuredFactor | null
  readonly asked: ContrastAsked
  readonly unit: CountingUnit | null
  readonly leftOut: readonly LeftOut[]
}

function measuredRows({ measured, asked }: Parts, kept: readonly Row[]): Measured | null {
  if (measured === null || asked.step === null) return null
  const values = Float64Array.from(kept, ({ row }) => measured.values[row] as number)
  return { name: measured.name, scale: measured.scale, step: asked.step, values }
}

function assemble(snapshot: Snapshot, kept: readonly Row[], parts: Parts): Design {
  const { structure, asked, unit } = parts
  const names = blockNames(snapshot, kept, parts.factor)
  const blocks = [...new Set(names.values())].sort()
  const indices = [...new Set(kept.map(({ field }) => field))].sort((a, b) => a - b)
  const position = new Map(indices.map((field, k) => [field, k]))
  const oneLevel = structure === 'between-fields' || structure === 'before-after-control'
  const levelOfField = new Map(kept.map(({ field, level }) => [field, level]))
  const fields = indices.map(
    (index): DesignField => ({
      name: snapshot.fields[index]?.name ?? '',
      index,
      block: blocks.indexOf(names.get(index) ?? ''),
      level: oneLevel ? (levelOfField.get(index) ?? -1) : -1,
    }),
  )
  return {
    structure,
    factor: parts.factor,
    levels: parts.levels,
    since: parts.since,
    measured: measuredRows(parts, kept),
    measure: asked.measure,
    unit,
    rows: Int32Array.from(kept, ({ row }) => row),
    fieldOf: Int32Array.from(kept, ({ field }) => position.get(field) ?? -1),
    levelOf: Int32Array.from(kept, ({ level }) => level),
    periodOf: Int32Array.from(kept, ({ period }) => period),
    effort: Float64Array.from(kept, ({ row }) => effortOf(snapshot, row, asked.measure, unit)),
    minutes: Float64Array.from(kept, ({ row }) => watchedMinutes(snapshot, row)),
    fields,
    blocks,
    leftOut: parts.leftOut,
  }
}
