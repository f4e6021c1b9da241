import { cellOf, emptyCell, type MendedCell, shortened, tallyLabel } from '@thrum/exchange'
import { addressOf, type Column, declarationOf, findColumn, isoDate, type Table, type TableName } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { type BroughtBatch, numberIn, placeOf, type RowPlace, textIn } from './brought-rows.ts'
import type { CorrectedProject } from './corrected-project.ts'
import { historyOf } from './corrected-project.ts'
import type { Found } from './find-row.ts'

/** One cell that a person can name, and where it stands. */
export interface NamedCell {
  readonly of: string
  readonly table: TableName
  readonly column: string
  /** As the person names it: a column of counts, or who was counted. */
  readonly name: string
  readonly isNumber: boolean
}

/** What every table knows of itself and no person corrects. */
const ofTheTable: ReadonlySet<string> = new Set(['line', 'zeros', 'count', 'of'])

/** A tally of a count: who, and its address. */
export interface OwnTally {
  readonly label: string
  readonly address: string
}

function labelOf(batch: BroughtBatch, row: number): string {
  return tallyLabel(textIn(batch, 'kind', row), textIn(batch, 'caste', row), textIn(batch, 'behaviour', row))
}

/** Rows of tallies in a batch that belong to a count: by its row in the same sheet, or by its address. */
function rowsOfCount(place: RowPlace, sheet: RowPlace['sheet'], batch: BroughtBatch): readonly number[] {
  const ordinal = place.batch.first + place.row
  const address = addressOf(place.batch.id, place.row)
  const counts = sheet === place.sheet ? batch.columns.get('count') : undefined
  const own = counts?.type === 'number' ? counts.values : []
  const of = batch.columns.get('of')
  const code = of?.type === 'text' ? of.dictionary.indexOf(address) : -1
  const rows: number[] = []
  for (let row = 0; row < batch.rows; row++) {
    if (own[row] === ordinal || (code >= 0 && of?.type === 'text' && of.codes[row] === code)) rows.push(row)
  }
  return rows
}

/** The tallies of a count, those that later versions of its file brought among them. */
export function talliesOfCount({ sheets }: Pick<CorrectedProject, 'sheets'>, count: string): readonly OwnTally[] {
  const place = placeOf(sheets, count)
  if (place === null) return []
  return sheets.flatMap((sheet) =>
    sheet.batches
      .filter(({ table }) => table === 'tally')
      .flatMap((batch) =>
        rowsOfCount(place, sheet, batch).map((row) => ({ label: labelOf(batch, row), address: addressOf(batch.id, row) })),
      ),
  )
}

function rowIn(table: Table, address: string): number {
  const source = table.sources.findIndex((own) => address.startsWith(`${own}#`))
  if (source < 0) return -1
  const row = Number(address.slice((table.sources[source] ?? '').length + 1))
  return table.sourceOf.findIndex((own, at) => own === source && table.rowInSource[at] === row)
}

/** What a file said in a cell when it was brought; null where its batch is gone. */
export function broughtCell({ sheets }: Pick<CorrectedProject, 'sheets'>, { of, table, column }: NamedCell): MendedCell | null {
  const place = placeOf(sheets, of)
  if (place === null) return null
  const found = place.batch.columns.get(column)
  if (found === undefined) return emptyCell(declarationOf(table, column)?.type === 'number')
  return cellOf(found, place.row, () => writtenIn(place, table, column))
}

/** What was written in a cell that waits, as the file had it. */
export function writtenIn({ sheet, batch, row }: RowPlace, table: string, column: string): string | undefined {
  return sheet.written(table, column, batch.first + row)
}

/** What stands in a cell now; null where its row was withdrawn. */
export function standingCell(corrected: CorrectedProject, cell: NamedCell): MendedCell | null {
  const table = corrected.snapshot.tables[cell.table] as Table
  const row = rowIn(table, cell.of)
  const column = findColumn(table, cell.column)
  if (row < 0) return null
  if (column === undefined) return emptyCell(cell.isNumber)
  return cellOf(column, row, () => {
    const step = historyOf(corrected, cell.of, cell.column)?.standing
    if (typeof step?.to === 'string') return step.to
    const place = placeOf(corrected.sheets, cell.of)
    return place === null ? undefined : writtenIn(place, cell.table, cell.column)
  })
}

const folded = (text: string): string => text.trim().toLowerCase()

/** Says whether a name is the one a person typed: all of it, or its beginning with an ellipsis, as long names are shown. */
function nameMatcher(typed: string): (name: string) => boolean {
  const wanted = folded(typed)
  const beginning = wanted.length > 1 && wanted.endsWith('…') ? wanted.slice(0, -1) : null
  return (name) => folded(name) === wanted || (beginning !== null && folded(name).startsWith(beginning))
}

function tallyCell(address: string, label: string): NamedCell {
  return { of: address, table: 'tally', column: 'number', name: label, isNumber: true }
}

/** Columns of counts that a person can correct: those of the table, and what the files of the project add. */
function countColumns({ snapshot }: CorrectedProject): ReadonlyMap<string, boolean> {
  const { count } = snapshot.tables
  const all = new Map<string, boolean>()
  for (const [name, column] of [...Object.entries(count.columns as { [name: string]: Column }), ...count.factors]) {
    if (!ofTheTable.has(name)) all.set(name, column.type === 'number')
  }
  return all
}

/**
 * The cell that a person names in a count: a column of counts, something the project compares, or a kind (its tally). In
 * a long table `number` is the tally of the named line. Of a long name the beginning is enough, with an ellipsis.
 *
 * @throws ThrumError host/cell/unknown with what there is, host/cell/which where a kind has several tallies
 */
export function cellOfCount(corrected: CorrectedProject, found: Found & { readonly kind: 'count' }, name: string): NamedCell {
  const columns = countColumns(corrected)
  const wanted = folded(name)
  const isNamed = nameMatcher(name)
  const alike = [...columns.keys()].filter(isNamed)
  const column = alike.find((own) => own === name) ?? alike.find((own) => folded(own) === wanted) ?? alike[0]
  const isPlain = alike.length === 1 || (column !== undefined && folded(column) === wanted)
  if (column !== undefined && !isPlain)
    throw new ThrumError('host/cell/which', {
      name,
      row: found.name,
      columns: '',
      kinds: alike.map((own) => `"${own}"`).join(', '),
    })
  if (column !== undefined) {
    return { of: found.address, table: 'count', column, name: column, isNumber: columns.get(column) === true }
  }
  const tallies = talliesOfCount(corrected, found.address)
  const named = tallies.find(({ address }) => address === found.tally)
  if (wanted === 'number' && named !== undefined) return tallyCell(named.address, named.label)
  const exact = tallies.filter(({ label }) => isNamed(label))
  const ofKind = exact.length > 0 ? exact : tallies.filter(({ label }) => folded(label).startsWith(`${wanted}, `))
  const only = ofKind[0]
  if (only !== undefined && ofKind.length === 1) return tallyCell(only.address, only.label)
  if (only !== undefined && named !== undefined && ofKind.some(({ address }) => address === named.address)) {
    return tallyCell(named.address, named.label)
  }
  const labels = (ofKind.length > 1 ? ofKind : tallies).map(({ label }) => `"${label}"`)
  throw new ThrumError(ofKind.length > 1 ? 'host/cell/which' : 'host/cell/unknown', {
    name,
    row: found.name,
    columns: [...columns.keys()].sort().join(', '),
    kinds: labels.join(', '),
  })
}

/** The cell that a person names in a row of any table, by the name of its column. @throws ThrumError host/cell/unknown */
export function cellOfRow(corrected: CorrectedProject, found: Found & { readonly kind: 'row' }, name: string): NamedCell {
  const tables = corrected.snapshot.tables as { readonly [table: string]: Table | undefined }
  const table = tables[found.table]
  const column = table === undefined ? undefined : findColumn(table, name)
  if (table === undefined || column === undefined || ofTheTable.has(name) || table.name === 'setAside') {
    const columns = table === undefined ? [] : [...Object.keys(table.columns), ...table.factors.keys()]
    throw new ThrumError('host/cell/unknown', {
      name,
      row: found.address,
      columns: columns.filter((own) => !ofTheTable.has(own)).join(', '),
      kinds: '',
    })
  }
  return { of: found.address, table: table.name, column: name, name, isNumber: column.type === 'number' }
}

/** Characters of a name that are told; the row has it whole. */
const longestTold = 100

/** Where a watch was, in a few words: field, plot, day. */
export function toldCount({ snapshot, sheets }: Pick<CorrectedProject, 'snapshot' | 'sheets'>, address: string): string {
  const place = placeOf(sheets, address)
  if (place === null) return ''
  const { batch, row } = place
  const day = numberIn(batch, 'date', row)
  const date = day === null ? null : isoDate(day)
  const { count } = snapshot.tables
  const at = rowIn(count, address)
  const text = (column: 'field' | 'plot'): string | null => {
    const { codes, dictionary } = count.columns[column]
    return at < 0 ? textIn(batch, column, row) : (dictionary[codes[at] ?? -1] ?? null)
  }
  return [text('field'), text('plot'), date].flatMap((part) => (part === null ? [] : shortened(part, longestTold))).join(', ')
}
