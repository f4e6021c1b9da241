import { readFileSync } from 'node:fs'
import { type Grouping, type LinearMixedModel, matrixOfColumns } from '../../src/index.ts'

const folder = new URL('../reference/linear-mixed/', import.meta.url)

export type Row = { readonly [column: string]: string }

export function tableOf(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(new URL(`${name}.csv`, folder), 'utf8')
    .trim()
    .split('\n')
  const names = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [names[k] ?? '', cell])))
}

export interface Expected {
  readonly n: number
  readonly logLik: number
  readonly df: number
  readonly aic: number
  readonly sigma: number
  /** Estimate and standard error. */
  readonly coef: { readonly [term: string]: readonly [number, number] }
  /** A standard deviation, or with `with` a correlation; lme4 numbers a grouping that it takes apart. */
  readonly sd: readonly { readonly group: string; readonly of: string; readonly with: string | null; readonly value: number }[]
}

interface Answers {
  readonly fits: { readonly [fit: string]: Expected }
  readonly modes: {
    readonly subject: readonly string[]
    readonly intercept: readonly number[]
    readonly slope: readonly number[]
  }
}
export const answers = JSON.parse(readFileSync(new URL('expected.json', folder), 'utf8')) as Answers

type Columns = ReadonlyMap<string, readonly number[]>

/** A model without its likelihood, its columns by the names R gives them. */
export type NamedModel = Omit<LinearMixedModel, 'design' | 'likelihood'> & { readonly columns: Columns }

const numbers = (rows: readonly Row[], column: string): number[] => rows.map((row) => Number(row[column]))
const ones = (rows: readonly Row[]): [string, number[]] => ['(Intercept)', rows.map(() => 1)]

/** Treatment contrasts, the first level as reference. */
const contrasts = (rows: readonly Row[], factor: string, [, ...levels]: readonly string[]): [string, number[]][] =>
  levels.map((level) => [`${factor}${level}`, rows.map((row) => Number(row[factor] === level))])

const crossed = (one: [string, number[]][], other: [string, number[]][]): [string, number[]][] =>
  other.flatMap(([right, second]) =>
    one.map(([left, first]): [string, number[]] => [`${left}:${right}`, first.map((value, i) => value * (second[i] ?? 0))]),
  )

export function groupingOf(name: string, rows: readonly Row[], columns: readonly string[]): Grouping {
  const labels = rows.map((row) => columns.map((column) => row[column]).join(' '))
  const levels = new Map([...new Set(labels)].map((label, k) => [label, k]))
  return { name, of: Int32Array.from(labels, (label) => levels.get(label) ?? -1), levels: levels.size }
}

function sleepModels(): { readonly [fit: string]: NamedModel } {
  const rows = tableOf('sleepstudy')
  const subject = groupingOf('Subject', rows, ['Subject'])
  const slope = numbers(rows, 'Days')
  const model = { response: numbers(rows, 'Reaction'), columns: new Map([ones(rows), ['Days', slope]]) }
  return {
    'sleepstudy: intercept': { ...model, groupings: [subject] },
    'sleepstudy: correlated slope': { ...model, groupings: [{ ...subject, slope: { name: 'days', values: slope } }] },
    'sleepstudy: uncorrelated slope': {
      ...model,
      groupings: [{ ...subject, slope: { name: 'days', values: slope, isCorrelated: false } }],
    },
  }
}

function plain(name: string, response: string, groups: readonly string[]): NamedModel {
  const rows = tableOf(name)
  return {
    response: numbers(rows, response),
    columns: new Map([ones(rows)]),
    groupings: groups.map((group) => groupingOf(group, rows, [group])),
  }
}

function cakeModel(): NamedModel {
  const rows = tableOf('cake')
  const slope = numbers(rows, 'temp')
  return {
    response: numbers(rows, 'angle'),
    columns: new Map([ones(rows), ...contrasts(rows, 'recipe', ['A', 'B', 'C']), ['temp', slope]]),
    groupings: [
      { ...groupingOf('replicate', rows, ['replicate']), slope: { name: 'temperature', values: slope } },
      groupingOf('recipe:replicate', rows, ['recipe', 'replicate']),
    ],
  }
}

function blueberryModels(): { readonly [fit: string]: NamedModel } {
  const table = tableOf('blueberry').map((row, i): Row => ({ ...row, row: String(i) }))
  const states = ['bc', 'mi', 'or']
  const field = (rows: readonly Row[]): Grouping => groupingOf('field', rows, ['state', 'farm'])
  const yearOfField = (rows: readonly Row[]): Grouping => groupingOf('year_of_field', rows, ['state', 'farm', 'year'])
  const treatments = ['open', 'bagged', 'hand']
  const treated = (what: string, isByState: boolean): NamedModel => {
    const rows = treatments.flatMap((trt) => table.map((row): Row => ({ ...row, trt, y: row[`${what}_${trt}`] ?? '' })))
    const byTreatment = contrasts(rows, 'trt', treatments)
    const byState = contrasts(rows, 'state', states)
    return {
      response: numbers(rows, 'y'),
      columns: new Map([ones(rows), ...byTreatment, ...(isByState ? [...byState, ...crossed(byTreatment, byState)] : [])]),
      groupings: [field(rows), yearOfField(rows), groupingOf('row', rows, ['row'])],
    }
  }
  const log1p = (column: string): [string, number[]] => [`log1p(${column})`, numbers(table, column).map(Math.log1p)]
  const groupings = [field(table), yearOfField(table)]
  const byState = contrasts(table, 'state', states)
  const byYear = contrasts(table, 'year', ['2013', '2014', '2015']).map(([name, values]): [string, number[]] => [
    name.replace('year', 'factor(year)'),
    values,
  ])
  return {
    'blueberry: weight': treated('weight', false),
    'blueberry: weight by state': treated('weight', true),
    'blueberry: fruit set': treated('set', false),
    'blueberry: fruit set by state': treated('set', true),
    'blueberry: wild bees': {
      response: log1p('wild_bees')[1],
      columns: new Map([ones(table), ...byState, ['transect', numbers(table, 'transect')]]),
      groupings,
    },
    'blueberry: weight by visits': {
      response: numbers(table, 'weight_open'),
      columns: new Map([ones(table), log1p('honey_bee'), log1p('wild_bees'), ...byState, ...byYear]),
      groupings,
    },
  }
}

function podModel(): NamedModel {
  const wide = tableOf('pods').map((row, i): Row => ({ ...row, plot: String(i) }))
  const rows = wide.flatMap((row) => Array.from({ length: 20 }, (_, k): Row => ({ ...row, seeds: row[`pod${k + 1}`] ?? '' })))
  return {
    response: numbers(rows, 'seeds'),
    columns: new Map([ones(rows), ...contrasts(rows, 'place', ['Crop', 'Edge'])]),
    groupings: [groupingOf('field', rows, ['field']), groupingOf('plot', rows, ['plot'])],
  }
}

export const namedModels: { readonly [fit: string]: NamedModel } = {
  ...sleepModels(),
  'Penicillin: crossed': plain('Penicillin', 'diameter', ['plate', 'sample']),
  'Pastes: nested': plain('Pastes', 'strength', ['sample', 'batch']),
  Dyestuff: plain('Dyestuff', 'Yield', ['Batch']),
  'Dyestuff2: no variance': plain('Dyestuff2', 'Yield', ['Batch']),
  'cake: slope beside a crossed intercept': cakeModel(),
  ...blueberryModels(),
  'oilseed rape: seeds': podModel(),
}

export function modelOf({ columns, ...model }: NamedModel, likelihood: LinearMixedModel['likelihood']): LinearMixedModel {
  return { ...model, likelihood, design: matrixOfColumns(model.response.length, [...columns.values()]) }
}
