import { type CsvCell, csv, rNumber, rString, rVector } from '../receipt/csv.ts'
import type { Receipt } from '../receipt/receipt.ts'
import type { FitCase } from './fit-case.ts'
import { columnsFunction, fitClosing, fitInR, fitOpening, meansFunction, modelTable, rNumbers } from './fit-r.ts'
import { comparedIn } from './means.ts'
import type { FitColumn } from './table.ts'
import type { TableFitted, ToldCoefficient } from './told.ts'

/** What R may differ by: searches end where the likelihood is flat to their last digits. */
const within = { logLikelihood: 1e-4, coefficients: 1e-4, errors: 0.005, means: 1e-3 }

/** Columns that are numbers in the rows of the receipt; all others are names. */
function numbersUsed({ asked, design, zeros }: FitCase): ReadonlySet<FitColumn> {
  const { response, effort, offset, trials, slope, fixed, zerosBy } = asked
  const isNumber = ({ name }: FitColumn): boolean => (design.of[name] ?? zeros?.of[name])?.kind === 'number'
  return new Set(
    [response, effort, offset, trials, slope?.column ?? null, ...[...fixed, ...(zerosBy ?? [])].flat().filter(isNumber)].flatMap(
      (column) => column ?? [],
    ),
  )
}

/** The rows that were used, every column that the model names: as numbers, or as names. */
function rowsTable(own: FitCase): { readonly text: string; readonly names: readonly string[] } {
  const { asked, table, rows } = own
  const numbers = numbersUsed(own)
  const used = new Set([...numbers, ...asked.fixed.flat(), ...(asked.zerosBy ?? []).flat(), ...asked.random.flat()])
  const columns = table.columns.filter((column) => used.has(column))
  const cells = rows.map((row): readonly CsvCell[] => [
    table.lines[row] ?? 0,
    ...columns.map((column) => (numbers.has(column) ? (column.numbers[row] ?? null) : (column.texts[row] ?? ''))),
  ])
  return {
    text: csv(['line of the file', ...columns.map(({ name }) => name)], cells),
    names: columns.filter((column) => !numbers.has(column)).map(({ name }) => name),
  }
}

const kept = (told: readonly ToldCoefficient[]): readonly number[] =>
  told.flatMap(({ kind }, j) => (kind === 'set-aside' ? [] : [j]))

function coefficientChecks(what: string, told: readonly ToldCoefficient[], b: string, V: string): readonly string[] {
  const own = told.flatMap((one) => (one.kind === 'set-aside' ? [] : [one]))
  const errors = own.flatMap((one, k) => (one.kind === 'told' ? [{ place: k + 1, se: one.se }] : []))
  const places = rNumbers(errors.map(({ place }) => place))
  return [
    `check("${what}", ${b}, ${rNumbers(own.map(({ estimate }) => estimate))}, ${within.coefficients}, ${within.coefficients})`,
    ...(errors.length > 0
      ? [
          `check("standard errors, ${what}", sqrt(diag(${V}))[${places}], ${rNumbers(errors.map(({ se }) => se))}, 0, ${within.errors})`,
        ]
      : []),
  ]
}

function meansChecks(own: FitCase, { comparisons, link }: TableFitted): readonly string[] {
  const { design, asked } = own
  const back = { log: 'exp', logit: 'plogis', identity: 'identity' }[link]
  const levels = Object.entries(design.of).flatMap(([name, column]) =>
    column.kind === 'levels' ? [`${rString(name)} = ${rVector(column.levels.map(rString))}`] : [],
  )
  const held = Object.entries(design.of).flatMap(([name, { kind }]) => (kind === 'number' ? [rString(name)] : []))
  return comparedIn(own).flatMap((columns, k): readonly string[] => {
    const told = comparisons[k]?.means ?? []
    const values = told.flatMap((mean) => (mean.kind === 'mean' ? [mean.value] : []))
    if (values.length === 0 || values.length < told.length) return []
    const of = rVector(columns.map(({ name }) => rString(name)))
    const call = `means(${of}, ${held.length > 0 ? rVector(held) : 'character(0)'}, list(${levels.join(', ')}), ${rNumber(asked.per)}, ${back})`
    return [
      `check(paste("means of", ${rString(columns.map(({ name }) => name).join(', '))}), ${call}, ${rNumbers(values)}, 1e-9, ${within.means})`,
    ]
  })
}

/** Rows as used, and an R script that fits the same and compares. */
export function tableFitReceipt(own: FitCase, fitted: TableFitted): Receipt {
  const { asked, design, zeros } = own
  const rows = rowsTable(own)
  const columns = kept(fitted.coefficients)
  const zeroColumns = fitted.zeros === null ? [] : kept(fitted.zeros)
  const inR = fitInR(own, columns.length, zeroColumns.length)
  const { logLikelihood } = fitted.likelihood
  const body =
    inR === null
      ? []
      : [
          columnsFunction('columns', 'x', design.parts, columns),
          ...(zeros === null ? [] : [columnsFunction('zero_columns', 'z', zeros.parts, zeroColumns)]),
          modelTable(own),
          inR,
          `if (!is.null(ll)) check("log likelihood", ll, ${rNumber(logLikelihood)}, ${within.logLikelihood})`,
          ...coefficientChecks('coefficients', fitted.coefficients, 'b', 'V'),
          // A chance as good as none has a coefficient without end, which no two searches give alike.
          ...(fitted.zeros === null || fitted.cautions.some(({ id }) => id === 'no-extra-zeros')
            ? []
            : coefficientChecks('coefficients of other zeros', fitted.zeros, 'zb', 'zV')),
          ...(fitted.comparisons.length > 0 ? [meansFunction, ...meansChecks(own, fitted)] : []),
        ]
  const opening = `# Receipt of a fit of Thrum: ${asked.family}, ${own.rows.length} rows. Fits the same model to the rows beside this file, and compares
# log likelihood (to ${within.logLikelihood}), coefficients (to ${within.coefficients}), standard errors (to ${100 * within.errors} %) and means (to ${100 * within.means} %).
# Run it in the folder that holds the rows:  Rscript receipt.R
# It needs R with ${asked.family === 'gaussian' ? 'lme4 where there are groups' : 'glmmTMB, or lme4 where quadrature was asked for; not for plain counts and shares without groups'}.
# Each x is a column of the model: 1 in rows of a level and 0 in others, a number, or a product of such.`
  return {
    files: [
      { name: 'rows.csv', text: rows.text },
      { name: 'receipt.R', text: `${opening}\n${fitOpening(rows.names)}\n${body.join('\n')}\n${fitClosing}` },
    ],
  }
}
