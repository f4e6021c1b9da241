export type CsvCell = string | number | null

/** Cells that a spreadsheet would take for a formula get a leading apostrophe; numbers stay numbers. */
const formula = /^[=+\-@\t\r]/u

function cell(value: CsvCell): string {
  if (value === null || (typeof value === 'number' && !Number.isFinite(value))) return 'NA'
  if (typeof value === 'number') return String(value)
  const text = formula.test(value) ? `'${value}` : value
  return `"${text.replaceAll('"', '""')}"`
}

/** A tidy table as CSV (RFC 4180): UTF-8, comma, point, header; missing is NA. */
export function csv(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [header.map((name) => cell(name)), ...rows.map((row) => row.map(cell))]
    .map((line) => line.join(','))
    .join('\r\n')
    .concat('\r\n')
}

/** A text as it stands in the CSV, as an R string. */
export function rString(text: string): string {
  const written = formula.test(text) ? `'${text}` : text
  return `"${written.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n').replaceAll('\r', '\\r').replaceAll('\0', '')}"`
}

export function rNumber(value: number | null): string {
  return value === null || !Number.isFinite(value) ? 'NA' : String(value)
}

export const rVector = (items: readonly string[]): string => `c(${items.join(', ')})`
