import type { Snapshot } from '@thrum/model'
import type { Grouping } from '@thrum/stats'
import type { Design } from '../design/design.ts'
import { codedNumbers } from '../factor/coded-numbers.ts'
import { meansOver } from '../nuisance/frame.ts'
import { nuisancesOf } from '../nuisance/nuisance.ts'
import type { PairContrast } from './field-contrast.ts'

/** A column of a count model, by name. */
export interface ModelColumn {
  readonly name: string
  /** One number a total. */
  readonly values: Float64Array
}

/** Fewest groups whose variance can be told (methods 2.6). */
export const leastGroups = 5

/** True where fields hold both sides, so that what differs is told within each. */
export const isWithin = ({ structure }: Pick<Design, 'structure'>): boolean =>
  structure === 'within-fields' || structure === 'before-after'

/** Totals of a pair by visit (a field on a day) and level: what a count model is fitted to. One row each. */
export interface VisitTotals {
  /** How many of the kind, and of the other kind where one stands against it. */
  readonly counts: Float64Array
  readonly others: Float64Array
  readonly effort: Float64Array
  /** Watched minutes in all; NaN where they are not known. */
  readonly minutes: Float64Array
  readonly watches: Float64Array
  /** Position in the design's fields. */
  readonly fieldOf: Int32Array
  readonly levelOf: Int32Array
  readonly periodOf: Int32Array
  /** A column of the design over the totals: means weighed by effort; NaN where it was not recorded. */
  meansOf(column: Float64Array): Float64Array
}

/** Side of a watch within its field: its period where time divides, else its level; 0 where a field has one. */
function sideOf({ structure, periodOf, levelOf }: Design, k: number): number {
  if (structure === 'between-fields') return 0
  return (structure === 'before-after-control' ? periodOf[k] : levelOf[k]) as number
}

/**
 * Totals by visit and level of the watches that a model of one pair rests on: the fields of its units, the kinds looked for. A
 * watch without a date is a visit of its own. Scatter between visits is then the scatter of these numbers (methods 2.6 wants a
 * visit intercept where several plots share a visit).
 */
export function visitTotals(
  snapshot: Snapshot,
  design: Design,
  pair: PairContrast,
  tallies: Float64Array,
  against: Float64Array | null,
): VisitTotals {
  const { codes, values } = codedNumbers(snapshot.tables.count.columns.date.values)
  const days = values.length
  const fields = new Set(pair.units.fields)
  const isOfPair = (level: number): boolean =>
    !isWithin(design) || design.measured !== null || level === 0 || level === pair.level
  const levels = Math.max(2, design.levels.length)
  const totalAt = new Map<number, number>()
  const totalOf = new Int32Array(design.rows.length).fill(-1)
  const firsts: number[] = []
  for (let k = 0; k < design.rows.length; k++) {
    const row = design.rows[k] as number
    if (Number.isNaN(tallies[row] as number) || Number.isNaN(against?.[row] ?? 0)) continue
    const field = design.fieldOf[k] as number
    const level = design.levelOf[k] as number
    if (!fields.has(field) || !isOfPair(level)) continue
    const day = codes[row] ?? -1
    const cell = (field * levels + level) * 2 + (design.periodOf[k] as number)
    const key = day < 0 ? -1 - k : cell * days + day
    const known = totalAt.get(key) ?? firsts.push(k) - 1
    totalAt.set(key, known)
    totalOf[k] = known
  }
  const sum = (of: (k: number) => number): Float64Array => {
    const sums = new Float64Array(firsts.length)
    for (let k = 0; k < totalOf.length; k++) {
      const at = totalOf[k] as number
      if (at >= 0) sums[at] = (sums[at] as number) + of(k)
    }
    return sums
  }
  const first = (of: Int32Array): Int32Array => Int32Array.from(firsts, (k) => of[k] as number)
  return {
    counts: sum((k) => tallies[design.rows[k] as number] as number),
    others: sum((k) => against?.[design.rows[k] as number] ?? 0),
    effort: sum((k) => design.effort[k] as number),
    minutes: sum((k) => design.minutes[k] as number),
    watches: sum(() => 1),
    fieldOf: first(design.fieldOf),
    levelOf: first(design.levelOf),
    periodOf: first(design.periodOf),
    meansOf: (column) => meansOfPlaces(totalOf, firsts.length, design.effort, column),
  }
}

/** Means weighed by effort of the rows that have a place; NaN where none has it recorded. */
function meansOfPlaces(places: Int32Array, number: number, effort: Float64Array, column: Float64Array): Float64Array {
  const seen = column.map((value, k) => ((places[k] as number) < 0 ? Number.NaN : value))
  return meansOver(number, places, effort, seen)
}

const indicator = (name: string, rows: number, holds: (row: number) => boolean): ModelColumn => ({
  name,
  values: Float64Array.from({ length: rows }, (_, row) => (holds(row) ? 1 : 0)),
})

/**
 * Nuisances of the headline over the totals, about their mean. Where one was not recorded, the mean of its field and side
 * stands, as it does in the field-level t.
 */
function nuisanceColumns(snapshot: Snapshot, design: Design, pair: PairContrast, totals: VisitTotals): readonly ModelColumn[] {
  const sides = Math.max(2, design.levels.length)
  const cellOf = design.fieldOf.map((field, k) => field * sides + sideOf(design, k))
  const cellOfTotal = totals.fieldOf.map(
    (field, row) => field * sides + sideOf({ ...design, periodOf: totals.periodOf, levelOf: totals.levelOf }, row),
  )
  return nuisancesOf(snapshot, design)
    .filter(({ name }) => pair.adjusted.includes(name))
    .flatMap(({ name, columns }) =>
      columns.map((column, k): ModelColumn => {
        const means = meansOver(design.fields.length * sides, cellOf, design.effort, column)
        const own = totals
          .meansOf(column)
          .map((value, row) => (Number.isNaN(value) ? (means[cellOfTotal[row] as number] ?? Number.NaN) : value))
        const middle = own.reduce((sum, value) => sum + value, 0) / Math.max(1, own.length)
        return { name: `${name}.${k + 1}`, values: own.map((value) => value - middle) }
      }),
    )
}

/** Columns that always stand: intercept, blocks, period; of pairs in very few fields a column a field. */
function baseColumns(design: Design, pair: PairContrast, { fieldOf, periodOf }: VisitTotals): readonly ModelColumn[] {
  const rows = fieldOf.length
  const intercept = indicator('intercept', rows, () => true)
  if (isWithin(design)) {
    const { fields } = pair.units
    const fixed = fields.length < leastGroups ? fields.slice(1) : []
    return [intercept, ...fixed.map((field, k) => indicator(`field.${k + 2}`, rows, (row) => fieldOf[row] === field))]
  }
  const blockAt = (row: number): number => design.fields[fieldOf[row] as number]?.block ?? 0
  const others = [...new Set(Array.from(fieldOf, (_, row) => blockAt(row)))].sort((a, b) => a - b).slice(1)
  const blocks = others.map((block) => indicator(`block.${block + 1}`, rows, (row) => blockAt(row) === block))
  if (design.structure === 'between-fields') return [intercept, ...blocks]
  const after = indicator('after', rows, (row) => periodOf[row] === 1)
  return [intercept, ...blocks, after, ...blocks.map((block) => product(block, after))]
}

const product = (one: ModelColumn, other: ModelColumn): ModelColumn => ({
  name: `${one.name}:${other.name}`,
  values: one.values.map((value, row) => value * (other.values[row] as number)),
})

/** Levels, the contrast last: what it shares with others is never its own. */
function levelColumns(design: Design, pair: PairContrast, totals: VisitTotals): readonly ModelColumn[] {
  const { fieldOf, levelOf, periodOf } = totals
  const rows = fieldOf.length
  if (design.measured !== null) return [{ name: 'measured', values: totals.meansOf(design.measured.values) }]
  if (isWithin(design)) return [indicator('level', rows, (row) => levelOf[row] === pair.level)]
  const others = [...new Set(pair.units.level)].filter((level) => level !== 0 && level !== pair.level).sort((a, b) => a - b)
  const plain = [...others, pair.level].map((level) =>
    indicator(
      level === pair.level ? 'level' : `level.${level + 1}`,
      rows,
      (row) => design.fields[fieldOf[row] as number]?.level === level,
    ),
  )
  if (design.structure === 'between-fields') return plain
  const after = indicator('after', rows, (row) => periodOf[row] === 1)
  return [...plain, ...plain.map((level) => product(level, after))]
}

/** The columns of a model of one pair, the contrast last. */
export function columnsOfPair(
  snapshot: Snapshot,
  design: Design,
  pair: PairContrast,
  totals: VisitTotals,
  more: readonly ModelColumn[],
): readonly ModelColumn[] {
  return [
    ...baseColumns(design, pair, totals),
    ...nuisanceColumns(snapshot, design, pair, totals),
    ...more,
    ...levelColumns(design, pair, totals),
  ]
}

function grouping(name: string, rows: number, keyOf: (row: number) => number): Grouping {
  const levels = new Map<number, number>()
  const of = Int32Array.from({ length: rows }, (_, row) => {
    const known = levels.get(keyOf(row)) ?? levels.size
    levels.set(keyOf(row), known)
    return known
  })
  return { name, of, levels: levels.size }
}

/**
 * What is drawn at random (methods 2.6): fields; fields by side, where a field holds both. Groupings of fewer than five are
 * left out, and so is one that would give each total a group of its own.
 */
export function groupingsOfPair(design: Design, { fieldOf, levelOf, periodOf }: VisitTotals): readonly Grouping[] {
  const rows = fieldOf.length
  const sides = Math.max(2, design.levels.length)
  const own = { ...design, levelOf, periodOf }
  const field = grouping('field', rows, (row) => fieldOf[row] as number)
  const side = grouping('side', rows, (row) => (fieldOf[row] as number) * sides + sideOf(own, row))
  return [field, ...(design.structure === 'between-fields' ? [] : [side])].filter(
    ({ levels }) => levels >= leastGroups && levels < rows,
  )
}
