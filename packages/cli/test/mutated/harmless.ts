import { columnsOf } from '@thrum/report'

/** Control codes but the line's end, marks of direction, line and paragraph separators, byte order marks, halves of pairs. */
const harmful = /(?!\n)\p{Cc}|[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029\ufeff]|\p{Cs}/u

/** A table may be wider than the page of 80 columns where its names are; beyond this a line is no line [columns]. */
const widestLine = 120
/** Of a cell, however long it is, no more than this is printed in a row [characters]. */
const longestRun = 1_200

const named = (sign: string): string => `U+${(sign.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`

/** What a text could do to a terminal or to a reader; null where it is harmless. */
export function harmOf(text: string, where: string): string | null {
  const found = harmful.exec(text)
  if (found === null) return null
  return `${where} holds ${named(found[0])} after ${JSON.stringify(text.slice(Math.max(0, found.index - 40), found.index))}`
}

/** The same, and what makes printed text unreadable: lines without end, and a cell printed whole that nobody can read. */
export function harmOfPrinted(text: string, where: string): string | null {
  const harm = harmOf(text, where)
  if (harm !== null) return harm
  const wide = text.split('\n').find((line) => columnsOf(line) > widestLine)
  if (wide !== undefined) return `${where} has a line of ${columnsOf(wide)} columns: ${wide.slice(0, 100)}`
  const run = text
    .replace(/\n */gu, '')
    .split(/\s/u)
    .find((word) => word.length > longestRun)
  if (run !== undefined) return `${where} prints ${run.length} characters in a row: ${run.slice(0, 60)}`
  // A failure of the program has its own exit, and no person can use where in the source it happened.
  const stack = /^\s+at .+:\d+:\d+\)?$/mu.exec(text)
  return stack === null ? null : `${where} prints a stack: ${stack[0].trim()}`
}
