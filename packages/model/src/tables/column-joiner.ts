import type { Column, NumberColumn, TextColumn } from '../columns/column.ts'
import { mark } from '../columns/mark.ts'

/** Puts pieces of a column, in the order of their rows, where they belong in a column of the whole table. */
export interface ColumnJoiner {
  /** Takes a piece that begins at a row of the table. */
  take(at: number, piece: Column): void
  /** The whole column; rows that no piece covered are "not looked for". */
  finish(): Column
}

export function joinNumbers(rows: number): { take(at: number, piece: NumberColumn): void; finish(): NumberColumn } {
  const values = new Float64Array(rows)
  let marks: Uint8Array | null = null
  /** Where pieces without marks lie, for as long as the column has none. */
  const plain: { readonly at: number; readonly end: number }[] = []
  let covered = 0
  /** Numbers up to here are set; pieces come in the order of their rows. */
  let set = 0
  const marked = (): Uint8Array => {
    if (marks !== null) return marks
    marks = new Uint8Array(rows).fill(mark.notLookedFor)
    for (const { at, end } of plain) marks.fill(mark.asWritten, at, end)
    return marks
  }
  return {
    take: (at, piece) => {
      const end = at + piece.values.length
      values.fill(Number.NaN, set, at)
      values.set(piece.values, at)
      set = end
      covered += piece.values.length
      if (piece.marks !== null) marked().set(piece.marks, at)
      else if (marks === null) plain.push({ at, end })
      else marks.fill(mark.asWritten, at, end)
    },
    finish: () => {
      values.fill(Number.NaN, set)
      return { type: 'number', values, marks: covered < rows ? marked() : marks }
    },
  }
}

export function joinTexts(rows: number): { take(at: number, piece: TextColumn): void; finish(): TextColumn } {
  const codes = new Int32Array(rows)
  const dictionary: string[] = []
  const codeOf = new Map<string, number>()
  let set = 0
  return {
    take: (at, piece) => {
      const newCode = Int32Array.from(piece.dictionary, (word) => {
        const code = codeOf.get(word) ?? dictionary.push(word) - 1
        codeOf.set(word, code)
        return code
      })
      codes.fill(-1, set, at)
      const from = piece.codes
      for (let row = 0; row < from.length; row++) {
        const code = from[row] as number
        codes[at + row] = code < 0 ? -1 : (newCode[code] as number)
      }
      set = at + from.length
    },
    finish: () => {
      codes.fill(-1, set)
      return { type: 'text', codes, dictionary }
    },
  }
}

/** Texts of numbers, where one file wrote numbers and another texts under one name. */
function asText(column: Column): TextColumn {
  if (column.type === 'text') return column
  const dictionary: string[] = []
  const codeOf = new Map<number, number>()
  const codes = Int32Array.from(column.values, (value) => {
    if (Number.isNaN(value)) return -1
    const code = codeOf.get(value) ?? dictionary.push(String(value)) - 1
    codeOf.set(value, code)
    return code
  })
  return { type: 'text', codes, dictionary }
}

/** Joins pieces of one declared type; a piece of another type is left out, not misread. */
export function joinDeclared(rows: number, type: Column['type']): ColumnJoiner {
  if (type === 'number') {
    const joiner = joinNumbers(rows)
    return { ...joiner, take: (at, piece) => (piece.type === 'number' ? joiner.take(at, piece) : undefined) }
  }
  const joiner = joinTexts(rows)
  return { ...joiner, take: (at, piece) => (piece.type === 'text' ? joiner.take(at, piece) : undefined) }
}

/** Joins pieces that no declaration names: numbers as long as all are, else texts. */
export function joinFactor(rows: number): ColumnJoiner {
  let numbers: ReturnType<typeof joinNumbers> | null = null
  let texts: ReturnType<typeof joinTexts> | null = null
  return {
    take: (at, piece) => {
      if (texts === null && piece.type === 'number') {
        numbers ??= joinNumbers(rows)
        numbers.take(at, piece)
        return
      }
      if (texts === null) {
        texts = joinTexts(rows)
        if (numbers !== null) {
          const { values } = numbers.finish()
          texts.take(0, asText({ type: 'number', values: values.subarray(0, at), marks: null }))
        }
      }
      texts.take(at, asText(piece))
    },
    finish: () => (texts ?? numbers ?? joinTexts(rows)).finish(),
  }
}
