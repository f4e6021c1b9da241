import { readFileSync } from 'node:fs'
import { type CountModel, type FittedCountModel, fitCountModel, type Grouping, matrixOfColumns } from '../../src/index.ts'

type Row = { readonly [column: string]: string }
function table(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(new URL(`../reference/count-models/${name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [head.split(',')[k] ?? '', cell])))
}

function grouping(rows: readonly Row[], name: string): Grouping {
  const labels = rows.map((row) => row[name] ?? '')
  const levels = [...new Set(labels)]
  return { name, of: Int32Array.from(labels, (label) => levels.indexOf(label)), levels: levels.length }
}

const isLevel = (rows: readonly Row[], column: string, level: string): number[] =>
  rows.map((row) => Number(row[column] === level))

export function fitted(model: CountModel): FittedCountModel {
  const fit = fitCountModel(model)
  if (fit.kind !== 'fitted') throw new Error(fit.kind)
  return fit
}

const herds = table('cbpp')
const intercept = (rows: readonly Row[]): number[] => rows.map(() => 1)

/** Cases among zebu by period, herds at random: 56 rows. */
export const cbpp: CountModel = {
  family: 'binomial',
  counts: herds.map((row) => Number(row.incidence)),
  trials: herds.map((row) => Number(row.size)),
  design: matrixOfColumns(herds.length, [intercept(herds), ...['2', '3', '4'].map((level) => isLevel(herds, 'period', level))]),
  groupings: [grouping(herds, 'herd')],
}

const sites = table('salamanders')
const kinds = ['PR', 'DM', 'EC-A', 'EC-L', 'DES-L', 'DF']
const columnsOfKinds = kinds.map((level) => isLevel(sites, 'spp', level))
const unmined = isLevel(sites, 'mined', 'no')
const designOf = (...columns: readonly number[][]) => matrixOfColumns(sites.length, [intercept(sites), ...columns])

/** Salamanders by kind (columns 1 to 6) and mining (column 7), sites at random: 644 rows. */
export const salamanders: CountModel = {
  family: 'nb2',
  counts: sites.map((row) => Number(row.count)),
  design: designOf(...columnsOfKinds, unmined),
  groupings: [grouping(sites, 'site')],
}
export const withoutMining: CountModel = { ...salamanders, design: designOf(...columnsOfKinds) }
export const withoutKinds: CountModel = { ...salamanders, design: designOf(unmined) }
export const withoutSites: CountModel = { ...salamanders, groupings: [] }
export const zerosByMining: CountModel = { ...salamanders, zeros: designOf(unmined) }
