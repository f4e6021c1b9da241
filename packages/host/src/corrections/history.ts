import { type MendedCell, readSheet } from '@thrum/exchange'
import { type CellHistory, type CellStep, isContested } from '@thrum/model'
import { type Saying, ThrumError } from '@thrum/model/ground'
import type { Project } from '../project/project.ts'
import { type BroughtSheet, numberIn, placeOf } from './brought-rows.ts'
import { namedCell, shown } from './correct.ts'
import { type CorrectedProject, readCorrected, type Withdrawal } from './corrected-project.ts'
import { fileNameOf } from './file-versions.ts'
import { findRow } from './find-row.ts'
import { broughtCell, type NamedCell, standingCell, talliesOfCount, toldCount } from './row-cells.ts'

/** One correction of a cell, as a person reads it. */
export interface ToldStep {
  readonly fact: string
  readonly to: string | Saying
  readonly by: string
  readonly at: string
  /** Null where a waiting cell was settled. */
  readonly reason: string | null
  /** The mended file that says so; null where a person does. */
  readonly file: string | null
  readonly takenBack: boolean
  /** True for one of several that knew nothing of each other and differ. */
  readonly contested: boolean
}

export interface ToldCell {
  readonly of: string
  readonly column: string
  /** What the file said when it was brought; null where it is no cell of a file, or was forgotten. */
  readonly brought: string | Saying | null
  readonly steps: readonly ToldStep[]
  /** What stands; null where the row was withdrawn. */
  readonly stands: string | Saying | null
  readonly contested: boolean
}

export interface ToldWithdrawal {
  readonly fact: string
  /** What was taken back: the row itself, one of its tallies, its whole file, or a withdrawal. */
  readonly of: string
  readonly by: string
  readonly at: string
  readonly reason: string
  readonly takenBack: boolean
}

/** What is known of a row or a fact: the line as it came, what happened to it, and what stands. */
export interface RowHistory {
  readonly row: string
  readonly address: string
  readonly told: string
  /** The line of the file as it came, by header; null where the file is not there any more. */
  readonly line: {
    readonly file: string
    readonly number: number
    readonly cells: readonly (readonly [header: string, written: string])[]
  } | null
  /** Cells that were ever corrected or settled; or the one that was asked for. */
  readonly cells: readonly ToldCell[]
  readonly withdrawals: readonly ToldWithdrawal[]
  readonly stands: boolean
}

async function bytesOf(project: Project, hash: string): Promise<Uint8Array | null> {
  const attachment = await project.log.attachment(hash)
  if (attachment === null) return null
  const parts: Uint8Array[] = []
  for await (const part of attachment.parts()) parts.push(part)
  return new Uint8Array(Buffer.concat(parts))
}

/** A line of the file as it came. Null where the file is gone, was forgotten, or reads otherwise today. */
async function lineAsItCame(
  { project, sheets }: CorrectedProject,
  sheet: BroughtSheet,
  line: number,
): Promise<RowHistory['line']> {
  const bytes = await bytesOf(project, sheet.fileHash)
  if (bytes === null) return null
  try {
    const file = (sheet.mapping as { readonly file?: Parameters<typeof readSheet>[1] }).file
    const read = readSheet(bytes, file)
    const row = read.lines.indexOf(line)
    if (row < 0) return null
    const cells = read.headers.map((header, k): readonly [string, string] => {
      const column = read.columns[k]
      return [header, column?.dictionary[column.codes[row] ?? -1] ?? '']
    })
    return { file: fileNameOf(sheet, sheets), number: line, cells }
  } catch {
    return null
  }
}

function toldStep(
  corrected: CorrectedProject,
  cell: Pick<NamedCell, 'table' | 'column'>,
  history: CellHistory,
  step: CellStep,
): ToldStep {
  const value: MendedCell = { value: step.to, mark: step.mark, ...(typeof step.to === 'string' ? { written: step.to } : {}) }
  const sheet = corrected.sheets.find((own) => own.sheet === step.sheet)
  return {
    fact: step.fact.id,
    to: shown(cell, value),
    by: step.fact.by,
    at: step.fact.at,
    reason: step.reason,
    file: sheet === undefined ? null : fileNameOf(sheet, corrected.sheets),
    takenBack: step.takenBack,
    contested: isContested(history) && history.open.includes(step),
  }
}

function toldCell(corrected: CorrectedProject, cell: NamedCell): ToldCell {
  const history = corrected.histories.find(({ of, column }) => of === cell.of && column === cell.column)
  const brought = broughtCell(corrected, cell)
  const stands = standingCell(corrected, cell)
  return {
    of: cell.of,
    column: cell.name,
    brought: brought === null ? null : shown(cell, brought),
    steps: history?.steps.map((step) => toldStep(corrected, cell, history, step)) ?? [],
    stands: stands === null ? null : shown(cell, stands),
    contested: history !== undefined && isContested(history),
  }
}

function toldWithdrawals(corrected: CorrectedProject, addresses: readonly string[]): readonly ToldWithdrawal[] {
  const told = (own: Withdrawal): ToldWithdrawal => ({
    fact: own.fact.id,
    of: own.of,
    by: own.fact.by,
    at: own.fact.at,
    reason: own.reason,
    takenBack: corrected.takenBack.has(own.fact.id),
  })
  const direct = corrected.withdrawals.filter(({ of }) => addresses.includes(of))
  // Withdrawals of withdrawals, as deep as they go.
  const all = new Set(direct)
  for (let more: readonly Withdrawal[] = direct; more.length > 0; ) {
    more = corrected.withdrawals.filter((own) => !all.has(own) && more.some(({ fact }) => fact.id === own.of))
    for (const own of more) all.add(own)
  }
  return [...all].sort((a, b) => (a.fact.at < b.fact.at ? -1 : 1)).map(told)
}

/** Cells of a count and its tallies that were ever corrected or settled. */
function touchedCells(corrected: CorrectedProject, address: string): readonly NamedCell[] {
  const tallies = talliesOfCount(corrected, address)
  return corrected.histories.flatMap(({ of, column }): readonly NamedCell[] => {
    if (of === address) {
      const isNumber = placeOf(corrected.sheets, of)?.batch.columns.get(column)?.type === 'number'
      return [{ of, table: 'count', column, name: column, isNumber }]
    }
    const tally = tallies.find((own) => own.address === of)
    if (tally === undefined) return []
    const name = column === 'number' ? tally.label : `${tally.label}: ${column}`
    return [{ of, table: 'tally', column, name, isNumber: column === 'number' }]
  })
}

/**
 * What happened to a row: how it came, each correction with who, when and why, withdrawals, and what stands.
 *
 * @param column one column or kind alone, whether it was ever corrected or not
 * @throws ThrumError host/row/..., host/cell/...
 */
export async function historyOfRow(
  project: Project,
  asked: { readonly row: string; readonly column?: string | undefined },
): Promise<RowHistory> {
  const corrected = await readCorrected(project)
  const found = await findRow(corrected, asked.row)
  if (found.kind === 'fact') return historyOfFact(corrected, found.fact.id, asked.column)
  if (found.kind === 'file') throw new ThrumError('host/row/no-row', { found: found.name })
  const { address } = found
  const place = placeOf(corrected.sheets, address)
  const named = asked.column === undefined ? null : namedCell(corrected, found, asked.column)
  const cells = named !== null ? [named] : touchedCells(corrected, found.kind === 'count' ? (found.tally ?? address) : address)
  const all = found.kind === 'count' && named === null ? touchedCells(corrected, address) : cells
  const number = place === null ? null : numberIn(place.batch, 'line', place.row)
  const tallies = found.kind === 'count' ? talliesOfCount(corrected, address).map((own) => own.address) : []
  const sheetFact = place === null ? [] : [place.sheet.fact]
  const withdrawals = toldWithdrawals(corrected, [address, ...tallies, ...sheetFact])
  return {
    row: found.kind === 'count' ? found.name : corrected.nameOf(address),
    address,
    told: found.kind === 'count' ? toldCount(corrected, address) : '',
    line: place === null || number === null ? null : await lineAsItCame(corrected, place.sheet, number),
    cells: all.map((cell) => toldCell(corrected, cell)),
    withdrawals,
    stands: withdrawals.every(
      ({ of, takenBack }) => takenBack || tallies.includes(of) || (of !== address && !sheetFact.includes(of)),
    ),
  }
}

/** The same for a fact that a person recorded. */
function historyOfFact(corrected: CorrectedProject, id: string, column: string | undefined): RowHistory {
  const own = corrected.histories.filter((history) => history.of === id && (column === undefined || history.column === column))
  const withdrawals = toldWithdrawals(corrected, [id])
  return {
    row: id,
    address: id,
    told: '',
    line: null,
    cells: own.map((history) => ({
      of: id,
      column: history.column,
      brought: history.steps[0] === undefined ? null : String((history.steps[0].fact.body.from as string | number | null) ?? '–'),
      steps: history.steps.map((step) => toldStep(corrected, { table: 'voucher', column: history.column }, history, step)),
      stands: history.standing === null ? null : String(history.standing.to ?? '–'),
      contested: isContested(history),
    })),
    withdrawals,
    stands: withdrawals.every(({ of, takenBack }) => of !== id || takenBack),
  }
}
