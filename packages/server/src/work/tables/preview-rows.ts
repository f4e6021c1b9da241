import { type CountsRead, cellTold, type Mapping, plainName, type Sheet } from '@thrum/exchange'
import { type Column, isoDate, mark, markAt, type NamedColumn, numberAt, textAt } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'
import { shortened, shortText } from './short-text.ts'

/** Rows that are shown with what they become. */
const mostRows = 25

interface Become {
  readonly column: string
  readonly value: string | Saying
  readonly isTally: boolean
}

/** Columns of a row that tell nothing of what a person wrote. */
const ofTheTable: ReadonlySet<string> = new Set(['line', 'zeros', 'count'])

const two = (number: number): string => String(number).padStart(2, '0')

/** A cell as a person reads it; null where there is nothing to be said of it. */
function cellText(name: string, column: Column, row: number): string | Saying | null {
  if (column.type === 'text') {
    const text = textAt(column, row)
    return text === null ? null : shortText(plainName(text))
  }
  const value = numberAt(column, row)
  const code = markAt(column, row)
  if (value === null && (code === mark.notLookedFor || code === mark.asWritten)) return null
  if (value !== null && name === 'date') return isoDate(value)
  if (value !== null && (name === 'start' || name === 'end'))
    return `${two(Math.floor(value / 60))}:${two(Math.floor(value % 60))}`
  return cellTold({ value, mark: code })
}

const columnNamed = (columns: readonly NamedColumn[], name: string): Column | undefined =>
  columns.find((own) => own.name === name)?.column

/** Rows of a table by the line they come from, of the lines that are shown. */
function rowsByLine(columns: readonly NamedColumn[], lines: ReadonlySet<number>): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>()
  const line = columnNamed(columns, 'line')
  if (line?.type !== 'number') return found
  for (let row = 0; row < line.values.length; row++) {
    const own = line.values[row] as number
    if (lines.has(own)) found.set(own, [...(found.get(own) ?? []), row])
  }
  return found
}

/** Tallies by the row of their count, of the counts that are shown. */
function talliesByCount(tally: readonly NamedColumn[], counts: ReadonlySet<number>): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>()
  const of = columnNamed(tally, 'count')
  if (of?.type !== 'number') return found
  for (let row = 0; row < of.values.length; row++) {
    const count = of.values[row] as number
    if (counts.has(count)) found.set(count, [...(found.get(count) ?? []), row])
  }
  return found
}

function tallyBecomes(tally: readonly NamedColumn[], row: number): Become {
  const [kind, number] = [columnNamed(tally, 'kind'), columnNamed(tally, 'number')]
  return {
    column: kind?.type === 'text' ? shortText(plainName(textAt(kind, row) ?? '')) : '',
    value: number === undefined ? '–' : (cellText('number', number, row) ?? cellTold({ value: null, mark: mark.notLookedFor })),
    isTally: true,
  }
}

/** What the first rows of a table become: their cells as written, why they wait or were refused, and what enters the project. */
export function previewRows(sheet: Sheet, mapping: Mapping, read: CountsRead | null): readonly unknown[] {
  const refused = sheet.refused.map(({ line }) => line)
  const rows = Array.from({ length: Math.min(mostRows, sheet.rows) }, (_, row) => ({ row, line: sheet.lines[row] ?? 0 }))
  const last = rows.at(-1)?.line ?? Number.POSITIVE_INFINITY
  const all = [...rows, ...refused.filter((line) => line <= last).map((line) => ({ row: -1, line }))]
    .sort((a, b) => a.line - b.line)
    .slice(0, mostRows)
  const lines = new Set(all.map(({ line }) => line))
  const { count, tally } = read?.tables ?? { count: [], tally: [] }
  const counts = rowsByLine(count, lines)
  const tallies = rowsByLine(tally, lines)
  const ofCounts = talliesByCount(tally, new Set([...counts.values()].flat()))
  const roleOf = new Map(mapping.columns.map(({ header, as }) => [header, as]))
  const because = (line: number): readonly Saying[] => [
    ...(read?.rowNotes ?? []).filter((note) => note.line === line).map((note) => shortened(note.because)),
    ...(read === null ? sheet.refused.filter((own) => own.line === line).map((own) => shortened(own.because)) : []),
  ]
  const stateOf = (line: number): 'accepted' | 'waiting' | 'refused' => {
    const notes = (read?.rowNotes ?? []).filter((note) => note.line === line)
    if (refused.includes(line) || notes.some(({ state }) => state === 'refused')) return 'refused'
    return notes.length > 0 || read === null ? 'waiting' : 'accepted'
  }
  return all.map(({ row, line }) => {
    const own = counts.get(line) ?? []
    const ownTallies = own.length > 0 ? own.flatMap((at) => ofCounts.get(at) ?? []) : (tallies.get(line) ?? [])
    return {
      line,
      state: stateOf(line),
      because: because(line),
      cells: sheet.headers.map((header, at) => {
        const column = sheet.columns[at]
        const written = row < 0 || column === undefined ? '' : (textAt(column, row) ?? '')
        return { header, written: shortText(written), as: roleOf.get(header) ?? 'ignore' }
      }),
      becomes: [
        ...own.slice(0, 1).flatMap((at) =>
          count.flatMap(({ name, column }): readonly Become[] => {
            const value = ofTheTable.has(name) ? null : cellText(name, column, at)
            return value === null ? [] : [{ column: name, value, isTally: false }]
          }),
        ),
        ...ownTallies.map((at) => tallyBecomes(tally, at)),
      ],
    }
  })
}
