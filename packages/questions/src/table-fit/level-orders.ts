import { ThrumError } from '@thrum/model/ground'
import { columnNamed, type FitColumn, type FitTable } from './table.ts'

/** Orders of levels, each such as `strip=none>sown`: the column, then its levels; the first is what others are held against. */
export function readLevelOrders(table: FitTable, texts: readonly string[]): ReadonlyMap<FitColumn, readonly string[]> {
  const orders = new Map<FitColumn, readonly string[]>()
  for (const text of texts) {
    const at = [...text.matchAll(/=/gu)].map(({ index }) => index)
    const place = at.find((own) => columnNamed(table, text.slice(0, own).trim()) !== null)
    const column = place === undefined ? null : columnNamed(table, text.slice(0, place).trim())
    if (place === undefined || column === null)
      throw new ThrumError('questions/fit/levels', { found: text, known: table.columns.map(({ name }) => name).join(', ') })
    if (orders.has(column)) throw new ThrumError('questions/fit/named-twice', { option: 'levels', found: column.name })
    orders.set(column, orderOf(column, text.slice(place + 1)))
  }
  return orders
}

function orderOf(column: FitColumn, text: string): readonly string[] {
  const written = new Set(column.texts)
  const levels = written.has(text.trim()) ? [text.trim()] : text.split('>').map((level) => level.trim())
  if (new Set(levels).size !== levels.length) throw new ThrumError('questions/fit/named-twice', { option: 'levels', found: text })
  for (const level of levels)
    if (!written.has(level))
      throw new ThrumError('questions/fit/no-such-level', {
        column: column.name,
        found: level,
        known: levelsInOrder(
          [...written].flatMap((own) => own ?? []),
          [],
        ).join(', '),
      })
  return levels
}

const natural = new Intl.Collator('en', { numeric: true })

/** Levels as they are ordered: those that were named first, the others by name, numbers in them by size. */
export function levelsInOrder(written: readonly string[], named: readonly string[]): readonly string[] {
  const others = [...new Set(written)].filter((level) => !named.includes(level))
  return [...named, ...others.sort((a, b) => natural.compare(a, b) || (a < b ? -1 : 1))]
}
