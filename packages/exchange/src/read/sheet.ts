import type { TextColumn } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'
import type { Encoding, LineEnds } from './decode-bytes.ts'
import type { Delimiter } from './split-cells.ts'

/** A line that is no row of the table, kept as it was written: title, header (once or again), total, foot note. */
export interface AsideLine {
  readonly line: number
  readonly what: 'title' | 'header' | 'total' | 'note'
  readonly cells: readonly string[]
}

/** A line that should be a row and is not: kept as it was written, with the reason. */
export interface RefusedLine {
  readonly line: number
  readonly written: string
  readonly because: Saying
}

/** A table of texts, as written: one text column a header, dictionary coded; empty cells are -1. */
export interface Sheet {
  readonly bytes: number
  /** SHA-256 of the bytes. */
  readonly fileHash: string
  readonly encoding: Encoding
  readonly delimiter: Delimiter
  readonly lineEnds: LineEnds
  /** Plain and unique: a second `count` is `count (2)`, a header of two lines is `upper / lower`. */
  readonly headers: readonly string[]
  readonly headerLines: readonly number[]
  readonly columns: readonly TextColumn[]
  /** Line of the file on which each row begins, from 1. */
  readonly lines: Int32Array
  readonly rows: number
  readonly blankLines: number
  readonly asides: readonly AsideLine[]
  readonly refused: readonly RefusedLine[]
  readonly notes: readonly Saying[]
}

/** What a person may say about a file where the reading should not be left to detection. */
export interface FileFacts {
  readonly encoding?: Encoding | undefined
  readonly delimiter?: Delimiter | undefined
  /** Line numbers of the header, one or two. */
  readonly header?: readonly number[] | undefined
}
