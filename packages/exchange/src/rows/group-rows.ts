import { ThrumError } from '@thrum/model/ground'
import { valueOfReading } from '../cell/reading.ts'
import { textRoles } from '../mapping/roles.ts'
import type { Mapping } from '../mapping/shape.ts'
import type { CellSource } from './cell-source.ts'
import type { TextSource } from './text-cells.ts'
import type { WatchColumn } from './watch-cells.ts'

/** Roles that name a watch where the mapping does not say which do. */
const usualKey = ['field', 'plot', 'date', 'start', 'visit', 'observer', 'key', 'season'] as const

/** Rows by watch: the rows of watch k are `rows[offsets[k] .. offsets[k + 1]]`, in the order of the file. */
export interface RowGroups {
  readonly rows: Int32Array
  readonly offsets: Int32Array
}

type KeyPart = (row: number) => number

function keyParts(mapping: Mapping, texts: readonly TextSource[], watch: readonly WatchColumn[]): KeyPart[] {
  const part = (name: string): KeyPart | null => {
    const text = texts.find((source) => source.column === name || source.header === name)
    if (text !== undefined) return (row) => text.codeAt(row)
    const number = watch.find(({ column, source }) => column === name || source.header === name)
    if (number === undefined) return null
    return distinctValues(number.source)
  }
  // A column without a word in it is mapped all the same; it tells no watches apart.
  const isMapped = (name: string): boolean => mapping.columns.some(({ header, as }) => header === name || as === name)
  const asked = mapping.key ?? usualKey.filter((role) => part(role) !== null)
  const found = asked.flatMap((name) => {
    const own = part(name)
    if (own === null && !isMapped(name))
      throw new ThrumError('exchange/mapping/key-unknown', { name, roles: [...textRoles, 'date', 'start'].join(', ') })
    return own ?? []
  })
  if (found.length === 0) throw new ThrumError('exchange/mapping/no-key')
  return found
}

/** Numbers, or the text where there is none, as codes: two ways of writing one date are one watch. */
function distinctValues(source: CellSource): KeyPart {
  const codes = new Map<number | string, number>()
  return (row) => {
    const reading = source.at(row)
    const value = valueOfReading(reading)
    const key = Number.isNaN(value) ? reading.written.trim() : value
    const known = codes.get(key)
    if (known !== undefined) return known
    codes.set(key, codes.size)
    return codes.size - 1
  }
}

/**
 * Puts the rows of a long table together by the columns that name a watch, in the order in which watches first appear.
 *
 * @throws ThrumError exchange/mapping/no-key, exchange/mapping/key-unknown
 */
export function groupRows(
  kept: Int32Array,
  mapping: Mapping,
  texts: readonly TextSource[],
  watch: readonly WatchColumn[],
): RowGroups {
  const watchOf = new Int32Array(kept.length)
  let watches = 1
  for (const part of keyParts(mapping, texts, watch)) {
    const next = new Map<string, number>()
    for (let k = 0; k < kept.length; k++) {
      const key = `${watchOf[k]}/${part(kept[k] as number)}`
      const known = next.get(key)
      if (known === undefined) {
        watchOf[k] = next.size
        next.set(key, next.size)
      } else watchOf[k] = known
    }
    watches = next.size
  }
  const offsets = new Int32Array(watches + 1)
  for (const watch of watchOf) offsets[watch + 1] = (offsets[watch + 1] as number) + 1
  for (let k = 0; k < watches; k++) offsets[k + 1] = (offsets[k + 1] as number) + (offsets[k] as number)
  const next = offsets.slice(0, watches)
  const rows = new Int32Array(kept.length)
  for (let k = 0; k < kept.length; k++) {
    const watch = watchOf[k] as number
    const at = next[watch] as number
    rows[at] = kept[k] as number
    next[watch] = at + 1
  }
  return { rows, offsets }
}
