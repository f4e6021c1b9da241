import type { NamedColumn } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'
import type { Mapping } from '../mapping/shape.ts'

/** A cell that was read as something other than its own digits: shown, never silent. */
export interface ShownReading {
  readonly column: string
  readonly written: string
  readonly value: number
  /** The value as a person reads it: a date as a date. */
  readonly printed: string
  /** Saying id of the reason. */
  readonly because: string
  readonly cells: number
}

/** A row that a person looks at before accepting: where it stands, and what became of it. */
export interface RowNote {
  readonly line: number
  readonly state: 'waiting' | 'refused'
  readonly column: string
  readonly written: string
  readonly because: Saying
  readonly proposed: string | null
}

/** Cells of one kind, by how they may be used. */
export interface KindTotal {
  readonly kind: string
  readonly total: number
  /** Cells as written, usable with a mark, waiting for an answer, without a number. */
  readonly clean: number
  readonly marked: number
  readonly waiting: number
  readonly missing: number
}

/** What a sheet becomes under a mapping: nothing is stored yet. */
export interface CountsRead {
  /** SHA-256 of the file. */
  readonly fileHash: string
  readonly mapping: Mapping
  /** accepted + waiting + refused = read */
  readonly rows: { readonly read: number; readonly accepted: number; readonly waiting: number; readonly refused: number }
  /** Columns of the tables that the facts will bring; each table's columns have one length. */
  readonly tables: {
    readonly count: readonly NamedColumn[]
    readonly tally: readonly NamedColumn[]
    readonly setAside: readonly NamedColumn[]
  }
  readonly counts: number
  readonly tallies: number
  readonly kinds: readonly KindTotal[]
  readonly shown: readonly ShownReading[]
  /** What waits and what was refused, in the order of the file. */
  readonly rowNotes: readonly RowNote[]
  readonly notes: readonly Saying[]
}
