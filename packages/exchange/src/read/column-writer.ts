import type { TextColumn } from '@thrum/model'

/** Fills one dictionary-coded column, row by row. */
export interface ColumnWriter {
  /** Appends a cell as written; blank cells become -1. */
  put(cell: string): void
  /** Appends blank cells until the column has that many rows. */
  fillTo(rows: number): void
  finish(): TextColumn
}

export function createColumnWriter(): ColumnWriter {
  let codes = new Int32Array(1024)
  let rows = 0
  const dictionary: string[] = []
  const codeOf = new Map<string, number>()
  const append = (code: number): void => {
    if (rows === codes.length) {
      const wider = new Int32Array(codes.length * 2)
      wider.set(codes)
      codes = wider
    }
    codes[rows++] = code
  }
  return {
    put: (cell) => {
      const known = codeOf.get(cell)
      if (known !== undefined) append(known)
      else if (cell.trim() === '') {
        codeOf.set(cell, -1)
        append(-1)
      } else {
        codeOf.set(cell, dictionary.length)
        append(dictionary.push(cell) - 1)
      }
    },
    fillTo: (wanted) => {
      while (rows < wanted) append(-1)
    },
    finish: () => ({ type: 'text', codes: codes.slice(0, rows), dictionary }),
  }
}
