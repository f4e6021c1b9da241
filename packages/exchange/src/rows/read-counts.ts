import { type LongWork, type Saying, saying, ThrumError } from '@thrum/model/ground'
import type { Mapping } from '../mapping/shape.ts'
import type { Sheet } from '../read/sheet.ts'
import { createAsideWriter } from './aside-writer.ts'
import { numberHabits } from './cell-source.ts'
import { countColumns, effortOf, type Watches } from './count-columns.ts'
import type { CountsRead } from './counts-read.ts'
import { groupRows } from './group-rows.ts'
import { longTallies, longTallySource } from './long-tallies.ts'
import { mappedColumns } from './mapped-columns.ts'
import { createShownWriter } from './number-cells.ts'
import { refuseMixedUnits, refuseNotCounts, refuseWithoutEffort } from './refuse-sheet.ts'
import type { TallyWriter } from './tally-writer.ts'
import { textSources } from './text-cells.ts'
import { effortSource, watchColumns } from './watch-cells.ts'
import { wideTallies, wideTallySources } from './wide-tallies.ts'

/** Rows that wait or were refused are told one by one up to this many; the tables hold all of them. */
const mostRowNotes = 1_000

/**
 * What each row of a sheet becomes under a mapping: counts and tallies, cells that wait for a person, rows refused with
 * a reason. Pure; nothing is stored. accepted + waiting + refused = rows read, always.
 *
 * @throws ThrumError exchange/mapping/* where the mapping does not fit the sheet; exchange/sheet/* where the sheet as a
 * whole can't be brought: no tallies, means instead of counts, effort unknown, counting units mixed
 * @throws the signal's reason when stopped
 */
export async function readCounts(sheet: Sheet, mapping: Mapping, work: LongWork): Promise<CountsRead> {
  const stopIfAsked = (): void => {
    if (work.signal.aborted) throw work.signal.reason ?? new ThrumError('exchange/read/stopped')
  }
  const step = async (done: number): Promise<void> => {
    work.onProgress?.({ done, total: sheet.rows, unit: 'rows' })
    await work.breathe()
    stopIfAsked()
  }
  stopIfAsked()
  const columns = mappedColumns(sheet, mapping)
  const habits = numberHabits(sheet, mapping, columns)
  const wide = mapping.shape === 'wide' ? wideTallySources(columns, mapping, habits) : null
  const long = mapping.shape === 'long' ? longTallySource(columns, mapping, habits) : null
  if (wide?.length === 0) throw new ThrumError('exchange/sheet/no-tally-column')
  const tallyCells = wide?.flatMap(({ parts }) => parts) ?? (long === null ? [] : [long.number])
  refuseNotCounts(tallyCells, sheet.rows)
  const effort = effortSource(columns, mapping, habits)
  refuseWithoutEffort(effort, mapping)
  refuseMixedUnits(columns)
  await step(0)

  const lineOf = (row: number): number => sheet.lines[row] ?? 0
  const aside = createAsideWriter()
  const shown = createShownWriter()
  const texts = textSources(columns, mapping)
  const numbers = watchColumns(columns, mapping, habits)
  const state = new Uint8Array(sheet.rows)
  const kept = Int32Array.from({ length: sheet.rows }, (_, row) => row)
  await step(Math.floor(sheet.rows / 4))

  const groups = long === null ? null : groupRows(kept, mapping, texts, numbers)
  const first = groups === null ? kept : groups.offsets.slice(0, -1).map((at) => groups.rows[at] ?? 0)
  const watches: Watches = { first, groups, lineOf }
  const counted = (row: number): boolean =>
    wide === null || wide.some(({ parts }) => parts.some((part) => part.at(row).kind !== 'not-looked-for'))
  const zeros =
    long === null || mapping.absent === 'not-looked-for' ? 'typed' : mapping.absent === 'none-seen' ? 'none-seen' : 'not-known'
  const count = countColumns(watches, texts, numbers, effortOf(watches, effort, mapping, counted), zeros, aside, shown)
  await step(Math.floor(sheet.rows / 2))

  const unit = mapping.constants?.unit === 'visits' ? '{visits}' : '{individuals}'
  let tallies: TallyWriter
  if (wide !== null) tallies = wideTallies(wide, first, lineOf, unit, aside, shown)
  else if (long !== null && groups !== null) tallies = longTallies(long, groups, mapping, lineOf, unit, aside, shown)
  else throw new ThrumError('exchange/sheet/no-tally-column')
  await step(sheet.rows)

  for (const { line, written, because } of sheet.refused) {
    aside.put({
      state: 'refused',
      table: 'count',
      column: '',
      written,
      because: because.id,
      values: because.values as { [name: string]: string | number },
      line,
    })
  }
  const rowOfLine = new Map<number, number>()
  if (aside.entries.length > 0) for (let row = 0; row < sheet.rows; row++) rowOfLine.set(lineOf(row), row)
  for (const { line, state: became } of aside.entries) {
    const row = rowOfLine.get(line)
    if (row !== undefined) state[row] = Math.max(state[row] ?? 0, became === 'refused' ? 2 : 1)
  }
  let waiting = 0
  let refused = sheet.refused.length
  for (const became of state) {
    if (became === 1) waiting++
    else if (became === 2) refused++
  }
  const read = sheet.rows + sheet.refused.length
  const notes: Saying[] = [
    ...sheet.notes,
    ...count.differing.map((header) => saying('exchange/note/differs-within-watch', { header })),
    ...(columns.unmapped.length === 0
      ? []
      : [saying('exchange/note/columns-left-out', { headers: columns.unmapped.join(', ') })]),
  ]
  return {
    mapping,
    rows: { read, accepted: read - waiting - refused, waiting, refused },
    tables: { count: count.columns, tally: tallies.columns(), setAside: aside.entries.length === 0 ? [] : aside.columns() },
    counts: first.length,
    tallies: tallies.rows(),
    kinds: tallies.totals(),
    shown: shown.list(),
    rowNotes: aside.notes(mostRowNotes),
    notes,
  }
}
