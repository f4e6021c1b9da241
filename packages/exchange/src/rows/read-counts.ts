import { type LongWork, type Saying, saying, ThrumError } from '@thrum/model/ground'
import type { Mapping } from '../mapping/shape.ts'
import type { Sheet } from '../read/sheet.ts'
import { type AsideWriter, createAsideWriter } from './aside-writer.ts'
import { numberHabits } from './cell-source.ts'
import { countColumns, effortOf, type Watches } from './count-columns.ts'
import type { CountsRead } from './counts-read.ts'
import { groupRows } from './group-rows.ts'
import { type LongTallySource, longTallies, longTallySource, rowsWithoutKind } from './long-tallies.ts'
import { type MappedColumns, mappedColumns } from './mapped-columns.ts'
import { createShownWriter } from './number-cells.ts'
import { refuseMixedUnits, refuseNotCounts, refuseWithoutEffort } from './refuse-sheet.ts'
import { decided, decidedText, decideRows, type SameWatch } from './row-decisions.ts'
import { columnNotes, keptNotes, namesAlike, rowText, watchNotes } from './sheet-notes.ts'
import { textSources } from './text-cells.ts'
import { effortSource, watchColumns } from './watch-cells.ts'
import { wideTallies, wideTallySources } from './wide-tallies.ts'

/** Rows that wait or were refused are told one by one up to this many; the tables hold all of them. */
const mostRowNotes = 1_000

/** Counts rows by what became of them: a row with a cell that waits is waiting. */
function tellRows(sheet: Sheet, aside: AsideWriter): CountsRead['rows'] {
  const read = sheet.rows + sheet.refused.length
  const waits = new Set<number>()
  const refused = new Set<number>()
  for (const { line, state } of aside.entries) (state === 'refused' ? refused : waits).add(line)
  for (const line of refused) waits.delete(line)
  return { read, accepted: read - waits.size - refused.size, waiting: waits.size, refused: refused.size }
}

/** In a long table one watch has many rows: only rows equal in every cell can be one row entered twice. */
function sameWatch(columns: MappedColumns, long: LongTallySource | null): SameWatch {
  if (long !== null) return long.counted ? 'whole-row' : 'nothing'
  if (columns.one('key') !== undefined) return 'id'
  return columns.one('start') !== undefined || columns.one('visit') !== undefined ? 'whole-row' : 'nothing'
}

/**
 * What each row of a sheet becomes under a mapping: counts and tallies, cells that wait for a person, rows refused with
 * a reason. Pure; nothing is stored. accepted + waiting + refused = rows read, always.
 *
 * @throws ThrumError exchange/mapping/* where the mapping does not fit the sheet; exchange/sheet/* where the sheet as a
 * whole can't be brought: no tallies, means instead of counts, effort unknown, counting units mixed
 * @throws the signal's reason when stopped
 */
export async function readCounts(sheet: Sheet, mapping: Mapping, work: LongWork): Promise<CountsRead> {
  const step = async (done: number): Promise<void> => {
    work.onProgress?.({ done, total: sheet.rows, unit: 'rows' })
    await work.breathe()
    if (work.signal.aborted) throw work.signal.reason ?? new ThrumError('exchange/read/stopped')
  }
  await step(0)
  const columns = mappedColumns(sheet, mapping)
  const habits = numberHabits(sheet, mapping, columns)
  const rawWide = mapping.shape === 'wide' ? wideTallySources(columns, mapping, habits) : null
  const rawLong = mapping.shape === 'long' ? longTallySource(columns, mapping, habits) : null
  if (rawWide?.length === 0 && mapping.plan !== true) throw new ThrumError('exchange/sheet/no-tally-column')
  const tallyCells = rawWide?.flatMap(({ parts }) => parts) ?? (rawLong === null ? [] : [rawLong.number])
  refuseNotCounts(tallyCells, sheet.rows)
  const rawEffort = effortSource(columns, mapping, habits)
  refuseWithoutEffort(rawEffort, mapping)
  refuseMixedUnits(columns)
  await step(Math.floor(sheet.rows / 8))

  const lineOf = (row: number): number => sheet.lines[row] ?? 0
  const rawTexts = textSources(columns, mapping)
  const rawNumbers = watchColumns(columns, mapping, habits)
  const compared = [
    ...rawNumbers,
    ...(rawEffort === null ? [] : [{ column: 'minutes', source: rawEffort.source }]),
    ...tallyCells.map((source) => ({ column: 'number', source })),
  ]
  const decisions = decideRows(
    { texts: rawTexts, numbers: compared, columns: sheet.columns, lineOf, rows: sheet.rows },
    mapping,
    sameWatch(columns, rawLong),
  )
  const out = new Map([...(rawLong === null ? [] : rowsWithoutKind(rawLong, sheet.rows)), ...decisions.out])
  const texts = rawTexts.map((source) => decidedText(source, decisions))
  const numbers = rawNumbers.map((column) => ({ ...column, source: decided(column.source, decisions) }))
  const effort = rawEffort === null ? null : { ...rawEffort, source: decided(rawEffort.source, decisions) }
  const wide = rawWide?.map(({ group, parts }) => ({ group, parts: parts.map((part) => decided(part, decisions)) })) ?? null
  const kept = Int32Array.from({ length: sheet.rows }, (_, row) => row).filter((row) => !out.has(row))
  await step(Math.floor(sheet.rows / 4))

  const aside = createAsideWriter()
  const shown = createShownWriter()
  for (const [row, { state, because, values }] of out) {
    aside.put({ state, table: 'count', column: '', written: rowText(sheet, row), because, values, line: lineOf(row) })
  }
  for (const { line, written, because } of sheet.refused) {
    const values = because.values as { readonly [name: string]: string | number }
    aside.put({ state: 'refused', table: 'count', column: '', written, because: because.id, values, line })
  }
  const groups = rawLong === null ? null : groupRows(kept, mapping, texts, numbers)
  const first = groups === null ? kept : groups.offsets.slice(0, -1).map((at) => groups.rows[at] ?? 0)
  const watches: Watches = { first, groups, lineOf }
  const counted = (row: number): boolean =>
    mapping.plan === true || (wide?.some(({ parts }) => parts.some((part) => part.at(row).kind !== 'not-looked-for')) ?? true)
  const absent = mapping.absent ?? 'not-known'
  const zeros = rawLong === null || absent === 'not-looked-for' ? 'typed' : absent
  const count = countColumns(watches, texts, numbers, effortOf(watches, effort, counted), zeros, aside, shown)
  await step(Math.floor(sheet.rows / 2))

  const unit = mapping.constants?.unit === 'visits' ? '{visits}' : '{individuals}'
  const tallies =
    rawLong === null || groups === null
      ? wideTallies(wide ?? [], first, lineOf, unit, aside, shown)
      : longTallies(rawLong, groups, mapping, lineOf, unit, aside, shown)
  await step(sheet.rows)
  const notes: Saying[] = [
    ...sheet.notes,
    ...decisions.notes,
    ...keptNotes(sheet),
    ...columnNotes(columns, mapping, habits),
    ...watchNotes(watches, numbers, texts, counted, effort, rawLong === null),
    ...namesAlike([...texts, ...(rawLong === null ? [] : [rawLong.kind])]),
    ...count.differing.map((header) => saying('exchange/note/differs-within-watch', { header })),
    ...(columns.unmapped.length === 0
      ? []
      : [saying('exchange/note/columns-left-out', { headers: columns.unmapped.join(', ') })]),
  ]
  return {
    fileHash: sheet.fileHash,
    mapping,
    rows: tellRows(sheet, aside),
    tables: { count: count.columns, tally: tallies.columns(), setAside: aside.entries.length === 0 ? [] : aside.columns() },
    counts: first.length,
    tallies: tallies.rows(),
    kinds: tallies.totals(),
    shown: shown.list(),
    rowNotes: aside.notes(mostRowNotes),
    notes,
  }
}
