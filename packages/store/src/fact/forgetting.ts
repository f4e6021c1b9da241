import {
  type BodyOf,
  declarationOf,
  type Fact,
  type FactBody,
  isTableName,
  type Json,
  packColumns,
  parseAddress,
  readFact,
  redacted,
  rowsBrought,
  sheetAccepted,
  spokenOf,
  unpackColumns,
} from '@thrum/model'
import { type ColumnHeads, isPlaceColumn, withoutPlace, withoutRows } from './forgotten-cells.ts'
import { createNames, type ForgottenName, type Names } from './forgotten-names.ts'
import { emptiedBody } from './sheet-of.ts'

/** Kinds the log itself needs: what must stay forgotten, and which sheets count. They are never emptied as a whole. */
const neverEmptied: ReadonlySet<string> = new Set([redacted.kind, sheetAccepted.kind])

/** What is forgotten wherever it stands: names of persons, and the exact places of fields. */
export interface Forgetting {
  readonly names: Names | null
  readonly places: ReadonlySet<string>
}

export const nothingForgotten: Forgetting = { names: null, places: new Set() }

/**
 * What a log's `redacted` facts say of names and places.
 *
 * @param bodies of those facts, in any order; what names a fact or a row is not for here
 */
export function forgettingOf(bodies: Iterable<FactBody>): Forgetting {
  const names: ForgottenName[] = []
  const places: string[] = []
  for (const body of bodies) {
    const read = readFact({ kind: redacted.kind, v: redacted.v, body })
    if (read.kind !== 'read') continue
    const { name, place } = read.body as BodyOf<typeof redacted>
    if (name !== undefined) names.push(name)
    if (place !== undefined) places.push(place)
  }
  const known = createNames(names)
  // A field may be called after a person.
  return { names: known, places: new Set(places.map((place) => known?.without(place) ?? place)) }
}

/** Which fact and row (-1: the whole fact) a `redacted` fact names; null for every other fact, and for names and places. */
export function whatIsForgotten(fact: Fact): { readonly fact: string; readonly row: number } | null {
  const of = fact.kind === redacted.kind ? fact.body.of : null
  return typeof of === 'string' ? parseAddress(of) : null
}

/**
 * The fact without what was to be forgotten: the whole body (-1 among `rows`), or single rows of a batch; names wherever
 * they stand; the exact places of fields. The envelope stays (but for names in it), so that a merge can't bring the body
 * back; so do the hashes that tell which sheet it was of. Emptying twice equals emptying once, in any order. The same fact
 * comes back where nothing of it is to be forgotten.
 *
 * A batch of a newer version can't be opened here: names in its body go, rows only if all of it is to be forgotten.
 */
export function withoutForgotten<F extends Fact>(fact: F, rows: readonly number[], more: Forgetting = nothingForgotten): F {
  return withoutPlaces(withoutNames(withoutOwnRows(fact, rows), more.names), more.places)
}

function withoutOwnRows<F extends Fact>(fact: F, rows: readonly number[]): F {
  if (rows.length === 0 || neverEmptied.has(fact.kind)) return fact
  if (rows.includes(-1)) return { ...fact, body: emptiedBody(fact), data: null }
  return repacked(fact, (heads, size) => {
    const within = rows.filter((row) => row < size)
    return within.length === 0 ? null : heads.map((named) => ({ ...named, column: withoutRows(named.column, within) }))
  })
}

/**
 * What is left of a correction, a settlement or a withdrawal that speaks of something forgotten: what it speaks of, and
 * nothing that it says. The same fact comes back for every other kind.
 */
export function withoutSaying<F extends Fact>(fact: F): F {
  const of = spokenOf(fact)
  return of === null || Object.keys(fact.body).length === 1 ? fact : { ...fact, body: { of }, data: null }
}

/** A batch with other columns; the same fact where `change` gives none, or where it is no batch that can be opened. */
function repacked<F extends Fact>(fact: F, change: (columns: ColumnHeads, rows: number) => ColumnHeads | null): F {
  const understood = fact.kind === rowsBrought.kind ? readFact(fact) : null
  if (understood?.kind !== 'read' || fact.data === null) return fact
  const body = understood.body as BodyOf<typeof rowsBrought>
  const columns = change(unpackColumns({ heads: body.columns, rows: body.rows, data: fact.data }), body.rows)
  if (columns === null) return fact
  const packed = packColumns(columns)
  // Heads are plain JSON; their type says so only by its shape.
  return { ...fact, body: { ...fact.body, columns: packed.heads as unknown as Json }, data: packed.data }
}

/**
 * Under these keys of bodies, and in declared columns of these names, stand hashes, ids, names of things or words of a list: no
 * person is called so there.
 */
const nobodysName: ReadonlySet<string> = new Set(
  (
    'of after knowing sheet fileHash digest project id key hash instead column table factor question verdict as assigned mark ' +
    'kind taxon group caste behaviour crop cultivar season method unit position rain flowersHow zeros state treatment ' +
    'substance product habitat tapped determined source shape absent effort duplicates encoding decimal delimiter dateOrder ' +
    'result owner version'
  ).split(' '),
)
/** Columns that no declaration names and no file either: they hold addresses of rows. */
const columnsOfAddresses: ReadonlySet<string> = new Set(['tally/of', 'heldLine/source'])
/** Under these keys a person writes keys of their own: what stands in a cell. */
const ownKeys: ReadonlySet<string> = new Set(['means'])

function withoutNames<F extends Fact>(fact: F, names: Names | null): F {
  if (names === null) return fact
  let changed = false
  const text = (written: string): string => {
    const left = names.without(written)
    if (left !== written) changed = true
    return left
  }
  const inside = (value: Json, under: string): Json => {
    if (nobodysName.has(under)) return value
    if (typeof value === 'string') return text(value)
    if (Array.isArray(value)) return value.map((part) => inside(part, ''))
    if (value === null || typeof value !== 'object') return value
    const entries = Object.entries(value).map(([key, part]) => [ownKeys.has(under) ? text(key) : key, inside(part, key)])
    return Object.fromEntries(entries)
  }
  const { columns, ...rest } = fact.body
  const isBatch = fact.kind === rowsBrought.kind && Array.isArray(columns)
  const body = isBatch
    ? { ...(inside(rest, '') as FactBody), columns: (columns as readonly Json[]).map((head) => headWithout(head, fact, text)) }
    : (inside(fact.body, '') as FactBody)
  const by = text(fact.by)
  const subject = fact.subject === null ? null : text(fact.subject)
  return changed ? { ...fact, by, subject, body } : fact
}

/** The head of a column: its words go, and its own name where the file gave it. */
function headWithout(head: Json, { body }: Fact, text: (written: string) => string): Json {
  if (head === null || typeof head !== 'object' || Array.isArray(head)) return head
  const { name, dictionary } = head as { readonly [key: string]: Json }
  if (typeof name !== 'string') return head
  const { table } = body
  const isDeclared = typeof table === 'string' && isTableName(table) && declarationOf(table, name) !== undefined
  // In a set-aside line `because` is the id of a sentence. A column that the file named itself may hold anybody.
  const isNobodys = isDeclared ? nobodysName.has(name) || name === 'because' : columnsOfAddresses.has(`${table}/${name}`)
  const words =
    Array.isArray(dictionary) && !isNobodys
      ? { dictionary: dictionary.map((one) => (typeof one === 'string' ? text(one) : one)) }
      : {}
  return { ...head, name: isDeclared ? name : text(name), ...words }
}

function withoutPlaces<F extends Fact>(fact: F, places: ReadonlySet<string>): F {
  if (places.size === 0) return fact
  if (fact.kind === rowsBrought.kind) {
    if (!mayHoldPlace(fact, places)) return fact
    return repacked(fact, (columns) => withoutPlace(columns, places))
  }
  if (typeof fact.body.field !== 'string' || !places.has(fact.body.field)) return fact
  const { latitude, longitude, polygon, ...rest } = fact.body
  return latitude === undefined && longitude === undefined && polygon === undefined ? fact : { ...fact, body: rest }
}

/** True for a batch that has coordinates beside the name of a field whose place is forgotten. */
export function mayHoldPlace(fact: Pick<Fact, 'body'>, places: ReadonlySet<string>): boolean {
  const heads = Array.isArray(fact.body.columns) ? (fact.body.columns as readonly { readonly [key: string]: Json }[]) : []
  const field = heads.find(({ name }) => name === 'field')?.dictionary
  const named = Array.isArray(field) && field.some((name) => typeof name === 'string' && places.has(name))
  return named && heads.some(({ name }) => typeof name === 'string' && isPlaceColumn(name))
}

/** A correction of a place without the places in it. */
export function withoutQuotedPlace<F extends Fact>(fact: F): F {
  if (fact.body.from === null && fact.body.to === null) return fact
  return { ...fact, body: { ...fact.body, from: null, to: null } }
}

/** True for a correction that quotes a place; whose place it is says the fact it corrects. */
export function quotesPlace({ body }: Pick<Fact, 'body'>): boolean {
  return typeof body.column === 'string' && typeof body.of === 'string' && isPlaceColumn(body.column)
}
