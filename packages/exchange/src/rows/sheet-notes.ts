import { type Saying, saying } from '@thrum/model/ground'
import { dateEvidence } from '../cell/date-order.ts'
import { foldedName, plainName } from '../cell/plain-name.ts'
import { valueOfReading } from '../cell/reading.ts'
import { shortened } from '../cell/shortened.ts'
import type { Mapping } from '../mapping/shape.ts'
import { limits } from '../read/limits.ts'
import type { Sheet } from '../read/sheet.ts'
import type { NumberHabits } from './cell-source.ts'
import type { Watches } from './count-columns.ts'
import type { MappedColumns } from './mapped-columns.ts'
import type { TextSource } from './text-cells.ts'
import type { Effort, WatchColumn } from './watch-cells.ts'

/** Lines of a list that are named; of longer lists the number is said. */
const mostNamed = 20
/** Characters of a title or a foot note that are shown. */
const shownOfNote = 500

const linesText = (lines: readonly number[]): string =>
  lines.length <= mostNamed ? lines.join(', ') : `${lines.slice(0, mostNamed).join(', ')} …`

/** A row as it was written, cells parted by tabs. */
export function rowText(sheet: Sheet, row: number): string {
  return sheet.columns
    .map(({ codes, dictionary }) => dictionary[codes[row] ?? -1] ?? '')
    .join('\t')
    .slice(0, limits.keptOfLine)
}

/** Titles, totals and foot notes of the file, kept as what they say. */
export function keptNotes(sheet: Sheet): Saying[] {
  const kept = sheet.asides.filter(({ what }) => what === 'title' || what === 'note')
  const notes = kept.slice(0, mostNamed).map(({ line, cells }) => {
    const text = shortened(plainName(cells.filter((cell) => cell.trim() !== '').join(' ')), shownOfNote)
    return saying('exchange/note/kept-line', { line, text })
  })
  return kept.length <= mostNamed
    ? notes
    : [...notes, saying('exchange/note/more-kept-lines', { lines: kept.length - mostNamed })]
}

/** Watches that a person should know of: nothing counted, no flowers, no field, several on one day. */
export function watchNotes(
  { first, lineOf }: Watches,
  numbers: readonly WatchColumn[],
  texts: readonly TextSource[],
  counted: (row: number) => boolean,
  effort: Effort | null,
  wide: boolean,
): Saying[] {
  const notes: Saying[] = []
  const tell = (id: string, is: (row: number) => boolean): void => {
    const lines: number[] = []
    let watches = 0
    for (const row of first) {
      if (!is(row)) continue
      watches++
      if (lines.length <= mostNamed) lines.push(lineOf(row))
    }
    if (watches > 0) notes.push(saying(id, { watches, lines: linesText(lines) }))
  }
  tell('exchange/note/nothing-counted', (row) => !counted(row))
  if (effort !== null) tell('exchange/note/minutes-differ', effort.differs)
  const flowers = numbers.find(({ column }) => column === 'flowers')?.source
  if (flowers !== undefined) tell('exchange/note/no-flowers', (row) => valueOfReading(flowers.at(row)) === 0)
  const field = texts.find(({ column }) => column === 'field')
  if (field !== undefined) tell('exchange/note/no-field', (row) => field.codeAt(row) < 0)
  const date = numbers.find(({ column }) => column === 'date')?.source
  const named =
    texts.some(({ column }) => column === 'visit' || column === 'key') || numbers.some(({ column }) => column === 'start')
  if (wide && !named && field !== undefined && date !== undefined) {
    const apart = texts.filter(({ column }) => column === 'plot' || column === 'observer' || column === 'position')
    const seen = new Set<string>()
    tell('exchange/note/several-watches', (row) => {
      const key = `${[field, ...apart].map((source) => source.codeAt(row)).join('/')}/${valueOfReading(date.at(row))}`
      if (seen.has(key)) return true
      seen.add(key)
      return false
    })
  }
  return notes
}

/** How columns are written: decimal commas, both marks in one column, years of two digits. */
export function columnNotes(columns: MappedColumns, mapping: Mapping, { commas, mixed }: NumberHabits): Saying[] {
  const date = columns.one('date')
  const shortYears = date === undefined ? 0 : dateEvidence(date.cells.dictionary, mapping.file?.year ?? null).shortYears
  return [
    ...(commas.length > 0 ? [saying('exchange/note/decimal-comma', { headers: commas.join(', ') })] : []),
    ...(mixed.length > 0 ? [saying('exchange/note/both-decimals', { headers: mixed.join(', ') })] : []),
    ...(shortYears > 0 && date !== undefined ? [saying('exchange/note/short-years', { header: date.header })] : []),
  ]
}

/** Names that differ only in capitals or accents: one name with a slip, or two names. They are kept apart. */
export function namesAlike(texts: readonly TextSource[]): Saying[] {
  return texts
    .filter(({ column }) => column !== 'note' && column !== 'key')
    .flatMap(({ header, words }) => {
      const alike = [...Map.groupBy(words, foldedName).values()].filter((names) => names.length > 1)
      return alike.slice(0, mostNamed).map((names) => saying('exchange/note/names-alike', { header, names: names.join(', ') }))
    })
}
