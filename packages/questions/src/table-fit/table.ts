import { ThrumError } from '@thrum/model/ground'

/** A column of a table as it stands. */
export interface FitColumn {
  readonly name: string
  /** One a row, as written; null where nothing is. */
  readonly texts: readonly (string | null)[]
  /** One a row: the number that the text plainly is, else NaN. */
  readonly numbers: ArrayLike<number>
}

/** Any table: nobody has said what it is a table of. */
export interface FitTable {
  readonly columns: readonly FitColumn[]
  /** Line of the file on which each row stands, from 1. */
  readonly lines: ArrayLike<number>
  /** Lines that stand among the rows and are none: titles, totals, notes, headers once more. */
  readonly aside: readonly number[]
  /** Lines that should be rows and cannot be read as such. */
  readonly refused: readonly number[]
}

/** The column of a name: as it is written, else the only one that is the same but for capitals. */
export function columnNamed({ columns }: FitTable, written: string): FitColumn | null {
  const exact = columns.find(({ name }) => name === written)
  if (exact !== undefined) return exact
  const near = columns.filter(({ name }) => name.toLowerCase() === written.toLowerCase())
  return near.length === 1 ? (near[0] ?? null) : null
}

/** @throws ThrumError questions/fit/no-such-column, which lists those there are */
export function requireColumn(table: FitTable, option: string, written: string): FitColumn {
  const found = columnNamed(table, written)
  if (found !== null) return found
  throw new ThrumError('questions/fit/no-such-column', {
    option,
    found: written,
    known: table.columns.map(({ name }) => name).join(', '),
  })
}
