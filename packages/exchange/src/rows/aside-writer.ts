import { type NamedColumn, numberColumn, textColumn } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { shortened, shownOfCell } from '../cell/shortened.ts'
import type { RowNote } from './counts-read.ts'

/** A cell that waits, or a row that waits or was refused as a whole. */
export interface AsideEntry {
  readonly state: 'waiting' | 'refused'
  /** The table and column a person's answer will change; empty for whole rows. */
  readonly table: 'count' | 'tally'
  readonly column: string
  readonly written: string
  readonly because: string
  readonly values?: { readonly [name: string]: string | number }
  /** Row of the table; absent for whole rows, which are in no table. */
  readonly row?: number
  readonly line: number
  readonly header?: string
  readonly proposed?: string
  /** What the other columns of the same kind sum to, where a kind is the sum of several. */
  readonly others?: number
}

/** Gathers what was set aside, as rows of the table `setAside` and as notes a person reads. */
export interface AsideWriter {
  put(entry: AsideEntry): void
  readonly entries: readonly AsideEntry[]
  columns(): readonly NamedColumn[]
  notes(most: number): readonly RowNote[]
}

export function createAsideWriter(): AsideWriter {
  const entries: AsideEntry[] = []
  const byLine = (): AsideEntry[] => [...entries].sort((a, b) => a.line - b.line)
  return {
    put: (entry) => {
      entries.push(entry)
    },
    entries,
    columns: () => {
      const sorted = byLine()
      const text = (name: string, of: (entry: AsideEntry) => string | undefined): NamedColumn => ({
        name,
        column: textColumn(sorted.map((entry) => of(entry) ?? null)),
      })
      const number = (name: string, unit: string, of: (entry: AsideEntry) => number | undefined): NamedColumn => ({
        name,
        unit,
        column: numberColumn(sorted.map((entry) => of(entry) ?? null)),
      })
      const always = [
        text('state', (entry) => entry.state),
        text('table', (entry) => entry.table),
        text('column', (entry) => entry.column),
        text('written', (entry) => entry.written),
        text('because', (entry) => entry.because),
        number('row', '1', (entry) => entry.row),
        number('line', '1', (entry) => entry.line),
        text('header', (entry) => entry.header),
        text('proposed', (entry) => entry.proposed),
      ]
      return sorted.some((entry) => entry.others !== undefined)
        ? [...always, number('others', '{individuals}', (entry) => entry.others)]
        : always
    },
    notes: (most) =>
      byLine()
        .slice(0, most)
        .map((entry) => ({
          line: entry.line,
          state: entry.state,
          column: entry.header ?? entry.column,
          written: entry.written,
          because: saying(entry.because, {
            line: entry.line,
            column: entry.header ?? entry.column,
            written: shortened(entry.written.trim(), shownOfCell),
            proposed: entry.proposed ?? '',
            ...entry.values,
          }),
          proposed: entry.proposed ?? null,
        })),
  }
}
