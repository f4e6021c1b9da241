import { type MendedCell, sameCell } from './cell.ts'
import type { RowMatches } from './match-rows.ts'
import type { FreshRows, FreshTally, HeldRows, TallyLabel } from './rows.ts'

/** One cell in which a mended file differs from what it said before. */
export interface CellDifference {
  /** Address of the row that the cell stands in: a count, or a tally. */
  readonly of: string
  readonly column: string
  /** Who was counted; null for cells of the count itself. */
  readonly label: TallyLabel | null
  readonly line: number
  readonly from: MendedCell
  readonly to: MendedCell
}

/** What accepting a mended file would do. Nothing is written. */
export interface MendedPlan extends Omit<RowMatches, 'gone'> {
  /** Counts held that the file has no row for. */
  readonly gone: readonly { readonly address: string; readonly line: number | null }[]
  /** Rows of which nothing changed. */
  readonly equal: number
  /** Proposed as corrections. */
  readonly changed: readonly CellDifference[]
  /** The file says another thing than before, and so does a person here: what the person said stays. */
  readonly kept: readonly CellDifference[]
  /** Rows of the file that are new counts. */
  readonly added: readonly number[]
  /** Tallies that are new in counts held: rows of the table `tally` as read, and the count they belong to. */
  readonly addedTallies: readonly {
    readonly row: number
    readonly of: string
    readonly label: TallyLabel
    readonly line: number
  }[]
  /** Tallies held whose kind the file no longer counts in that row. */
  readonly goneTallies: readonly { readonly of: string; readonly label: TallyLabel; readonly line: number }[]
  /** Lines whose count was withdrawn here: it stays withdrawn. */
  readonly withdrawnLines: readonly number[]
  /** Lines whose count was forgotten here: it stays forgotten, and the file is not kept. */
  readonly forgottenLines: readonly number[]
  /** Columns that earlier versions had and this one has not: what they said stays. */
  readonly columnsGone: readonly string[]
  /** For each row matched or new that has a line of its own: where it is held (-1: in the rows this file adds). */
  readonly lines: readonly { readonly line: number; readonly address: string }[]
}

interface Sorted {
  readonly changed: CellDifference[]
  readonly kept: CellDifference[]
}

function sort(
  into: Sorted,
  said: MendedCell,
  stands: MendedCell,
  fresh: MendedCell,
  where: Omit<CellDifference, 'from' | 'to'>,
): void {
  if (sameCell(fresh, said) || sameCell(fresh, stands)) return
  const difference = { ...where, from: stands, to: fresh }
  if (sameCell(said, stands)) into.changed.push(difference)
  else into.kept.push(difference)
}

/**
 * Compares a file with what its earlier versions said and with what stands now: a cell that the file left alone adds
 * nothing, whatever was corrected here since; a cell that it changed is proposed, unless a person corrected it here.
 */
export function compareRows(fresh: FreshRows, held: HeldRows, matches: RowMatches): MendedPlan {
  const into: Sorted = { changed: [], kept: [] }
  const added: number[] = []
  const addedTallies: MendedPlan['addedTallies'][number][] = []
  const goneTallies: MendedPlan['goneTallies'][number][] = []
  const withdrawnLines: number[] = []
  const forgottenLines: number[] = []
  const lines: MendedPlan['lines'][number][] = []
  let equal = 0

  for (let row = 0; row < fresh.rows; row++) {
    const of = matches.heldOf[row] as number
    const line = fresh.line(row)
    if (of < 0) {
      added.push(row)
      continue
    }
    const address = held.address(of)
    lines.push({ line, address })
    if (held.isWithdrawn(of)) {
      if (held.forgotten(of) === null) withdrawnLines.push(line)
      else forgottenLines.push(line)
      continue
    }
    const before = into.changed.length + into.kept.length + addedTallies.length + goneTallies.length
    for (const column of fresh.columns) {
      const where = { of: address, column, label: null, line }
      sort(into, held.said(of, column), held.stands(of, column), fresh.cell(row, column), where)
    }
    const waiting = new Map<TallyLabel, FreshTally>(fresh.tallies(row).map((tally) => [tally.label, tally]))
    for (const tally of held.tallies(of)) {
      const found = waiting.get(tally.label)
      waiting.delete(tally.label)
      if (found !== undefined && found.line !== null && found.line !== line)
        lines.push({ line: found.line, address: tally.address })
      if (tally.isWithdrawn) continue
      if (found === undefined) goneTallies.push({ of: tally.address, label: tally.label, line })
      else {
        const where = { of: tally.address, column: 'number', label: tally.label, line: found.line ?? line }
        sort(into, tally.said, tally.stands, found.cell, where)
      }
    }
    for (const { row: tally, label, line: own } of waiting.values()) {
      addedTallies.push({ row: tally, of: address, label, line: own ?? line })
    }
    if (before === into.changed.length + into.kept.length + addedTallies.length + goneTallies.length) equal += 1
  }
  return {
    ...matches,
    gone: matches.gone.map((row) => ({ address: held.address(row), line: held.line(row) })),
    ...into,
    equal,
    added,
    addedTallies,
    goneTallies,
    withdrawnLines,
    forgottenLines,
    columnsGone: [...held.columns].filter((column) => !fresh.columns.has(column)),
    lines,
  }
}
