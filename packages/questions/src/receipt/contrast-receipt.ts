import type { Answer, Snapshot } from '@thrum/model'
import { frameTable, stepLength } from '@thrum/survey'
import { type ContrastCase, type ContrastOptions, contrastCase } from '../contrast/contrast-case.ts'
import { perUnit } from '../contrast/estimates.ts'
import { fairMeasure } from '../what-differs/variants.ts'
import { type AnalysesReceipt, analysesReceipt } from './analyses-receipt.ts'
import { analysisFunctions, contrastFunctions, countsRead, inflationFunctions, watchFunctions } from './contrast-r.ts'
import { countsTable, nuisanceLabel } from './counts-table.ts'
import { type CsvCell, csv, rNumber, rString, rVector } from './csv.ts'
import { rScript } from './r-script.ts'
import type { Receipt } from './receipt.ts'

function designTable(asked: ContrastCase): { readonly text: string; readonly columns: ReadonlyMap<string, readonly string[]> } {
  const { frame, measured, nuisances } = frameTable(asked.snapshot, asked.design)
  const columns = new Map(nuisances.map(({ name, columns: own }) => [name as string, own.map((_, k) => nuisanceLabel(name, k))]))
  const header = [
    'group',
    'block',
    'level',
    'period',
    ...(measured === null ? [] : ['measured']),
    ...[...columns.values()].flat(),
  ]
  const rows = Array.from({ length: frame.rows }, (_, k): readonly CsvCell[] => [
    frame.groupOf[k] as number,
    asked.design.structure === 'between-fields'
      ? (frame.groupOf[k] as number)
      : (asked.design.fields[frame.groupOf[k] as number]?.block ?? 0),
    frame.levelOf[k] as number,
    frame.periodOf[k] as number,
    ...(measured === null ? [] : [measured[k] as number]),
    ...nuisances.flatMap(({ columns: own }) => own.map((column) => column[k] as number)),
  ])
  return { text: csv(header, rows), columns }
}

function ratioChecks(asked: ContrastCase, answer: Answer): readonly string[] {
  return asked.kinds.flatMap(({ kind, contrast }) =>
    contrast.pairs.flatMap((pair): readonly string[] => {
      const level = asked.design.levels[pair.level] ?? ''
      const told = answer.estimates.find(
        ({ id }) => id === `ratio/${kind.label}/${level}` || id === `ratio/${kind.label}/${level}/described`,
      )
      if (pair.kind === 'refused' || told === undefined) return []
      const nuisances = pair.nuisances.flatMap(({ name, columns }) => columns.map((_, k) => rString(nuisanceLabel(name, k))))
      const said = rVector([rNumber(told.value), rNumber(told.interval.low), rNumber(told.interval.high)])
      const names = nuisances.length === 0 ? 'character(0)' : rVector(nuisances)
      const { measured } = asked.design
      if (measured !== null) {
        const length = rNumber(stepLength(measured, measured.step))
        return [
          `check(${rString(`slope of ${kind.label}`)}, slope(${rString(kind.label)}, ${names}, ${length}, ${told.interval.level}), ${said})`,
        ]
      }
      return [
        `check(${rString(`ratio of ${kind.label}, ${level}`)}, contrast(${rString(kind.label)}, ${rString(asked.design.levels[0] ?? '')}, ${rString(level)}, ${names}, ${told.interval.level}), ${said})`,
      ]
    }),
  )
}

/** What was counted in each group of watches, where nothing more can be claimed. */
function watchChecks(asked: ContrastCase, answer: Answer): readonly string[] {
  const { scale } = perUnit(asked.measure, asked.design.unit === 'snapshot')
  return answer.estimates.flatMap(({ id, value, interval }): readonly string[] => {
    const said = rVector([rNumber(value), rNumber(interval.low), rNumber(interval.high)])
    for (const { kind } of asked.kinds) {
      const start = `rate/${kind.label}/`
      if (asked.against === null && id.startsWith(start)) {
        const group = rString(id.slice(start.length))
        return [`w <- watches(${rString(kind.label)}, ${group}); check(${rString(id)}, garwood(w[1], w[2], ${scale}), ${said})`]
      }
      const exact = `ratio/${kind.label}/`
      if (id.startsWith(exact) && id.endsWith('/these-watches')) {
        const other = rString(id.slice(exact.length, -'/these-watches'.length))
        const call = `a <- watches(${rString(kind.label)}, ${other}); b <- watches(${rString(kind.label)}, ${rString(asked.design.levels[0] ?? '')})`
        return [
          `${call}; t <- poisson.test(c(a[1], b[1]), c(a[2], b[2])); check(${rString(id)}, c(t$estimate, t$conf.int), ${said})`,
        ]
      }
    }
    return []
  })
}

export function inflationChecks(asked: ContrastCase, columns: ReadonlyMap<string, readonly string[]>): readonly string[] {
  return asked.tangles.found.map(({ nuisances, inflation, level }) => {
    const names = nuisances.flatMap((name) => (columns.get(name) ?? []).map(rString))
    const said = inflation === Number.POSITIVE_INFINITY ? 'Inf' : rNumber(inflation)
    return `check(${rString(`inflation by ${nuisances.join(' with ')}`)}, inflation(${level}, ${rVector(names)}), ${said})`
  })
}

/** Fields in each level: what replication is told by. */
function fieldChecks({ design }: ContrastCase): readonly string[] {
  return design.levels.map((level, k) => {
    const fields = new Set(design.fieldOf.filter((_, row) => design.levelOf[row] === k)).size
    return `check(${rString(`fields with ${level}`)}, fields_with(${rString(level)}), ${fields})`
  })
}

/** Receipt of a contrast, or of the audit of its design. */
export function contrastReceipt(snapshot: Snapshot, answer: Answer, options: ContrastOptions, worth: number): Receipt {
  const put = contrastCase(snapshot, options, worth)
  const asked = answer.question === 'what-differs' ? fairMeasure(snapshot, put, options) : put
  const design = designTable(asked)
  const auditOnly = answer.question === 'is-design-sound'
  const others: AnalysesReceipt = auditOnly
    ? { files: [], checks: [], nuisances: [] }
    : analysesReceipt(snapshot, asked, options, answer)
  const body = [
    `structure <- ${rString(asked.design.structure)}`,
    `controlled <- ${asked.design.structure === 'before-after-control' ? 'TRUE' : 'FALSE'}`,
    `relative <- ${asked.against === null ? 'FALSE' : 'TRUE'}`,
    countsRead,
    ...fieldChecks(asked),
    ...(auditOnly ? [] : [contrastFunctions, watchFunctions, ...ratioChecks(asked, answer), ...watchChecks(asked, answer)]),
    ...(others.checks.length > 0 ? [analysisFunctions, ...others.checks] : []),
    ...(asked.tangles.found.length > 0 ? [inflationFunctions, ...inflationChecks(asked, design.columns)] : []),
  ]
  return {
    files: [
      { name: 'counts.csv', text: countsTable(asked, others.nuisances) },
      { name: 'design.csv', text: design.text },
      ...others.files,
      { name: 'receipt.R', text: rScript(answer, body) },
    ],
  }
}
