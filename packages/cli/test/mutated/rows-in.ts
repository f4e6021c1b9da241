import type { Mapping } from '@thrum/exchange'

/** Words that begin a line of totals, in any language of the sheets: such lines are no rows. */
const sums = /total|sum|mean|average|mittel|media|medel|moyenne|gesamt|insgesamt|samtliga/iu
const value = /^[<>~≈±]?\s*[-+]?\.?\d/u

/**
 * The rows of a file, counted without its reader; null where the file is not regular enough to be counted by lines and
 * delimiters alone. Regular: UTF-8 without a quote, the header on its first line and nowhere else, every line with as many
 * delimiters as the header and more than one cell filled, no line of totals.
 */
export function rowsIn(bytes: Uint8Array, mapping: Mapping | null): number | null {
  if (mapping?.file !== undefined) return null
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a file with control codes is not regular
  if (/["\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f]/u.test(text) || sums.test(text)) return null
  const lines = text.split(/\r\n|\r|\n/u)
  if (lines.at(-1) === '') lines.pop()
  const delimiter = [',', ';'].find((sign) => lines.every((line) => (line.match(new RegExp(sign, 'gu')) ?? []).length > 2))
  if (delimiter === undefined) return null
  const cells = lines.map((line) => line.split(delimiter).map((cell) => cell.trim()))
  const [header, ...rows] = cells
  if (header === undefined || header.some((cell) => cell === '' || value.test(cell))) return null
  const names = new Set(header.map((cell) => cell.toLowerCase()))
  if (names.size < header.length) return null
  const isRow = (row: readonly string[]): boolean =>
    row.length === header.length &&
    row.filter((cell) => cell !== '').length > 1 &&
    row.every((cell) => cell.length < 30_000) &&
    row.some((cell) => value.test(cell)) &&
    !names.has((row.find((cell) => cell !== '') ?? '').toLowerCase())
  return rows.every(isRow) ? rows.length : null
}
