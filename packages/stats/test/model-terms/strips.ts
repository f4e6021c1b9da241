import { readFileSync } from 'node:fs'
import { type DesignOutcome, type Estimates, leastSquares, type ModelColumns, type TermDesign } from '../../src/index.ts'
import { kindOf } from '../near.ts'

export type Row = { readonly [column: string]: string }

/** Rows of a table of `reference/`, as texts. */
export function tableOf(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(new URL(`../reference/${name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [head.split(',')[k] ?? '', cell])))
}

export const numbersOf = (rows: readonly Row[], name: string): Float64Array => Float64Array.from(rows, (row) => Number(row[name]))

export const levelsOf = (rows: readonly Row[], name: string, levels: readonly string[]) =>
  ({ kind: 'levels', levels, of: Int32Array.from(rows, (row) => levels.indexOf(row[name] ?? '')) }) as const

export const strips = tableOf('marginal-means/strips')
export const strip = ['none', 'sown', 'old']
export const stage = ['early', 'full', 'late']

/** The columns of the invented table, or of some of its rows. */
export function columnsOf(rows: readonly Row[] = strips): ModelColumns {
  return {
    strip: levelsOf(rows, 'strip', strip),
    stage: levelsOf(rows, 'stage', stage),
    day: { kind: 'number', values: numbersOf(rows, 'day') },
    minutes: { kind: 'number', values: numbersOf(rows, 'minutes') },
  }
}

export const designed = (outcome: DesignOutcome): TermDesign => kindOf(outcome, 'design')

/** Least squares with their own scatter in the covariance, and the degrees of freedom it is told by. */
export function fitted(design: TermDesign, response: ArrayLike<number>): { readonly estimates: Estimates; readonly df: number } {
  const fit = kindOf(leastSquares({ design: design.matrix, response }), 'fitted')
  const covariance = fit.covariance.map((value) => value * fit.residualSd ** 2)
  return { estimates: { coefficients: fit.coefficients, covariance, aliased: fit.aliased }, df: fit.df }
}
