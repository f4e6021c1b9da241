import { ThrumError } from '@thrum/model/ground'
import type { Mapping } from '../mapping/shape.ts'
import { findForgotten } from './forgotten-row.ts'
import { columnOfKey, indexOf, keyText, standingClash, usualKeys } from './row-key.ts'
import type { FreshRows, HeldRows } from './rows.ts'

/** Which row of the file is which count of the project. */
export interface RowMatches {
  /** Columns by which rows were matched. */
  readonly key: readonly string[]
  /** True where the mapping says so; false where the columns were found to name each row once. */
  readonly declared: boolean
  /** For each row of the file the count held, one that was forgotten among them, or -1 for a new one. */
  readonly heldOf: Int32Array
  /** Counts held that the file has no row for. */
  readonly gone: readonly number[]
}

function match(fresh: FreshRows, held: HeldRows, key: readonly string[], declared: boolean): RowMatches {
  const said = indexAll(held, held.said, key)
  const stands = indexAll(held, held.stands, key)
  const text = keyText(fresh.cell, key)
  const heldOf = new Int32Array(fresh.rows).fill(-1)
  const taken = new Set<number>()
  // What the files said comes first: a cell of the key may have been corrected here and be as it was in the file.
  for (const index of [said, stands]) {
    for (let row = 0; row < fresh.rows; row++) {
      const found = heldOf[row] === -1 ? index.get(text(row) ?? '') : undefined
      if (found === undefined || taken.has(found)) continue
      heldOf[row] = found
      taken.add(found)
    }
  }
  const forgottenAt = findForgotten(fresh, held, key)
  for (let row = 0; row < fresh.rows; row++) {
    if (heldOf[row] === -1) heldOf[row] = forgottenAt(row)
  }
  const named = keyText(held.said, key)
  const gone = Array.from({ length: held.rows }, (_, row) => row).filter(
    (row) => !taken.has(row) && !held.isWithdrawn(row) && named(row) !== null,
  )
  return { key, declared, heldOf, gone }
}

/** Held rows by key. Of rows that share one, those that were withdrawn stand back. */
function indexAll(held: HeldRows, cells: HeldRows['said'], key: readonly string[]): ReadonlyMap<string, number> {
  const text = keyText(cells, key)
  const index = new Map<string, number>()
  for (let row = 0; row < held.rows; row++) {
    const own = text(row)
    const known = own === null ? undefined : index.get(own)
    if (own !== null && (known === undefined || held.isWithdrawn(known))) index.set(own, row)
  }
  return index
}

/** Rows that would be another watch: more than half of those matched differ in where or when. */
function isDoubtful(fresh: FreshRows, held: HeldRows, { heldOf, key }: RowMatches): boolean {
  const told = ['field', 'date'].filter(
    (column) => !key.includes(column) && fresh.columns.has(column) && held.columns.has(column),
  )
  let matched = 0
  let differ = 0
  heldOf.forEach((of, row) => {
    if (of < 0 || held.forgotten(of) !== null) return
    matched += 1
    if (told.some((column) => fresh.cell(row, column).value !== held.said(of, column).value)) differ += 1
  })
  return differ * 2 > matched
}

/** Columns that the mapping's key names. */
function declaredKey(mapping: Mapping, { columns }: FreshRows): readonly string[] | null {
  if (mapping.key === undefined) return null
  return mapping.key.map((name) => {
    const found = columnOfKey(name, mapping, columns)
    if (found === undefined) throw new ThrumError('exchange/mended/key-unknown', { name, columns: [...columns].join(', ') })
    return found
  })
}

/**
 * Matches the rows of a mended file with the counts that its earlier versions brought, by the columns that name a watch:
 * as the mapping says (`key`), or the first usual ones that name every row once on both sides.
 *
 * @throws ThrumError exchange/mended/key-unknown, key-not-unique (with lines), no-key, key-doubtful
 */
export function matchRows(fresh: FreshRows, held: HeldRows, mapping: Mapping): RowMatches {
  const declared = declaredKey(mapping, fresh)
  if (declared !== null) {
    const { clash } = indexOf(fresh.rows, keyText(fresh.cell, declared))
    if (clash.length > 0) {
      throw new ThrumError('exchange/mended/key-not-unique', {
        key: declared.join(', '),
        lines: [...new Set(clash.map((row) => fresh.line(row)))].join(', '),
      })
    }
    const matches = match(fresh, held, declared, true)
    if (isDoubtful(fresh, held, matches)) throw new ThrumError('exchange/mended/key-doubtful', { key: declared.join(', ') })
    return matches
  }
  for (const key of usualKeys) {
    if (!key.every((column) => fresh.columns.has(column) && held.columns.has(column))) continue
    const ofFile = indexOf(fresh.rows, keyText(fresh.cell, key))
    const ofHeld = standingClash(held, key)
    if (ofFile.clash.length > 0 || ofHeld) continue
    const matches = match(fresh, held, key, false)
    if (!isDoubtful(fresh, held, matches)) return matches
  }
  throw new ThrumError('exchange/mended/no-key')
}
