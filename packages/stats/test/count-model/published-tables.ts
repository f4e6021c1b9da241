import { readFileSync } from 'node:fs'
import { type Grouping, type Matrix, matrixOfColumns } from '../../src/index.ts'

const folder = new URL('../reference/count-models/', import.meta.url)

export type Row = { readonly [column: string]: string }

/** Rows of a table of the reference folder, cells as they stand. */
export function table(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(new URL(`${name}.csv`, folder), 'utf8')
    .trim()
    .split('\n')
  const columns = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [columns[k] ?? '', cell])))
}

export const numbers = (rows: readonly Row[], column: string): readonly number[] => rows.map((row) => Number(row[column]))

/** An estimate and its standard error. */
export type Told = readonly [number, number]

/** What R says of one fit; `sd` holds one number for intercepts alone, two where there is a slope. */
export interface Expected {
  readonly logLik: number
  readonly coef: { readonly [term: string]: Told }
  readonly sd: { readonly [group: string]: number | readonly [number, number] }
  readonly correlation?: { readonly [group: string]: number }
  readonly theta?: number
  readonly phi?: number
  readonly sum?: number
  readonly zeros?: { readonly [term: string]: Told }
  /** Of the first grouping, level by level. */
  readonly modes?: { readonly intercepts: readonly number[]; readonly slopes: readonly number[] }
  /** The same fit by lme4. */
  readonly lme4?: Pick<Expected, 'logLik' | 'coef' | 'sd'>
}

export const expected: { readonly [fit: string]: Expected } = JSON.parse(
  readFileSync(new URL('expected.json', folder), 'utf8'),
).fits

/** Columns of a design by the names that R gives them. */
export type Columns = readonly (readonly [term: string, values: readonly number[]])[]

/** Treatment contrasts, the first level as reference. */
export function factor(rows: readonly Row[], name: string, [, ...levels]: readonly string[]): Columns {
  return levels.map((level) => [`${name}${level}`, rows.map((row) => Number(row[name] === level))])
}

/** Every column of one with every column of the other. */
export function crossed(one: Columns, other: Columns): Columns {
  return other.flatMap(([b, right]) =>
    one.map(([a, left]) => [`${a}:${b}`, left.map((value, i) => value * (right[i] ?? 0))] as const),
  )
}

export interface Design {
  readonly terms: readonly string[]
  readonly design: Matrix
}

/** A column of ones and the parts beside it. */
export function designOf(rows: number, ...parts: readonly Columns[]): Design {
  const columns: Columns = [['(Intercept)', Array.from({ length: rows }, () => 1)], ...parts.flat()]
  return {
    terms: columns.map(([term]) => term),
    design: matrixOfColumns(
      rows,
      columns.map(([, values]) => [...values]),
    ),
  }
}

/** Rows that agree in all of the columns are one level. */
export function grouping(rows: readonly Row[], name: string, ...columns: readonly string[]): Grouping {
  const labels = rows.map((row) => columns.map((column) => row[column]).join(' '))
  const places = new Map([...new Set(labels)].map((label, place) => [label, place]))
  return { name, of: Int32Array.from(labels, (label) => places.get(label) ?? 0), levels: places.size }
}
