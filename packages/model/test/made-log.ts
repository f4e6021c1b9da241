import {
  type Author,
  createLogicalClock,
  type Fact,
  type FactKind,
  makeFact,
  type NamedColumn,
  numberColumn,
  packColumns,
  rowsBrought,
  type Snapshot,
  sheetAccepted,
  sheetRead,
  type TableName,
  textColumn,
} from '../src/index.ts'

/** Somebody who writes on a clock that a test owns: a second passes between two looks. */
export function writer(device = 'tablet', start = Date.UTC(2031, 0, 1)): Author {
  let now = start
  const clock = { now: () => (now += 1000), monotonic: () => now, zone: () => 'UTC' }
  return { by: `walker of ${device}`, device, clock: createLogicalClock(clock, device) }
}

/** A fact with an id that a test can name. */
export function factOf<K extends FactKind>(
  author: Author,
  id: string,
  kind: K,
  body: Parameters<typeof makeFact<K['shape']>>[1],
  more: { readonly subject?: string; readonly data?: Uint8Array } = {},
): Fact {
  return makeFact(kind as FactKind<K['shape']>, body, author, { id, ...more })
}

export type Cells = { readonly [column: string]: readonly (string | null)[] | readonly (number | null)[] }

/** Cells as columns: texts where any cell is one. */
export function columnsOf(cells: Cells): readonly NamedColumn[] {
  return Object.entries(cells).map(([name, own]) => ({
    name,
    column: own.some((cell) => typeof cell === 'string')
      ? textColumn(own as readonly (string | null)[])
      : numberColumn(own as readonly (number | null)[]),
  }))
}

/** One batch of a sheet; its id is `<sheet>/<table>/<batch>`. */
export function batchOf(author: Author, sheet: string, table: TableName, batch: number, first: number, cells: Cells): Fact {
  const packed = packColumns(columnsOf(cells))
  return factOf(
    author,
    `${sheet}/${table}/${batch}`,
    rowsBrought,
    { sheet, table, batch, first, rows: packed.rows, columns: [...packed.heads] },
    { subject: sheet, data: packed.data },
  )
}

export interface MadeSheet {
  readonly counts: readonly Cells[]
  readonly tallies: readonly Cells[]
  /** False: begun, and never accepted. */
  readonly accepted?: boolean
}

const rowsIn = (cells: Cells): number => Object.values(cells)[0]?.length ?? 0

/** The facts that a sheet brings: it was read, its batches, and last the word that makes them count. */
export function sheetOf(author: Author, sheet: string, { counts, tallies, accepted = true }: MadeSheet): readonly Fact[] {
  const batches: Fact[] = []
  for (const [table, parts] of [
    ['count', counts],
    ['tally', tallies],
  ] as const) {
    let first = 0
    for (const cells of parts) {
      batches.push(batchOf(author, sheet, table, batches.length, first, cells))
      first += rowsIn(cells)
    }
  }
  const rows = { read: 1, accepted: 1, waiting: 0, refused: 0 }
  const read = { sheet, file: `${sheet}.csv`, fileHash: `hash of ${sheet}`, bytes: 1, mapping: {}, rows, notes: [] }
  return [
    factOf(author, `${sheet}/read`, sheetRead, read, { subject: sheet }),
    ...batches,
    ...(accepted
      ? [factOf(author, `${sheet}/accepted`, sheetAccepted, { sheet, batches: batches.length }, { subject: sheet })]
      : []),
  ]
}

/** A snapshot as text: columns as lists, maps as pairs, NaN and -0 by name. Equal snapshots give equal texts. */
export function plain(snapshot: Snapshot): string {
  return JSON.stringify(snapshot, (_, value) => {
    if (ArrayBuffer.isView(value)) return Array.from(value as Float64Array)
    if (value instanceof Map) return [...value].sort(([a], [b]) => (String(a) < String(b) ? -1 : 1))
    if (typeof value === 'number' && !Number.isFinite(value)) return String(value)
    return Object.is(value, -0) ? '-0' : value
  })
}

/** For each tally what it says: `<row of its count> <kind> <number>`. */
export function toldTallies(snapshot: Snapshot): readonly string[] {
  return Array.from(snapshot.tallyCount, (count, row) => {
    const kind = snapshot.kinds[snapshot.tallyKind[row] ?? -1]?.name ?? '-'
    return `${count} ${kind} ${snapshot.tables.tally.columns.number.values[row]}`
  })
}
