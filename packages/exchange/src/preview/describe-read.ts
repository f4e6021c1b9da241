import { isoDate, mark, markAt, type NamedColumn, type NumberColumn, numberAt, type TextColumn, textAt } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { plainName } from '../cell/plain-name.ts'
import { shortened, shownOfCell } from '../cell/shortened.ts'
import type { CountsRead, RowNote } from '../rows/counts-read.ts'

/** Sentences of one sort that are shown; of more, the number is said. */
const mostOfASort = 20
/** Rows shown as they were understood. */
const mostExamples = 3

function textOf(columns: readonly NamedColumn[], name: string): TextColumn | null {
  const column = columns.find((one) => one.name === name)?.column
  return column?.type === 'text' ? column : null
}

function numbersOf(columns: readonly NamedColumn[], name: string): NumberColumn | null {
  const column = columns.find((one) => one.name === name)?.column
  return column?.type === 'number' ? column : null
}

/** Two decimals at most, no trailing zeros. */
const short = (value: number): string => String(Math.round(value * 100) / 100)

function watches({ tables, counts }: CountsRead): Saying[] {
  const minutes = numbersOf(tables.count, 'minutes')
  const field = textOf(tables.count, 'field')
  const date = numbersOf(tables.count, 'date')
  const days = new Set((date?.values ?? new Float64Array()).filter((day) => !Number.isNaN(day)))
  const total = (minutes?.values ?? new Float64Array()).reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : value), 0)
  const fields = new Set((field?.codes ?? new Int32Array()).filter((code) => code >= 0))
  const ordered = [...days].sort((a, b) => a - b)
  const first = ordered[0] === undefined ? '' : isoDate(ordered[0])
  const last = ordered.at(-1)
  const values = {
    counts,
    minutes: short(total),
    fields: fields.size,
    days: days.size,
    first,
    last: last === undefined ? '' : isoDate(last),
  }
  return [saying('exchange/preview/watches', values), ...(minutes === null ? [saying('exchange/preview/no-effort')] : [])]
}

/** The first watches as they were understood: where, when, how long, whom. */
function examples({ tables, counts }: CountsRead): Saying[] {
  const line = numbersOf(tables.count, 'line')
  const field = textOf(tables.count, 'field')
  const date = numbersOf(tables.count, 'date')
  const minutes = numbersOf(tables.count, 'minutes')
  const kind = textOf(tables.tally, 'kind')
  const of = numbersOf(tables.tally, 'count')
  const number = numbersOf(tables.tally, 'number')
  return Array.from({ length: Math.min(mostExamples, counts) }, (_, row) => {
    const day = date === null ? null : numberAt(date, row)
    const length = minutes === null ? null : numberAt(minutes, row)
    const cells = [
      field === null ? null : plainName(textAt(field, row) ?? ''),
      day === null ? null : isoDate(day),
      length === null ? null : `${short(length)} min`,
    ].filter((cell) => cell !== null && cell !== '')
    for (let tally = 0; of !== null && number !== null && tally < of.values.length && cells.length < 12; tally++) {
      // Tallies stand in the order of their watches.
      if ((of.values[tally] ?? 0) > row) break
      if (of.values[tally] !== row) continue
      const value = numberAt(number, tally)
      const shown = value === null ? (markAt(number, tally) === mark.waiting ? '?' : '–') : String(value)
      cells.push(`${kind === null ? '' : (textAt(kind, tally) ?? '')} ${shown}`)
    }
    return saying('exchange/preview/row', { line: line === null ? row + 1 : (numberAt(line, row) ?? 0), cells: cells.join(', ') })
  })
}

function rowNote({ line, state, column, written, because }: RowNote): Saying {
  if (state === 'refused') return saying('exchange/preview/row-refused', { line, because })
  if (column === '') return saying('exchange/preview/row-waits', { line, because })
  return saying('exchange/preview/cell-waits', { line, column, written: shortened(plainName(written), shownOfCell), because })
}

/** What a person sees before accepting a sheet: sentences, the most important first. */
export function describeRead(read: CountsRead): readonly Saying[] {
  const { rows, kinds, rowNotes, notes, shown } = read
  const told = shown.slice(0, mostOfASort).map(({ column, written, printed, because, cells }) =>
    saying('exchange/preview/shown', {
      column,
      written: shortened(plainName(written), shownOfCell),
      printed,
      because: saying(because, { proposed: '' }),
      cells,
    }),
  )
  const waits = rowNotes.slice(0, mostOfASort).map(rowNote)
  const moreWaiting = rows.waiting + rows.refused - new Set(rowNotes.slice(0, mostOfASort).map(({ line }) => line)).size
  return [
    saying('exchange/preview/rows', rows),
    ...watches(read),
    ...kinds.map((kind) => saying('exchange/preview/kind', { ...kind })),
    ...examples(read),
    ...waits,
    ...(moreWaiting > 0 ? [saying('exchange/preview/more-waiting', { more: moreWaiting })] : []),
    ...told,
    ...(shown.length > mostOfASort ? [saying('exchange/preview/more-shown', { more: shown.length - mostOfASort })] : []),
    ...notes,
  ]
}
