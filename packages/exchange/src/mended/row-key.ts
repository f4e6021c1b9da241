import type { Mapping } from '../mapping/shape.ts'
import type { MendedCell } from './cell.ts'
import type { HeldRows } from './rows.ts'

/** Columns that may name a watch where the mapping does not say which do, the surest first. */
export const usualKeys: readonly (readonly string[])[] = [
  ['key'],
  ['visit', 'plot'],
  ['visit'],
  ['field', 'plot', 'date', 'start'],
  ['field', 'date', 'start'],
  ['field', 'plot', 'date'],
  ['field', 'plot', 'date', 'observer'],
  ['field', 'date', 'observer'],
  ['field', 'date'],
]

/** The column that a name in the mapping's key means, by role or header; undefined where no column of these is it. */
export function columnOfKey(name: string, mapping: Mapping, columns: ReadonlySet<string>): string | undefined {
  const column = mapping.columns.find(({ header }) => header === name)
  return [name, column?.as, column?.factor].find((own) => own !== undefined && columns.has(own))
}

/** What stands in the columns of a key, as one text; null where nothing stands in any. */
export type KeyText = (row: number) => string | null

export function keyText(cells: (row: number, column: string) => MendedCell, key: readonly string[]): KeyText {
  return (row) => {
    const parts = key.map((column) => {
      const cell = cells(row, column)
      return cell.written?.trim() ?? (cell.value === null ? '' : String(cell.value))
    })
    return parts.every((part) => part === '') ? null : JSON.stringify(parts)
  }
}

/** Rows by key; null where a row has none or shares it, with the first two of them. */
export function indexOf(rows: number, text: KeyText): { readonly index: Map<string, number>; readonly clash: readonly number[] } {
  const index = new Map<string, number>()
  for (let row = 0; row < rows; row++) {
    const key = text(row)
    const known = key === null ? row : index.get(key)
    if (key === null || known !== undefined) return { index, clash: [known ?? row, row] }
    index.set(key, row)
  }
  return { index, clash: [] }
}

/** True where two rows that stand share a key, or one has none. */
export function standingClash(held: HeldRows, key: readonly string[]): boolean {
  const text = keyText(held.said, key)
  const seen = new Set<string>()
  for (let row = 0; row < held.rows; row++) {
    if (held.isWithdrawn(row)) continue
    const own = text(row)
    if (own === null || seen.has(own)) return true
    seen.add(own)
  }
  return false
}
