import { InputError, type LongWork, requireSameLength, unwatched } from '@thrum/model/ground'
import type { Grouping } from '../count-model/effects/grouping.ts'
import { fitCountModel } from '../count-model/fit-count-model.ts'
import type { Coefficients, CountModel, CountModelFit, FittedCountModel } from '../count-model/model.ts'
import { waldInterval } from '../count-model-inference/wald-interval.ts'
import { type Matrix, matrixOfValues } from '../least-squares/matrix.ts'

/** A sum of weights times coefficients that a question hangs on. */
export interface AskedSum {
  readonly name: string
  /** One for each column of the design as it came. */
  readonly weights: ArrayLike<number>
}

/** What is left out level by level: fields, visits, or each row by its label. */
export interface LeftOutBy {
  readonly name: string
  /** Length n, the place of each row's level; -1 where it is not known. */
  readonly of: ArrayLike<number>
  readonly levels: readonly string[]
}

/** An asked sum without some rows [linear predictor]. */
export type SumWithout =
  | {
      readonly kind: 'estimated'
      readonly sum: string
      readonly estimate: number
      readonly lower: number
      readonly upper: number
      /** Estimate without the rows less that with all, in standard errors of that with all. */
      readonly change: number
      /** exp of the difference: how many times the ratio with all it is. */
      readonly ratio: number
      /** True if the 95 % interval holds 0 with these rows and not without, or the other way round. */
      readonly turns: boolean
    }
  /** Without the rows these columns say nothing of their own, and the sum hangs on them. */
  | { readonly kind: 'aliased'; readonly sum: string; readonly columns: readonly number[] }

/** What becomes of the fit without the rows of one level. */
export type LeftOut = {
  readonly by: string
  readonly level: string
  readonly rows: number
} & (
  | { readonly kind: 'refitted'; readonly sums: readonly SumWithout[] }
  /** Along these columns nothing, or everything, was counted in what is left. */
  | { readonly kind: 'separated'; readonly columns: readonly number[] }
  | { readonly kind: 'not-fitted'; readonly because: Exclude<CountModelFit['kind'], 'fitted' | 'separated'> | 'no-rows' }
)

export interface Influence {
  readonly kind: 'finished' | 'stopped'
  /** Rows of the model. */
  readonly rows: number
  /** With all rows, 95 % [linear predictor]. */
  readonly sums: readonly { readonly name: string; readonly estimate: number; readonly lower: number; readonly upper: number }[]
  /** What cannot be fitted first, then what turns an answer by a change worth a look, then by the size of the change. */
  readonly leftOut: readonly LeftOut[]
  readonly asked: number
  /** What was not looked at, for the rows are many. */
  readonly skipped: readonly string[]
}

/** With more rows than this only the first of what can be left out is looked at. */
export const mostRowsForAll = 2000

/** In standard errors: a single field or visit that moves an asked sum as far is worth a look, or a suspect. Common practice, no source. */
export const lookBeyond = 0.5
export const suspectBeyond = 1

/**
 * Leaves out each field, each visit, and fits what remains.
 *
 * Each fit begins at starting values of its own: so none hangs on another, and columns that lose their meaning are set aside anew. Limits are
 * Wald's by the normal law, to compare with each other, not to decide.
 *
 * @param fit of this very model
 * @param sums without weight on columns that are aliased in the fit
 * @param labels fields first; beyond 2,000 rows they alone are looked at
 * @throws InputError on lengths that differ, or weight on an aliased column
 * @source Cook R.D. (1977) Technometrics 19, 15-18 (leaving out; from memory); sums in place of all coefficients are ours
 */
export async function influenceOf(
  model: CountModel,
  fit: FittedCountModel,
  sums: readonly AskedSum[],
  labels: readonly LeftOutBy[],
  work: LongWork = unwatched,
): Promise<Influence> {
  for (const { name, of } of labels) requireSameLength({ rows: { length: model.design.rows }, [name]: of })
  const whole = sums.map(({ name, weights }) => ({ name, ...waldInterval(fit, weights, Number.POSITIVE_INFINITY) }))
  const isLarge = model.design.rows > mostRowsForAll
  const looked = isLarge ? labels.slice(0, 1) : labels
  const parts = looked.flatMap((by) =>
    by.levels.flatMap((level, k) => {
      const rows = rowsOf(by, k)
      return rows.length === 0 ? [] : [{ by: by.name, level, rows }]
    }),
  )
  const told = (kind: Influence['kind'], leftOut: readonly LeftOut[]): Influence => ({
    kind,
    rows: model.design.rows,
    sums: whole.map(({ name, estimate, lower, upper }) => ({ name, estimate, lower, upper })),
    leftOut: [...leftOut].sort((a, b) => compare(weightOf(b), weightOf(a))),
    asked: parts.length,
    skipped: labels.slice(looked.length).map(({ name }) => name),
  })
  const leftOut: LeftOut[] = []
  for (const { by, level, rows } of parts) {
    if (work.signal.aborted) return told('stopped', leftOut)
    leftOut.push({ by, level, rows: rows.length, ...without(model, fit, sums, new Set(rows)) })
    work.onProgress?.({ done: leftOut.length, total: parts.length, unit: 'fit' })
    await work.breathe()
  }
  return told('finished', leftOut)
}

function rowsOf({ of }: LeftOutBy, level: number): readonly number[] {
  return Array.from(of).flatMap((own, i) => (own === level ? [i] : []))
}

/** An interval that ends a hair's breadth from 0 turns by anything: only with a change worth a look does it say that much hangs on the rows. */
export const turnsFar = ({ turns, change }: Extract<SumWithout, { readonly kind: 'estimated' }>): boolean =>
  turns && Math.abs(change) >= lookBeyond

/** In standard errors: more than leaving out rows can change a sum. */
const beyondAnyChange = 1e9

/** How much hangs on a part: above any change where an answer turns, and above all where it is lost. */
function weightOf(part: LeftOut): number {
  if (part.kind !== 'refitted') return Number.POSITIVE_INFINITY
  return part.sums.reduce((most, sum) => {
    if (sum.kind === 'aliased') return Number.POSITIVE_INFINITY
    return Math.max(most, Math.abs(sum.change) + (turnsFar(sum) ? beyondAnyChange : 0))
  }, 0)
}

/** Infinity less Infinity is no number. */
const compare = (a: number, b: number): number => (a === b ? 0 : a - b)

type Outcome = LeftOut extends infer Each ? (Each extends LeftOut ? Omit<Each, 'by' | 'level' | 'rows'> : never) : never

function without(model: CountModel, fit: FittedCountModel, sums: readonly AskedSum[], rows: ReadonlySet<number>): Outcome {
  const rest = [...Array(model.design.rows).keys()].filter((i) => !rows.has(i))
  if (rest.length === 0) return { kind: 'not-fitted', because: 'no-rows' }
  const again = fitCountModel(rowsOfModel(model, rest))
  if (again.kind === 'separated')
    return { kind: 'separated', columns: [...again.direction.keys()].filter((j) => again.direction[j] !== 0) }
  if (again.kind !== 'fitted') return { kind: 'not-fitted', because: again.kind }
  return { kind: 'refitted', sums: sums.map((sum) => sumWithout(sum, fit, again)) }
}

function sumWithout({ name, weights }: AskedSum, fit: FittedCountModel, again: Coefficients): SumWithout {
  const columns = again.aliased.flatMap(({ column }) => (weights[column] === 0 ? [] : [column]))
  if (columns.length > 0) return { kind: 'aliased', sum: name, columns }
  const all = waldInterval(fit, weights, Number.POSITIVE_INFINITY)
  const { estimate, lower, upper } = waldInterval(again, weights, Number.POSITIVE_INFINITY)
  const difference = estimate - all.estimate
  const holdsZero = (limits: { readonly lower: number; readonly upper: number }): boolean =>
    limits.lower <= 0 && limits.upper >= 0
  return {
    kind: 'estimated',
    sum: name,
    estimate,
    lower,
    upper,
    change: all.standardError > 0 ? difference / all.standardError : 0,
    ratio: Math.exp(difference),
    turns: holdsZero(all) !== holdsZero({ lower, upper }),
  }
}

/** A model of some of its rows; levels of groupings that hold none of them are gone. */
function rowsOfModel(model: CountModel, rows: readonly number[]): CountModel {
  const pick = (values: ArrayLike<number>): Float64Array => Float64Array.from(rows, (i) => at(values, i))
  const { trials, offset, zeros, groupings } = model
  return {
    ...model,
    counts: pick(model.counts),
    design: matrixRows(model.design, rows),
    ...(trials === undefined ? {} : { trials: pick(trials) }),
    ...(offset === undefined ? {} : { offset: pick(offset) }),
    ...(zeros === undefined ? {} : { zeros: matrixRows(zeros, rows) }),
    ...(groupings === undefined ? {} : { groupings: groupings.map((grouping) => groupingRows(grouping, rows)) }),
  }
}

function at(values: ArrayLike<number>, i: number): number {
  const value = values[i]
  if (value === undefined) throw new InputError('ground/input/lengths-differ', `no entry for row ${i}`)
  return value
}

function matrixRows({ columns, values }: Matrix, rows: readonly number[]): Matrix {
  const out = new Float64Array(rows.length * columns)
  rows.forEach((row, i) => {
    out.set(values.subarray(row * columns, (row + 1) * columns), i * columns)
  })
  return matrixOfValues(rows.length, columns, out)
}

function groupingRows({ name, of, slope }: Grouping, rows: readonly number[]): Grouping {
  const kept = [...new Set(rows.map((i) => at(of, i)))].sort((a, b) => a - b)
  const places = new Map(kept.map((level, k) => [level, k]))
  return {
    name,
    of: Int32Array.from(rows, (i) => places.get(at(of, i)) ?? 0),
    levels: kept.length,
    ...(slope === undefined ? {} : { slope: { ...slope, values: Float64Array.from(rows, (i) => at(slope.values, i)) } }),
  }
}
