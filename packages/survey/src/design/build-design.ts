import type { KindClass } from '@thrum/biology'
import { type CountingUnit, dayNumber, type Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import type { Factor } from '../factor/factor.ts'
import { halvesOf, type MeasuredFactor, measuredFactor } from '../factor/measured-factor.ts'
import { resolveFactor } from '../factor/resolve-factor.ts'
import { blockNames, dayOfChange, numbersOf, type Rows, settleLevels, takeRows } from './contrast-rows.ts'
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
  /** False where effort cancels (relative counts): counts without it enter all the same. */
  readonly needsEffort: boolean
  /** Whose weather window holds. */
  readonly kindClass: KindClass
}

export const before = 'before'
export const after = 'after'

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

  const most = selected.length
  const places = new Int32Array(most)
  const all: Rows = {
    rows: new Int32Array(most),
    fields: new Int32Array(most),
    levels: new Int32Array(most),
    periods: new Int32Array(most),
  }
  let entered = 0
  for (let k = 0; k < most; k++) {
    const row = selected[k] as number
    const field = snapshot.countField[row] ?? -1
    const day = date.values[row] ?? Number.NaN
    const period = since === null ? 0 : day >= since ? 1 : 0
    const code = factor === null ? 0 : (factor.levelOf[row] ?? -1)
    const level = factor === null ? period : (place[code] ?? -1)
    if (field < 0) left.add('no-field', row)
    else if (since !== null && Number.isNaN(day)) left.add('no-date', row)
    else if (code < 0 && since === null) left.add('no-level', row)
    else if (level < 0 && since === null) left.add('level-not-asked', row)
    else if (asked.needsEffort && Number.isNaN(effortOf(snapshot, row, asked.measure, unit))) left.add('no-effort', row)
    else if (asked.window === 'in' && windowMark(snapshot, row, asked.kindClass) === 'out') left.add('outside-window', row)
    else {
      all.rows[k] = row
      all.fields[k] = field
      all.levels[k] = level
      all.periods[k] = period
      places[entered++] = k
    }
  }
  const found = takeRows(all, places.subarray(0, entered))
  if (factor !== null && since !== null) settleLevels(found)

  const levelsOfField = new Map<number, Set<number>>()
  const divided = since === null ? found.levels : found.periods
  for (let k = 0; k < entered; k++) {
    const field = found.fields[k] as number
    let set = levelsOfField.get(field)
    if (set === undefined) {
      set = new Set()
      levelsOfField.set(field, set)
    }
    set.add(divided[k] as number)
  }
  const lying = structureOf(levelsOfField, asked)
  const begun =
    lying === 'within-fields' && levels.length === 2 && measured === null ? dayOfChange(snapshot, found, factor) : null
  const structure = begun === null ? lying : 'before-after'
  const least = structure === 'within-fields' ? Math.min(levels.length, 2) : 2
  let stay = 0
  for (let k = 0; k < entered; k++) {
    const row = found.rows[k] as number
    const holds = levelsOfField.get(found.fields[k] as number)?.size ?? 0
    if ((found.levels[k] as number) < 0) left.add('no-level', row)
    else if (structure === 'between-fields' && holds > 1) left.add('field-holds-both-levels', row)
    else if (structure !== 'between-fields' && holds < least) left.add('field-lacks-a-level', row)
    else places[stay++] = k
  }
  const kept = takeRows(found, places.subarray(0, stay))
  const rows = begun === null ? kept : { ...kept, periods: kept.levels }
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

function measuredRows({ measured, asked }: Parts, { rows }: Rows): Measured | null {
  if (measured === null || asked.step === null) return null
  const values = numbersOf(rows, (row) => measured.values[row] as number)
  return { name: measured.name, scale: measured.scale, step: asked.step, values }
}

/** Effort of each row. Where it is not needed, and not known of all, every watch weighs alike. */
function effortsOf(snapshot: Snapshot, rows: Int32Array, { asked, unit }: Parts): Pick<Design, 'effort' | 'effortKnown'> {
  const effort = numbersOf(rows, (row) => effortOf(snapshot, row, asked.measure, unit))
  return effort.some(Number.isNaN) ? { effort: effort.fill(1), effortKnown: false } : { effort, effortKnown: true }
}

function assemble(snapshot: Snapshot, kept: Rows, parts: Parts): Design {
  const { structure, asked, unit } = parts
  const names = blockNames(snapshot, kept, parts.factor)
  const blocks = [...new Set(names.values())].sort()
  const oneLevel = structure === 'between-fields' || structure === 'before-after-control'
  const levelOfField = new Map<number, number>()
  for (let k = 0; k < kept.rows.length; k++) levelOfField.set(kept.fields[k] as number, kept.levels[k] as number)
  const indices = [...levelOfField.keys()].sort((a, b) => a - b)
  const position = new Map(indices.map((field, k) => [field, k]))
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
    rows: kept.rows,
    fieldOf: kept.fields.map((field) => position.get(field) ?? -1),
    levelOf: kept.levels,
    periodOf: kept.periods,
    ...effortsOf(snapshot, kept.rows, parts),
    minutes: numbersOf(kept.rows, (row) => watchedMinutes(snapshot, row)),
    fields,
    blocks,
    leftOut: parts.leftOut,
  }
}
