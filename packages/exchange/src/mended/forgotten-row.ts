import { canonicalJson, sha256Hex } from '@thrum/model/ground'
import type { Mapping } from '../mapping/shape.ts'
import { columnOfKey, indexOf, keyText, standingClash, usualKeys } from './row-key.ts'
import type { FreshRows, HeldRows } from './rows.ts'

/** What recognises a forgotten row in a mended file: columns that name a watch, and a keyed hash of what stood in them. */
export interface ForgottenKey {
  readonly key: string[]
  readonly hash: string
}

/** The hash is keyed with the project, so that two projects can't be compared by it. */
const hashOf = (project: string, key: readonly string[], text: string): string =>
  sha256Hex(canonicalJson(['forgotten row', project, key, text]))

/**
 * The keys of a row that is to be forgotten, the surest first: by the columns that its file's mapping names, then by the usual
 * ones that name each row once.
 */
export function forgottenKeys(held: HeldRows, row: number, mapping: Mapping): readonly ForgottenKey[] {
  const usual = usualKeys.filter((key) => key.every((column) => held.columns.has(column)) && !standingClash(held, key))
  const declared = (mapping.key ?? []).flatMap((name) => columnOfKey(name, mapping, held.columns) ?? [])
  const isWhole = declared.length > 0 && declared.length === mapping.key?.length
  return (isWhole ? [declared, ...usual] : usual).flatMap((key) => {
    const texts = [held.said, held.stands].map((cells) => keyText(cells, key)(row))
    return [...new Set(texts)].flatMap((text) =>
      text === null ? [] : [{ key: [...key], hash: hashOf(held.project, key, text) }],
    )
  })
}

const sameColumns = (a: readonly string[], b: readonly string[]): boolean => a.join('\n') === b.join('\n')

/** Hashes of forgotten rows by columns: of each row those of one key. */
function hashesByKey(
  fresh: FreshRows,
  held: HeldRows,
  key: readonly string[],
): readonly { readonly key: readonly string[]; readonly rows: ReadonlyMap<string, number> }[] {
  const namesOnce = (own: readonly string[]): boolean =>
    own.every((column) => fresh.columns.has(column)) && indexOf(fresh.rows, keyText(fresh.cell, own)).clash.length === 0
  const groups = new Map<string, { readonly key: readonly string[]; readonly rows: Map<string, number> }>()
  for (let row = 0; row < held.rows; row++) {
    const keys = held.forgotten(row)?.keys ?? []
    const usable = keys.find((own) => sameColumns(own.key, key)) ?? keys.find((own) => namesOnce(own.key))
    for (const own of keys) {
      if (usable === undefined || !sameColumns(own.key, usable.key)) continue
      const name = own.key.join('\n')
      const group = groups.get(name) ?? { key: own.key, rows: new Map<string, number>() }
      groups.set(name, group)
      group.rows.set(own.hash, row)
    }
  }
  return [...groups.values()]
}

/**
 * Which forgotten row a row of a mended file is, by the key that matches the other rows; where a row was forgotten without
 * that key, by its own surest one.
 *
 * @returns for a row of the file the row held; -1 for none
 */
export function findForgotten(fresh: FreshRows, held: HeldRows, key: readonly string[]): (row: number) => number {
  const groups = hashesByKey(fresh, held, key)
  return (row) => {
    for (const { key: columns, rows } of groups) {
      const text = keyText(fresh.cell, columns)(row)
      const found = text === null ? undefined : rows.get(hashOf(held.project, columns, text))
      if (found !== undefined) return found
    }
    return -1
  }
}
