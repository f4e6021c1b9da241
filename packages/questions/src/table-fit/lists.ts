import { ThrumError } from '@thrum/model/ground'
import { columnNamed, type FitColumn, type FitTable, requireColumn } from './table.ts'

/** Columns that act together; mostly one. */
export type Together = readonly FitColumn[]

/** More columns than this do not act together in any table of counts. Ours. */
const mostTogether = 4

/** Parts of a text between a sign, joined again where a name holds the sign: the longest name that there is, from the left. */
function partsOf(text: string, between: string, isName: (part: string) => boolean): readonly string[] {
  const pieces = text.split(between)
  const parts: string[] = []
  for (let k = 0; k < pieces.length; ) {
    let length = 1
    for (let longer = pieces.length - k; longer > 1 && length === 1; longer--)
      if (
        isName(
          pieces
            .slice(k, k + longer)
            .join(between)
            .trim(),
        )
      )
        length = longer
    parts.push(
      pieces
        .slice(k, k + length)
        .join(between)
        .trim(),
    )
    k += length
  }
  return parts
}

/** Columns joined by "and"; a column whose own name holds it wins. */
function readTogether(table: FitTable, option: string, text: string): Together {
  const isName = (part: string): boolean => columnNamed(table, part) !== null
  if (isName(text)) return [requireColumn(table, option, text)]
  const columns = partsOf(text, ' and ', isName).map((part) => requireColumn(table, option, part))
  if (new Set(columns).size !== columns.length) throw new ThrumError('questions/fit/named-twice', { option, found: text })
  if (columns.length > mostTogether)
    throw new ThrumError('questions/fit/too-many-together', { option, found: text, most: mostTogether })
  return columns
}

export const isSame = (one: Together, other: Together): boolean =>
  one.length === other.length && one.every((column) => other.includes(column))

/** A name as it is typed: columns that act together joined by "and". */
export const typedTogether = (columns: Together): string => columns.map(({ name }) => name).join(' and ')

/**
 * A list of columns parted by commas, some of them joined by "and".
 *
 * @returns in the order given; none where nothing was given
 * @throws ThrumError questions/fit/no-such-column, named-twice, too-many-together
 */
export function readList(table: FitTable, option: string, text: string | undefined): readonly Together[] {
  if (text === undefined || text.trim() === '') return []
  const isEntry = (part: string): boolean =>
    columnNamed(table, part) !== null ||
    partsOf(part, ' and ', (own) => columnNamed(table, own) !== null).every((own) => columnNamed(table, own) !== null)
  const entries = partsOf(text, ',', isEntry)
    .filter((part) => part !== '')
    .map((part) => readTogether(table, option, part))
  entries.forEach((entry, k) => {
    if (entries.slice(0, k).some((earlier) => isSame(earlier, entry)))
      throw new ThrumError('questions/fit/named-twice', { option, found: typedTogether(entry) })
  })
  return entries
}

/** A list of single columns. @throws ThrumError as `readList`, and questions/fit/one-column where some are joined */
export function readColumns(table: FitTable, option: string, text: string | undefined): readonly FitColumn[] {
  return readList(table, option, text).map((entry) => {
    const [column, ...more] = entry
    if (column === undefined || more.length > 0)
      throw new ThrumError('questions/fit/one-column', { option, found: typedTogether(entry) })
    return column
  })
}
