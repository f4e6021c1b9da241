import { readFileSync } from 'node:fs'

/** A table of `reference/<name>.csv`: one record of numbers per line. Inf and -Inf are read as such. */
export function referenceTable(name: string): readonly Readonly<Record<string, number>>[] {
  const [header = '', ...lines] = readFileSync(new URL(`./reference/${name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
  const names = header.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    return Object.fromEntries(names.map((column, k) => [column, numberOf(cells[k] ?? '')]))
  })
}

/** Named lines of numbers of `reference/<name>.txt`. */
export function referenceValues(name: string): (line: string) => readonly number[] {
  const lines = readFileSync(new URL(`./reference/${name}.txt`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
  const values = new Map(
    lines.map((line) => {
      const [key = '', ...numbers] = line.trim().split(/\s+/)
      return [key, numbers.map(numberOf)] as const
    }),
  )
  return (line) => {
    const found = values.get(line)
    if (found === undefined) throw new Error(`no line ${line} in ${name}`)
    return found
  }
}

function numberOf(cell: string): number {
  const text = cell.trim()
  if (text === 'Inf') return Number.POSITIVE_INFINITY
  if (text === '-Inf') return Number.NEGATIVE_INFINITY
  const value = Number(text)
  if (text === '' || Number.isNaN(value)) throw new Error(`"${cell}" is not a number`)
  return value
}

/** A cell that must be there. */
export function cell(row: Readonly<Record<string, number>>, name: string): number {
  const value = row[name]
  if (value === undefined) throw new Error(`no column ${name}`)
  return value
}
