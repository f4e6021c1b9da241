import { rowAddress } from '@thrum/model'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import { groupName } from '../contrast/phrases.ts'
import { type CsvCell, csv } from './csv.ts'

/** Columns of what entered any headline, and of others, by the name they have in the table; of flowers the turned-over number. */
function enteredNuisances(
  asked: ContrastCase,
  others: readonly string[],
): readonly { readonly label: string; readonly perRow: Float64Array }[] {
  const entered = new Set<string>([
    ...asked.kinds.flatMap(({ contrast }) => contrast.pairs.flatMap((pair) => (pair.kind === 'estimated' ? pair.adjusted : []))),
    ...others,
  ])
  const { flowers } = asked.snapshot.tables.count.columns
  const perFlower = Float64Array.from(asked.design.rows, (row) => 1 / (flowers.values[row] as number))
  return [
    ...asked.nuisances
      .filter(({ name }) => entered.has(name))
      .flatMap(({ name, columns }) => columns.map((perRow, k) => ({ label: nuisanceLabel(name, k), perRow }))),
    ...(entered.has('flowers') ? [{ label: nuisanceLabel('flowers', 0), perRow: perFlower }] : []),
  ]
}

export const nuisanceLabel = (name: string, column: number): string => `${name}.${column + 1}`

/**
 * The counts of a contrast, a row for each watch and kind.
 *
 * @param others names of nuisances that did not enter the headline and are wanted all the same
 */
export function countsTable(asked: ContrastCase, others: readonly string[]): string {
  const { snapshot, design } = asked
  const entered = enteredNuisances(asked, others)
  const header = [
    'address',
    'field',
    'block',
    'level',
    'period',
    'group',
    'kind',
    'count',
    'other',
    'effort',
    ...entered.map(({ label }) => label),
    ...(design.measured === null ? [] : ['measured']),
  ]
  const rows = asked.kinds.flatMap(({ kind, tallies }) =>
    Array.from(design.rows, (row, k): readonly CsvCell[] => {
      const field = design.fields[design.fieldOf[k] as number]
      const level = design.levels[design.levelOf[k] as number] ?? ''
      const period = design.since === null ? '' : design.periodOf[k] === 1 ? 'after' : 'before'
      const other = asked.against?.tallies[row] ?? Number.NaN
      const both = asked.against === null || !Number.isNaN(other)
      return [
        rowAddress(snapshot.tables.count, row),
        field?.name ?? '',
        design.blocks[field?.block ?? 0] ?? '',
        level,
        period,
        groupName(design, design.levelOf[k] as number, design.periodOf[k] as number),
        kind.label,
        both ? (tallies[row] as number) : null,
        asked.against === null || Number.isNaN(tallies[row] as number) ? null : other,
        design.effort[k] as number,
        ...entered.map(({ perRow }) => perRow[k] as number),
        ...(design.measured === null ? [] : [design.measured.values[k] as number]),
      ]
    }),
  )
  return csv(header, rows)
}
