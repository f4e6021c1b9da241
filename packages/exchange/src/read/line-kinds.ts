import { foldedName, plainName } from '../cell/plain-name.ts'
import { shortened } from '../cell/shortened.ts'
import { longestHeader } from './find-header.ts'

/**
 * Words for a sum or a mean line, in the languages of the header words. A label that begins or ends with one of them,
 * with numbers beside it and a blank somewhere, is a total and never a watch.
 */
const totalWords =
  /^(?:grand total|sub-?total|total|totals|sum|sums|summe|gesamt|insgesamt|zwischensumme|summa|totalt|delsumma|i alt|suma|total general|somme|sous-total|mean|average|mittelwert|durchschnitt|medel|medelvarde|middel|gennemsnit|media|promedio|moyenne)$/u

/** True where the label of a line says that the line sums up others. */
export function isTotalLabel(label: string): boolean {
  const plain = foldedName(label)
    .replace(/[:.=]+$/u, '')
    .trim()
  if (totalWords.test(plain)) return true
  const words = plain.split(' ')
  if (words.length < 2) return false
  return totalWords.test(words.at(-1) ?? '') || totalWords.test(words[0] ?? '') || totalWords.test(words.slice(-2).join(' '))
}

/** True for a line of means: it is left out like a total, but does not sum to anything. */
export function isMeanLabel(label: string): boolean {
  return /\b(?:mean|average|mittelwert|durchschnitt|medel|medelvarde|middel|gennemsnit|media|promedio|moyenne)\b/u.test(
    foldedName(label),
  )
}

/**
 * True where a line under a label of a total holds nothing but numbers, and not all of them: a farm called "Mean Meadow"
 * has a date, a plot or a time beside its numbers.
 */
export function holdsOnlyNumbers(cells: readonly string[], label: number): boolean {
  const others = cells.filter((cell, k) => k !== label && cell.trim() !== '')
  return others.every((cell) => /^\s*-?\d+(?:[.,]\d+)?\s*$/u.test(cell))
}

/** True for a total that sums up the whole table and not the rows since the total above it. */
export function isGrandTotal(label: string): boolean {
  return /grand|general|insgesamt|overall/u.test(foldedName(label))
}

/** The names of a header that stands once more in the middle, at their places; null where the line is no header. */
export function repeatedHeader(cells: readonly string[], known: ReadonlyMap<string, number>): readonly string[] | null {
  const names = cells.map((cell) => foldedName(shortened(plainName(cell), longestHeader)))
  const filled = names.filter((name) => name !== '')
  const found = filled.filter((name) => known.has(name)).length
  if (found < 2 || found < filled.length * 0.6) return null
  return filled.some((name) => /^[\d<>+-]/u.test(name)) ? null : names
}
