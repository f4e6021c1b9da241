import {
  type Column,
  mark,
  type NamedColumn,
  type NumberColumn,
  numberColumn,
  parseAddress,
  textAt,
  textColumn,
} from '@thrum/model'
import type { CountsRead } from '../rows/counts-read.ts'
import type { MendedPlan } from './compare-rows.ts'

/** Tables of a mended file: what is new in it, and where its other lines are held. */
export interface NewTables {
  readonly count: readonly NamedColumn[]
  readonly tally: readonly NamedColumn[]
  readonly setAside: readonly NamedColumn[]
  /** Which row (`source`, a batch, and `row` in it) each line of the file is, where an earlier version brought it. */
  readonly heldLine: readonly NamedColumn[]
}

/** Chosen rows of a column. Words of a text that none of them uses are left out. */
function take(column: Column, rows: readonly number[]): Column {
  if (column.type === 'text') return textColumn(rows.map((row) => textAt(column, row)))
  const marks = column.marks === null ? null : Uint8Array.from(rows, (row) => column.marks?.[row] ?? mark.asWritten)
  return { type: 'number', values: Float64Array.from(rows, (row) => column.values[row] ?? Number.NaN), marks }
}

const takeAll = (columns: readonly NamedColumn[], rows: readonly number[]): readonly NamedColumn[] =>
  rows.length === 0 ? [] : columns.map((named) => ({ ...named, column: take(named.column, rows) }))

function numbersOf(columns: readonly NamedColumn[], name: string): NumberColumn | null {
  const column = columns.find((own) => own.name === name)?.column
  return column?.type === 'number' ? column : null
}

function tallyTable(read: CountsRead, plan: MendedPlan, newCount: ReadonlyMap<number, number>): readonly NamedColumn[] {
  const { tally } = read.tables
  const of = numbersOf(tally, 'count')
  const own = Array.from(of?.values ?? []).flatMap((count, row) => (newCount.has(count) ? [row] : []))
  const rows = [...own, ...plan.addedTallies.map(({ row }) => row)]
  const taken = takeAll(tally, rows)
  const counts = numberColumn([
    ...own.map((row) => newCount.get(of?.values[row] ?? -1) ?? null),
    ...plan.addedTallies.map(() => null),
  ])
  const linked = taken.map((named) => (named.name === 'count' ? { ...named, column: counts } : named))
  if (plan.addedTallies.length === 0) return linked
  const addresses = textColumn([...own.map(() => null), ...plan.addedTallies.map(({ of: address }) => address)])
  return [...linked, { name: 'of', column: addresses }]
}

/** Lines set aside: those of cells in new rows, and rows set aside as a whole that no earlier version set aside alike. */
function setAsideTable(
  read: CountsRead,
  newCount: ReadonlyMap<number, number>,
  newTally: ReadonlyMap<number, number>,
  isKnown: (written: string) => boolean,
): readonly NamedColumn[] {
  const columns = read.tables.setAside
  const row = numbersOf(columns, 'row')
  const text = (name: string, at: number): string => {
    const column = columns.find((own) => own.name === name)?.column
    return column?.type === 'text' ? (textAt(column, at) ?? '') : ''
  }
  const kept: number[] = []
  const newRows: (number | null)[] = []
  for (let at = 0; at < (row?.values.length ?? 0); at++) {
    const of = row?.values[at] ?? Number.NaN
    if (Number.isNaN(of)) {
      if (isKnown(text('written', at))) continue
      kept.push(at)
      newRows.push(null)
      continue
    }
    const now = (text('table', at) === 'count' ? newCount : newTally).get(of)
    if (now === undefined) continue
    kept.push(at)
    newRows.push(now)
  }
  return takeAll(columns, kept).map((named) => (named.name === 'row' ? { ...named, column: numberColumn(newRows) } : named))
}

/**
 * The tables that a mended file brings: new counts with their tallies, tallies that are new in counts held (they name their
 * count by its address, in a column `of`), what of them waits, and which line is which row held.
 *
 * @param isKnown true for a row set aside as a whole that an earlier version set aside with the same text
 */
export function onlyNew(read: CountsRead, plan: MendedPlan, isKnown: (written: string) => boolean): NewTables {
  const newCount = new Map(plan.added.map((row, at) => [row, at]))
  const of = numbersOf(read.tables.tally, 'count')
  const own = Array.from(of?.values ?? []).flatMap((count, row) => (newCount.has(count) ? [row] : []))
  const newTally = new Map([...own, ...plan.addedTallies.map(({ row }) => row)].map((row, at) => [row, at]))
  const held = plan.lines.map(({ line, address }) => ({ line, ...parseAddress(address) }))
  return {
    count: takeAll(read.tables.count, plan.added),
    tally: tallyTable(read, plan, newCount),
    setAside: setAsideTable(read, newCount, newTally, isKnown),
    heldLine:
      held.length === 0
        ? []
        : [
            { name: 'line', unit: '1', column: numberColumn(held.map(({ line }) => line)) },
            { name: 'source', column: textColumn(held.map(({ fact }) => fact)) },
            { name: 'row', unit: '1', column: numberColumn(held.map(({ row }) => row)) },
          ],
  }
}
