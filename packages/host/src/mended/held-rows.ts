import { cellOf, emptyCell, type HeldRows, type HeldTally, type MendedCell, tallyLabel } from '@thrum/exchange'
import { addressOf, declarationOf, findColumn, parseAddress, type Table } from '@thrum/model'
import { type BroughtBatch, type BroughtSheet, batchRow, numberIn, textIn } from '../corrections/brought-rows.ts'
import { type CorrectedProject, historyOf } from '../corrections/corrected-project.ts'
import { writtenIn } from '../corrections/row-cells.ts'

interface Row {
  readonly sheet: BroughtSheet
  readonly batch: BroughtBatch
  readonly row: number
}

/** Rows of a table of the snapshot by source and row in it. Rows that were withdrawn are not there. */
function standingRows(table: Table): (batch: string, row: number) => number {
  const bySource = new Map<string, Map<number, number>>()
  for (let row = 0; row < table.rows; row++) {
    const source = table.sources[table.sourceOf[row] ?? -1] ?? ''
    const known = bySource.get(source) ?? new Map<number, number>()
    known.set(table.rowInSource[row] ?? -1, row)
    bySource.set(source, known)
  }
  return (batch, row) => bySource.get(batch)?.get(row) ?? -1
}

const rowsOf = (sheets: readonly BroughtSheet[], table: string): readonly Row[] =>
  sheets.flatMap((sheet) =>
    sheet.batches
      .filter((batch) => batch.table === table)
      .flatMap((batch) => Array.from({ length: batch.rows }, (_, row) => ({ sheet, batch, row }))),
  )

/** What the files of a chain said last in a cell: as it was brought, or as a mended version corrected it. */
function saidBy(corrected: CorrectedProject, files: ReadonlySet<string>, table: 'count' | 'tally') {
  return ({ sheet, batch, row }: Row, column: string): MendedCell => {
    const steps = historyOf(corrected, addressOf(batch.id, row), column)?.steps ?? []
    const step = steps.findLast((own) => own.sheet !== null && files.has(own.sheet) && !own.takenBack)
    if (step !== undefined) {
      return { value: step.to, mark: step.mark, ...(typeof step.to === 'string' ? { written: step.to } : {}) }
    }
    const found = batch.columns.get(column)
    if (found === undefined) return emptyCell(declarationOf(table, column)?.type === 'number')
    return cellOf(found, row, () => writtenIn({ sheet, batch, row }, table, column))
  }
}

function standsIn(corrected: CorrectedProject, name: 'count' | 'tally', said: (row: Row, column: string) => MendedCell) {
  const table = corrected.snapshot.tables[name] as Table
  const at = standingRows(table)
  return {
    isThere: ({ batch, row }: Row): boolean => at(batch.id, row) >= 0,
    cell: (of: Row, column: string): MendedCell => {
      const row = at(of.batch.id, of.row)
      const found = findColumn(table, column)
      if (row < 0 || found === undefined) return said(of, column)
      // The fold fills season and crop where no file says them; that is no correction.
      if (historyOf(corrected, addressOf(of.batch.id, of.row), column)?.standing == null) return said(of, column)
      return cellOf(found, row, () => {
        const step = historyOf(corrected, addressOf(of.batch.id, of.row), column)?.standing
        return typeof step?.to === 'string' ? step.to : undefined
      })
    },
  }
}

/** Tallies of each count of a chain, by the address of the count. */
function talliesByCount(sheets: readonly BroughtSheet[]): ReadonlyMap<string, readonly Row[]> {
  const lists = new Map<string, Row[]>()
  for (const tally of rowsOf(sheets, 'tally')) {
    const { sheet, batch, row } = tally
    const ordinal = numberIn(batch, 'count', row)
    const count = ordinal === null ? null : batchRow(sheet, 'count', ordinal)
    const address = textIn(batch, 'of', row) ?? (count === null ? null : addressOf(count.batch.id, count.row))
    if (address === null) continue
    const list = lists.get(address) ?? []
    list.push(tally)
    lists.set(address, list)
  }
  return lists
}

/** Lines of the latest version by the rows that hold them. */
function linesIn(latest: BroughtSheet): ReadonlyMap<string, number> {
  const lines = new Map<string, number>()
  for (const batch of latest.batches) {
    for (let row = 0; row < batch.rows; row++) {
      const line = numberIn(batch, 'line', row)
      if (line === null) continue
      if (batch.table === 'count') lines.set(addressOf(batch.id, row), line)
      else if (batch.table === 'heldLine') lines.set(`${textIn(batch, 'source', row)}#${numberIn(batch, 'row', row)}`, line)
    }
  }
  return lines
}

/**
 * The counts that a file and the earlier versions it mends brought, for the comparison with the next version.
 *
 * @param versions the latest first
 */
export function heldRows(corrected: CorrectedProject, versions: readonly BroughtSheet[]): HeldRows {
  const inOrder = versions.toReversed()
  const counts = rowsOf(inOrder, 'count')
  const tallies = talliesByCount(inOrder)
  const files = new Set(versions.map(({ sheet }) => sheet))
  const saidCount = saidBy(corrected, files, 'count')
  const saidTally = saidBy(corrected, files, 'tally')
  const standingCount = standsIn(corrected, 'count', saidCount)
  const standingTally = standsIn(corrected, 'tally', saidTally)
  const lines = versions[0] === undefined ? new Map<string, number>() : linesIn(versions[0])
  const rowAt = (row: number): Row => counts[row] as Row
  const address = (row: number): string => addressOf(rowAt(row).batch.id, rowAt(row).row)
  const batches = inOrder.flatMap((sheet) => sheet.batches.filter(({ table }) => table === 'count'))
  const ids = new Set(batches.map(({ id }) => id))
  const brought = batches.flatMap(({ columns }) => [...columns.keys()])
  const mended = corrected.histories.filter(
    ({ of, steps }) => ids.has(parseAddress(of).fact) && steps.some(({ sheet }) => sheet !== null && files.has(sheet)),
  )
  return {
    project: corrected.snapshot.project?.id ?? '',
    rows: counts.length,
    columns: new Set([...brought, ...mended.map(({ column }) => column)].filter((name) => name !== 'line')),
    address,
    line: (row) => lines.get(address(row)) ?? numberIn(rowAt(row).batch, 'line', rowAt(row).row),
    isWithdrawn: (row) => !standingCount.isThere(rowAt(row)),
    forgotten: (row) => corrected.forgotten.get(address(row)) ?? null,
    said: (row, column) => saidCount(rowAt(row), column),
    stands: (row, column) => standingCount.cell(rowAt(row), column),
    tallies: (row) =>
      (tallies.get(address(row)) ?? []).map(
        (tally): HeldTally => ({
          label: tallyLabel(
            textIn(tally.batch, 'kind', tally.row),
            textIn(tally.batch, 'caste', tally.row),
            textIn(tally.batch, 'behaviour', tally.row),
          ),
          address: addressOf(tally.batch.id, tally.row),
          said: saidTally(tally, 'number'),
          stands: standingTally.cell(tally, 'number'),
          isWithdrawn: !standingTally.isThere(tally),
        }),
      ),
  }
}
