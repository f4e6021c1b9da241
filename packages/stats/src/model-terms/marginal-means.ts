import { InputError, requireFinite } from '@thrum/model/ground'
import { columnNamed, type LevelColumn, meanOf, rowsByLevel } from './columns.ts'
import { type ColumnPart, partValues, type TermDesign } from './design.ts'
import { type Estimates, linearSum, requireEstimates, type Telling, type Told, tellerOf } from './linear-sum.ts'

/** Levels by the names of their columns. */
export interface Levels {
  readonly [column: string]: string
}

/** Which means are asked for. */
export interface MeansAsked extends Telling {
  /** Columns of levels: a mean for each level, or for each combination of levels; of none, one mean over all. */
  readonly of: readonly string[]
  /**
   * How the other columns of levels are averaged: each of their levels that some row has weighs the same, or their combinations weigh
   * as often as rows have them.
   */
  readonly weights: 'equal' | 'rows'
  /** Where columns of numbers are held; at their mean over the rows unless said. */
  readonly numbers?: { readonly [column: string]: number }
}

/** One mean, or the aliased columns by which it cannot be told. */
export type MarginalMean = { readonly at: Levels } & Told<'mean'>

/** Means, with what contrasts of them need. */
export interface MarginalMeans {
  readonly means: readonly MarginalMean[]
  /** The design row of each mean: its weights on the coefficients. */
  readonly rows: readonly Float64Array[]
  readonly design: TermDesign
  readonly estimates: Estimates
  readonly asked: MeansAsked
  /** Where every column of numbers was held. */
  readonly numbers: { readonly [column: string]: number }
}

function levelColumn(design: TermDesign, name: string): LevelColumn {
  const column = columnNamed(design.of, name)
  if (column.kind === 'levels') return column
  throw new InputError('ground/input/out-of-range', `${name} is a column of numbers; expected one of levels`)
}

/** Every combination of levels, those of the first column changing fastest. */
function combinations(design: TermDesign, of: readonly string[]): readonly Levels[] {
  return of.reduce<readonly Levels[]>(
    (all, name) => levelColumn(design, name).levels.flatMap((level) => all.map((levels) => ({ ...levels, [name]: level }))),
    [{}],
  )
}

/** Where columns of numbers are held. */
function heldNumbers({ of }: TermDesign, said: MeansAsked['numbers'] = {}): Map<string, number> {
  for (const [name, value] of Object.entries(said)) {
    requireFinite(name, value)
    if (columnNamed(of, name).kind !== 'number')
      throw new InputError('ground/input/out-of-range', `${name} is a column of levels; expected one of numbers`)
  }
  return new Map(
    Object.entries(of).flatMap(([name, column]) =>
      column.kind === 'number' ? [[name, Object.hasOwn(said, name) ? (said[name] ?? 0) : meanOf(column)] as const] : [],
    ),
  )
}

/** Mean over other columns of what a design column takes from them: a product of chances, or of what rows have at once. */
function averaged(design: TermDesign, parts: readonly ColumnPart[], weights: MeansAsked['weights']): number {
  if (parts.length === 0) return 1
  if (weights === 'equal')
    return parts.reduce((product, { column, level }) => {
      const own = levelColumn(design, column)
      const rows = rowsByLevel(own)
      const isSeen = level !== null && (rows[own.levels.indexOf(level)] ?? 0) > 0
      return product * (isSeen ? 1 / rows.filter((count) => count > 0).length : 0)
    }, 1)
  const factors = parts.map((part) => partValues(columnNamed(design.of, part.column), part))
  const { rows } = design.matrix
  let sum = 0
  for (let i = 0; i < rows; i++) sum += factors.reduce((product, factor) => product * (factor[i] as number), 1)
  return sum / rows
}

/** The design row of each combination, other columns averaged. */
function meanRows(
  design: TermDesign,
  at: readonly Levels[],
  asked: MeansAsked,
  numbers: Map<string, number>,
): readonly Float64Array[] {
  const own = new Set(asked.of)
  const rest = design.parts.map((parts) => {
    const others = parts.filter(({ column, level }) => level !== null && !own.has(column))
    const held = parts.reduce((product, { column, level }) => product * (level === null ? (numbers.get(column) ?? 0) : 1), 1)
    return held * averaged(design, others, asked.weights)
  })
  return at.map((levels) =>
    Float64Array.from(design.parts, (parts, j) => {
      const isOf = parts.every(({ column, level }) => !own.has(column) || levels[column] === level)
      return isOf ? (rest[j] as number) : 0
    }),
  )
}

/**
 * Mean of the linear predictor at each level, or combination of levels, of the columns asked for.
 *
 * Means are those of the model, not of the rows: each level is put to the same mixture of the other columns. A log link gives back the
 * geometric mean over that mixture on the scale of counts. A mean that hangs on an aliased column is `not-estimable`, by the names of
 * those columns; other means and contrasts of the same fit may be sound.
 *
 * @param design of the model
 * @param estimates in the order of its columns
 * @throws InputError on an unknown column, one of the wrong kind or named twice, estimates of another design, an effort or level out of range
 * @source Searle S.R., Speed F.M., Milliken G.A. (1980) Am. Stat. 34, 216-221. From memory.
 * @check a balanced table with all interactions: the means of its cells, averaged
 */
export function marginalMeans(design: TermDesign, estimates: Estimates, asked: MeansAsked): MarginalMeans {
  requireEstimates(design, estimates)
  if (new Set(asked.of).size !== asked.of.length)
    throw new InputError('ground/input/out-of-range', `means of [${asked.of.join(', ')}] name a column twice`)
  const numbers = heldNumbers(design, asked.numbers)
  const at = combinations(design, asked.of)
  const rows = meanRows(design, at, asked, numbers)
  const told = tellerOf('mean', asked)
  const means = rows.map((row, k): MarginalMean => ({ at: at[k] ?? {}, ...told(linearSum(design, estimates, row)) }))
  return { means, rows, design, estimates, asked, numbers: Object.fromEntries(numbers) }
}
