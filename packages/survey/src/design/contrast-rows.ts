import type { Snapshot } from '@thrum/model'
import type { Factor } from '../factor/factor.ts'
import { resolveFactor } from '../factor/resolve-factor.ts'

/** Counts on their way into a design, side by side: a million of them as objects of their own would fill the memory. */
export interface Rows {
  readonly rows: Int32Array
  /** For each of them its field, level and period; -1 where it has none. */
  readonly fields: Int32Array
  readonly levels: Int32Array
  readonly periods: Int32Array
}

/** The rows at some places. */
export function takeRows({ rows, fields, levels, periods }: Rows, places: Int32Array): Rows {
  const take = (values: Int32Array): Int32Array => {
    const taken = new Int32Array(places.length)
    for (let k = 0; k < places.length; k++) taken[k] = values[places[k] as number] as number
    return taken
  }
  return places.length === rows.length
    ? { rows, fields, levels, periods }
    : { rows: take(rows), fields: take(fields), levels: take(levels), periods: take(periods) }
}

/** A number of each row. */
export function numbersOf(rows: Int32Array, numberAt: (row: number) => number): Float64Array {
  const found = new Float64Array(rows.length)
  for (let k = 0; k < rows.length; k++) found[k] = numberAt(rows[k] as number)
  return found
}

/**
 * The day on which one level gave way to the other in every field that holds both: a treatment that began everywhere at once
 * is a comparison of before and after, whatever it is called. Null where the levels lie side by side in time.
 */
export function dayOfChange(snapshot: Snapshot, { rows, fields, levels }: Rows, factor: Factor | null): number | null {
  if (factor !== null && factor.about !== 'other' && factor.about !== 'hives') return null
  const { date } = snapshot.tables.count.columns
  const spans = new Map<number, { first: [number, number]; last: [number, number] }>()
  for (let k = 0; k < rows.length; k++) {
    const day = date.values[rows[k] as number] ?? Number.NaN
    const level = levels[k] as number
    if (Number.isNaN(day) || (level !== 0 && level !== 1)) return null
    const field = fields[k] as number
    let span = spans.get(field)
    if (span === undefined) {
      span = { first: [Infinity, Infinity], last: [-Infinity, -Infinity] }
      spans.set(field, span)
    }
    span.first[level] = Math.min(span.first[level], day)
    span.last[level] = Math.max(span.last[level], day)
  }
  const both = [...spans.values()].filter(({ first }) => first[0] !== Infinity && first[1] !== Infinity)
  for (const later of [1, 0] as const) {
    const earlier = later === 1 ? 0 : 1
    if (both.length > 0 && both.every(({ first, last }) => first[later] > last[earlier])) {
      return both.reduce((least, { first }) => Math.min(least, first[later]), Number.POSITIVE_INFINITY)
    }
  }
  return null
}

/** The one level of a field in a before/after comparison with controls: its level afterwards, else before. */
export function settleLevels({ fields, levels, periods }: Rows): void {
  const levelOf = new Map<number, number>()
  for (const period of [0, 1])
    for (let k = 0; k < fields.length; k++)
      if (periods[k] === period && (levels[k] as number) >= 0) levelOf.set(fields[k] as number, levels[k] as number)
  for (let k = 0; k < fields.length; k++) levels[k] = levelOf.get(fields[k] as number) ?? -1
}

/** The name of each field's block: its crops, and the blocks that were planned. */
export function blockNames(snapshot: Snapshot, { rows, fields }: Rows, factor: Factor | null): ReadonlyMap<number, string> {
  const { crop } = snapshot.tables.count.columns
  const planned = snapshot.plan?.block ?? null
  // What is asked about is no block of its own: crops are not, and a planned block is not either.
  const declared = planned === null || planned === factor?.name ? null : resolveFactor(snapshot, planned)
  const asksOfCrop = factor?.about === 'crop'
  const words = new Map<number, Set<string>>()
  // Of each field every pair of crop and block once.
  const seen = new Set<number>()
  const blocks = (declared?.levels.length ?? 0) + 1
  const crops = crop.dictionary.length + 1
  for (let k = 0; k < rows.length; k++) {
    const row = rows[k] as number
    const field = fields[k] as number
    const ofCrop = asksOfCrop ? -1 : (crop.codes[row] ?? -1)
    const ofBlock = declared?.levelOf[row] ?? -1
    const pair = (field * crops + ofCrop + 1) * blocks + ofBlock + 1
    if (seen.has(pair)) continue
    seen.add(pair)
    const parts = [crop.dictionary[ofCrop] ?? '', declared?.levels[ofBlock] ?? '']
    const set = words.get(field) ?? new Set()
    set.add(parts.filter((part) => part !== '').join(', '))
    words.set(field, set)
  }
  return new Map([...words].map(([field, set]) => [field, [...set].sort().join(' and ')]))
}
