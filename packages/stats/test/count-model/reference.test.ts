import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Coefficients, type CountModel, fitCountModel, type Grouping, matrixOfColumns } from '../../src/index.ts'

const folder = new URL('../reference/count-models/', import.meta.url)

type Row = { readonly [column: string]: string }
function table(name: string): readonly Row[] {
  const [head = '', ...lines] = readFileSync(new URL(`${name}.csv`, folder), 'utf8')
    .trim()
    .split('\n')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, k) => [head.split(',')[k] ?? '', cell])))
}

interface Expected {
  readonly logLik: number
  readonly coef: { readonly [term: string]: readonly [number, number] }
  readonly sd: { readonly [group: string]: number }
  readonly theta: number | null
  readonly phi: number | null
  readonly zeros?: { readonly [term: string]: readonly [number, number] }
}
const expected = JSON.parse(readFileSync(new URL('expected.json', folder), 'utf8')).fits as { readonly [fit: string]: Expected }

/** Treatment contrasts, the first level as reference; names as R gives them. */
function columnsOf(rows: readonly Row[], factors: { readonly [name: string]: readonly string[] }): Map<string, number[]> {
  const columns = new Map<string, number[]>([['(Intercept)', rows.map(() => 1)]])
  for (const [factor, [, ...levels]] of Object.entries(factors))
    for (const level of levels)
      columns.set(
        `${factor}${level}`,
        rows.map((row) => Number(row[factor] === level)),
      )
  return columns
}

function groupingOf(name: string, labels: readonly string[]): Grouping {
  const levels = [...new Set(labels)]
  return { name, of: Int32Array.from(labels, (label) => levels.indexOf(label)), levels: levels.length }
}

const cbpp = table('cbpp')
const quine = table('quine')
const salamanders = table('salamanders')
const numbers = (rows: readonly Row[], column: string): number[] => rows.map((row) => Number(row[column]))

const species = { spp: ['GP', 'PR', 'DM', 'EC-A', 'EC-L', 'DES-L', 'DF'], mined: ['yes', 'no'] }
const bySpecies = columnsOf(salamanders, species)
const interaction = new Map(bySpecies)
const unmined = bySpecies.get('minedno') ?? []
for (const kind of species.spp.slice(1))
  interaction.set(
    `spp${kind}:minedno`,
    (bySpecies.get(`spp${kind}`) ?? []).map((value, i) => value * (unmined[i] ?? 0)),
  )
const herd = groupingOf(
  'herd',
  cbpp.map((row) => row.herd ?? ''),
)
const site = groupingOf(
  'site',
  salamanders.map((row) => row.site ?? ''),
)
const periods = columnsOf(cbpp, { period: ['1', '2', '3', '4'] })
const schools = columnsOf(quine, { Eth: ['A', 'N'], Sex: ['F', 'M'], Age: ['F0', 'F1', 'F2', 'F3'], Lrn: ['AL', 'SL'] })

const byMining = matrixOfColumns(salamanders.length, [...columnsOf(salamanders, { mined: species.mined }).values()])

type Case = Omit<CountModel, 'design'> & { readonly columns: Map<string, number[]> }
const shares = {
  family: 'binomial',
  counts: numbers(cbpp, 'incidence'),
  trials: numbers(cbpp, 'size'),
  columns: periods,
} as const
const counted = { counts: numbers(salamanders, 'count'), columns: bySpecies, groupings: [site] } as const
const days = { counts: numbers(quine, 'Days'), columns: schools } as const
const cases: { readonly [fit: string]: Case } = {
  'cbpp: binomial': { ...shares, groupings: [herd] },
  'cbpp: herd and observation': {
    ...shares,
    groupings: [
      herd,
      groupingOf(
        'obs',
        cbpp.map((_, i) => String(i)),
      ),
    ],
  },
  'cbpp: beta-binomial': { ...shares, family: 'beta-binomial', groupings: [herd] },
  'quine: poisson': { ...days, family: 'poisson' },
  'quine: nb2': { ...days, family: 'nb2' },
  'salamanders: poisson': { ...counted, family: 'poisson' },
  'salamanders: nb1': { ...counted, family: 'nb1' },
  'salamanders: nb2': { ...counted, family: 'nb2' },
  'salamanders: poisson, zeros by mining': { ...counted, family: 'poisson', zeros: byMining },
  'salamanders: nb2, zeros by mining': { ...counted, family: 'nb2', zeros: byMining },
  'salamanders: nb2 with interaction': { ...counted, family: 'nb2', columns: interaction },
}

function expectCoefficients(own: Coefficients, terms: readonly string[], told: Expected['coef']): void {
  expect(terms.toSorted()).toEqual(Object.keys(told).toSorted())
  terms.forEach((term, j) => {
    const [estimate, error] = told[term] as readonly [number, number]
    const found = own.coefficients[j] as number
    expect(Math.abs(found - estimate), `${term} ${found}`).toBeLessThan(Math.max(1e-4, 1e-3 * error))
    expect(Math.abs((own.standardErrors[j] as number) / error - 1), `error of ${term}`).toBeLessThan(0.005)
  })
}

describe('published data, fitted by R', () => {
  it.each(Object.entries(cases))('%s', (name, { columns, ...model }) => {
    const told = expected[name] as Expected
    const design = matrixOfColumns(model.counts.length, [...columns.values()])
    const fit = fitCountModel({ ...model, design })
    if (fit.kind !== 'fitted') throw new Error(fit.kind)
    expect(Math.abs(fit.logLikelihood - told.logLik)).toBeLessThan(1e-5)
    expectCoefficients(fit, [...columns.keys()], told.coef)
    if (told.zeros !== undefined && fit.zeros !== null) expectCoefficients(fit.zeros, Object.keys(told.zeros), told.zeros)
    expect(fit.zeros === null).toBe(told.zeros === undefined)
    model.groupings?.forEach((grouping, k) => {
      const sd = told.sd[grouping.name] as number
      // Below a thousandth both say that there is none.
      if (sd < 1e-3) expect(fit.warnings).toContainEqual({ kind: 'zero-variance', of: grouping.name })
      else expect(Math.abs((fit.deviations[k] as number) / sd - 1)).toBeLessThan(0.002)
    })
    const dispersion = told.theta ?? told.phi
    if (dispersion !== null) expect(Math.abs((fit.dispersion as number) / dispersion - 1)).toBeLessThan(0.002)
  })
})
