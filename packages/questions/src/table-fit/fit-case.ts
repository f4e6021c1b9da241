import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import { type ColumnPart, designOf, type Grouping, type ModelColumn, type ModelColumns, type TermDesign } from '@thrum/stats'
import { type FitAsked, linkOf } from './asked.ts'
import { levelsInOrder } from './level-orders.ts'
import { type Together, typedTogether } from './lists.ts'
import { type FitRefusal, type Named, refusal } from './refusal.ts'
import type { LeftOut, RowsUsed } from './rows-used.ts'
import { rowsUsed } from './rows-used.ts'
import type { FitColumn, FitTable } from './table.ts'

/** A grouping with the names of its levels. */
export type NamedGrouping = Grouping & { readonly columns: Together }

/** A table and what is asked of it, as numbers of the rows that are used. */
export interface FitCase {
  readonly kind: 'case'
  readonly asked: FitAsked
  readonly table: FitTable
  /** Places of the rows in the table. */
  readonly rows: readonly number[]
  readonly leftOut: readonly LeftOut[]
  readonly response: Float64Array
  readonly trials: Float64Array | null
  readonly effort: Float64Array | null
  /** Log of the effort, and what is added as it is; null where nothing is. */
  readonly offset: Float64Array | null
  readonly design: TermDesign
  readonly zeros: TermDesign | null
  readonly groupings: readonly NamedGrouping[]
  readonly named: Named
}

/** More columns, or more levels beside those of the greatest grouping, are not fitted in the time that a person waits. Ours. */
const mostColumns = 200
const mostLevelsBeside = 500

const numbersOf = ({ numbers }: FitColumn, rows: readonly number[]): Float64Array =>
  Float64Array.from(rows, (row) => numbers[row] ?? Number.NaN)

function modelColumn(column: FitColumn, { rows, named }: RowsUsed, { orders }: FitAsked): ModelColumn {
  if (!named.has(column)) return { kind: 'number', values: numbersOf(column, rows) }
  const texts = rows.map((row) => column.texts[row] ?? '')
  const written = new Set(texts)
  const levels = levelsInOrder(
    texts,
    (orders.get(column) ?? []).filter((level) => written.has(level)),
  )
  const place = new Map(levels.map((level, k) => [level, k]))
  return { kind: 'levels', levels, of: Int32Array.from(texts, (text) => place.get(text) ?? 0) }
}

const namesOf = (terms: readonly Together[]) => terms.map((term) => term.map(({ name }) => name))

/** Design columns that terms come to, what they contain not counted twice. */
function columnsMade(columns: ModelColumns, terms: readonly Together[]): number {
  const products = new Map<string, number>()
  for (const term of terms)
    for (let bits = 1; bits < 2 ** term.length; bits++) {
      const own = term.filter((_, k) => (bits >> k) & 1).map(({ name }) => name)
      const made = own.reduce((product, name) => {
        const column = columns[name]
        return product * (column?.kind === 'levels' ? column.levels.length - 1 : 1)
      }, 1)
      products.set(JSON.stringify(own.sort()), made)
    }
  return [...products.values()].reduce((sum, made) => sum + made, 1)
}

function designFor(columns: ModelColumns, terms: readonly Together[], option: string): TermDesign | FitRefusal {
  const made = columnsMade(columns, terms)
  if (made > mostColumns) throw new ThrumError('questions/fit/too-many-columns', { option, columns: made, most: mostColumns })
  const design = designOf(columns, namesOf(terms))
  return design.kind === 'one-level' ? refusal('one-level', { column: design.column, level: design.level ?? '' }) : design
}

function groupingOf(columns: Together, rows: readonly number[]): NamedGrouping {
  const place = new Map<string, number>()
  const of = Int32Array.from(rows, (row) => {
    const key = JSON.stringify(columns.map(({ texts }) => texts[row] ?? ''))
    const known = place.get(key) ?? place.size
    place.set(key, known)
    return known
  })
  return { name: typedTogether(columns), of, levels: place.size, columns }
}

function groupingsOf({ random, slope }: FitAsked, rows: readonly number[]): readonly NamedGrouping[] {
  const groupings = random.map((columns): NamedGrouping => {
    const own = groupingOf(columns, rows)
    if (slope === null || slope.by !== columns) return own
    return { ...own, slope: { name: slope.column.name, values: numbersOf(slope.column, rows), isCorrelated: !slope.isApart } }
  })
  const levels = groupings.map((own) => own.levels).sort((a, b) => b - a)
  const beside = levels.slice(1).reduce((sum, own) => sum + own, 0)
  if (beside > mostLevelsBeside) throw new ThrumError('questions/fit/too-many-levels', { levels: beside, most: mostLevelsBeside })
  return groupings
}

function offsetOf({ effort, offset }: FitAsked, rows: readonly number[]): Float64Array | null {
  if (effort === null && offset === null) return null
  return Float64Array.from(
    rows,
    (row) => (effort === null ? 0 : Math.log(effort.numbers[row] ?? 1)) + (offset?.numbers[row] ?? 0),
  )
}

/** A column of a design as it is said: of a level, of a number, of several together; the first stands for the mean of the references. */
export function partsSaying(parts: readonly ColumnPart[]): Saying {
  const own = parts.map(({ column, level }) =>
    level === null ? saying('questions/fit/part/number', { column }) : saying('questions/fit/part/level', { column, level }),
  )
  const [first] = own
  if (first === undefined) return saying('questions/fit/part/first')
  return own.length === 1 ? first : saying('questions/fit/part/together', { parts: own })
}

const columnSaying = (design: TermDesign | null) => (place: number) => partsSaying(design?.parts[place] ?? [])

/**
 * Reads what the model needs from the rows.
 *
 * @param among rows of the table that may be used; all unless said
 * @returns the case, or a refusal where a column or a grouping has one level only, or there are no more rows than columns
 * @throws ThrumError questions/fit/* of `rowsUsed`, and where terms come to too many columns
 */
export function fitCase(table: FitTable, asked: FitAsked, among?: readonly number[]): FitCase | FitRefusal {
  const used = rowsUsed(table, asked, among)
  const { rows, leftOut } = used
  const terms = [...asked.fixed, ...(asked.zerosBy ?? [])].flat()
  const columns: ModelColumns = Object.fromEntries(
    [...new Set(terms)].map((column) => [column.name, modelColumn(column, used, asked)]),
  )
  const all: ModelColumns =
    terms.length > 0 ? columns : { [asked.response.name]: { kind: 'number', values: numbersOf(asked.response, rows) } }
  const design = designFor(all, asked.fixed, 'fixed')
  if (design.kind === 'refused') return design
  const zeros = asked.zerosBy === null ? null : designFor(all, asked.zerosBy, 'zeros-by')
  if (zeros?.kind === 'refused') return zeros
  const groupings = groupingsOf(asked, rows)
  const single = groupings.find(({ levels }) => levels < 2)
  if (single !== undefined) return refusal('one-group', { of: single.name })
  if (rows.length <= design.matrix.columns + (zeros?.matrix.columns ?? 0))
    return refusal('few-rows', { rows: rows.length, columns: design.matrix.columns + (zeros?.matrix.columns ?? 0) })
  return {
    ...{ kind: 'case', asked, table, rows, leftOut, design, zeros, groupings },
    response: numbersOf(asked.response, rows),
    trials: asked.trials === null || linkOf(asked.family) !== 'logit' ? null : numbersOf(asked.trials, rows),
    effort: asked.effort === null ? null : numbersOf(asked.effort, rows),
    offset: offsetOf(asked, rows),
    named: { column: columnSaying(design), zeroColumn: columnSaying(zeros) },
  }
}
