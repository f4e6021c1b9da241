import type { Analysis, Answer, Snapshot } from '@thrum/model'
import { rowAddress } from '@thrum/model'
import { type FittedModel, type PairContrast, stepLength } from '@thrum/survey'
import type { ContrastCase, ContrastOptions } from '../contrast/contrast-case.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'
import type { MadeAnalysis } from '../what-differs/analyses.ts'
import { analyseOtherwise, judgeContrast } from '../what-differs/judged.ts'
import { countsTable, nuisanceLabel } from './counts-table.ts'
import { csv, rNumber, rString, rVector } from './csv.ts'
import type { Receipt } from './receipt.ts'

/** Most arrangements of fields that a receipt goes through one by one. */
const mostArrangements = 5_000

/** Tables and lines of R that recompute the other analyses of an answer. */
export interface AnalysesReceipt {
  readonly files: Receipt['files']
  readonly checks: readonly string[]
  /** Names of nuisances that the table of counts must hold for them. */
  readonly nuisances: readonly string[]
}

/** The other analyses of a contrast, made again; those of comparisons that an answer does not tell are left out. */
export function remade(
  snapshot: Snapshot,
  asked: ContrastCase,
  options: ContrastOptions,
): readonly { readonly found: PairVerdict; readonly pair: PairContrast; readonly made: readonly MadeAnalysis[] }[] {
  const judged = judgeContrast(snapshot, asked, options)
  const made = analyseOtherwise(snapshot, asked, options, judged)
  return judged.found.flatMap((found, k) => {
    const own = made[k] ?? null
    return own === null || found.pair.kind === 'refused' ? [] : [{ found, pair: found.pair, made: own }]
  })
}

const familyOf = ({ problem, without }: FittedModel): string => {
  if (problem.family === 'nb2') return without.dispersion ? 'poisson' : 'nbinom2'
  return without.dispersion ? 'binomial' : 'betabinomial'
}

/** The table that a model was fitted to: one row a visit and level. */
function modelTable({ problem }: FittedModel): string {
  const { counts, trials, offset, columns, groupings } = problem
  return csv(
    [
      'count',
      ...(trials === null ? [] : ['trials']),
      'offset',
      ...groupings.map(({ name }) => name),
      ...columns.map(({ name }) => `x ${name}`),
    ],
    Array.from(counts, (count, row) => [
      count,
      ...(trials === null ? [] : [trials[row] as number]),
      offset[row] as number,
      ...groupings.map(({ of }) => of[row] as number),
      ...columns.map(({ values }) => values[row] as number),
    ]),
  )
}

const saidOf = ({ value, interval }: Analysis): string =>
  rVector([rNumber(value), rNumber(interval?.low ?? null), rNumber(interval?.high ?? null)])

const nuisanceNames = (nuisances: PairContrast['nuisances']): string => {
  const names = nuisances.flatMap(({ name, columns }) => columns.map((_, k) => rString(nuisanceLabel(name, k))))
  return names.length === 0 ? 'character(0)' : rVector(names)
}

/** The call that makes a contrast, or a slope, of some data again. */
function fieldCall(
  asked: ContrastCase,
  found: PairVerdict,
  level: number,
  nuisances: PairContrast['nuisances'],
  data: string,
): string {
  const kind = rString(found.kind.kind.label)
  const { measured, levels } = asked.design
  if (measured !== null)
    return `slope(${kind}, ${nuisanceNames(nuisances)}, ${rNumber(stepLength(measured, measured.step))}, 0.95${data})`
  return `contrast(${kind}, ${rString(levels[0] ?? '')}, ${rString(levels[level] ?? '')}, ${nuisanceNames(nuisances)}, 0.95${data})`
}

/** Tables and checks of the other analyses; nothing where the answer tells none. */
export function analysesReceipt(
  snapshot: Snapshot,
  asked: ContrastCase,
  options: ContrastOptions,
  answer: Answer,
): AnalysesReceipt {
  const files: { name: string; text: string }[] = []
  const checks: string[] = []
  const nuisances: string[] = []
  const keep = (name: string, text: string): string => {
    if (files.every((own) => own.name !== name)) files.push({ name, text })
    return rString(name)
  }
  const made = answer.analyses === undefined ? [] : remade(snapshot, asked, options)
  for (const [k, { found, pair, made: analyses }] of made.entries()) {
    const compared = answer.analyses?.[k]
    const named = (id: string): string => rString(`${found.kind.kind.label}, ${asked.design.levels[pair.level] ?? ''}: ${id}`)
    for (const { id, source, outcome } of analyses) {
      const told = compared?.analyses.find((own) => own.id === id)
      if (told === undefined || outcome.kind === 'none' || id === 'as-asked') continue
      const said = saidOf(told)
      if (source.kind === 'units') {
        nuisances.push(...source.nuisances.map(({ name }) => name))
        checks.push(`check(${named(id)}, ${fieldCall(asked, found, pair.level, source.nuisances, '')}, ${said})`)
      } else if (source.kind === 'field-t') {
        checks.push(`check(${named(id)}, ${fieldCall(asked, found, pair.level, pair.nuisances, ', t_alone = TRUE')}, ${said})`)
      } else if (source.kind === 'visit') {
        const addresses = rVector(source.rows.map((row) => rString(rowAddress(snapshot.tables.count, row))))
        const data = `, data = without(${addresses})`
        checks.push(`check(${named(id)}, ${fieldCall(asked, found, pair.level, pair.nuisances, data)}, ${said})`)
      } else if (source.kind === 'window') {
        if (source.asked.design.structure !== asked.design.structure) continue
        const file = keep(`counts-${id}.csv`, countsTable(source.asked, []))
        const data = `, data = read(${file})`
        checks.push(
          `check(${named(id)}, ${fieldCall(source.asked, found, source.pair.level, source.pair.nuisances, data)}, ${said})`,
        )
      } else if (source.model.kind === 'fitted') {
        const { model } = source
        const file = keep(`${id}-${k + 1}.csv`, modelTable(model))
        const random = model.problem.groupings.filter(({ name }) => !model.without.groupings.includes(name))
        const groups = random.length === 0 ? 'character(0)' : rVector(random.map(({ name }) => rString(name)))
        const { measured } = asked.design
        const length = measured === null ? 1 : stepLength(measured, measured.step)
        checks.push(
          `model(${named(id)}, ${file}, ${rString(familyOf(model))}, ${groups}, ${rNumber(length)}, ${pair.fieldT.df}, ${said})`,
        )
      }
    }
    const told = compared?.analyses.find(({ id }) => id === 'permutation')?.told ?? null
    const { p, smallest } = told?.values ?? {}
    if (typeof p === 'number' && typeof smallest === 'number' && smallest * mostArrangements >= 1) {
      const call = `permuted(${rString(found.kind.kind.label)}, ${rString(asked.design.levels[0] ?? '')}, ${rString(asked.design.levels[pair.level] ?? '')}, ${nuisanceNames(pair.nuisances)})`
      checks.push(`check(${named('permutation')}, ${call}, ${rNumber(p)})`)
    }
  }
  return { files, checks, nuisances }
}
