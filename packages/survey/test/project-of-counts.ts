import {
  type Author,
  type BodyOf,
  type Column,
  createLogicalClock,
  dayNumber,
  type Fact,
  fieldDescribed,
  foldFacts,
  hivesLookedFor,
  hivesPlaced,
  kindDescribed,
  type MarkName,
  makeFact,
  mark,
  type NamedColumn,
  numberColumn,
  packColumns,
  planMade,
  projectDescribed,
  rowsBrought,
  type Snapshot,
  sheetAccepted,
  sheetRead,
  tableDeclarations,
  textColumn,
  treatmentSet,
} from '@thrum/model'

/** How many of a kind: a number; null where nobody looked; or a number with its mark. */
export type Tally = number | null | { readonly number: number; readonly mark: MarkName }

/** One watch as a person would write it in a row. Columns that no declaration names are factors of the project's own. */
export interface CountRow {
  readonly field?: string | undefined
  /** ISO date. */
  readonly date?: string | undefined
  /** `9:30`, or minutes since midnight. */
  readonly start?: string | number | undefined
  /** A kind that is not named here has no row in this count. A list holds several rows of one kind (castes). */
  readonly tallies?: { readonly [kind: string]: Tally | readonly Tally[] } | undefined
  readonly [column: string]: unknown
}

export interface Project {
  readonly counts: readonly CountRow[]
  readonly fields?: readonly BodyOf<typeof fieldDescribed>[]
  readonly kinds?: readonly BodyOf<typeof kindDescribed>[]
  readonly treatments?: readonly BodyOf<typeof treatmentSet>[]
  readonly hives?: readonly BodyOf<typeof hivesPlaced>[]
  readonly hivesLookedFor?: readonly BodyOf<typeof hivesLookedFor>[]
  readonly plan?: BodyOf<typeof planMade>
  /** Further facts, such as corrections of `countBatch` or `tallyBatch`. */
  readonly more?: (author: Author) => readonly Fact[]
}

export const countBatch = 'sheet-1-counts'
export const tallyBatch = 'sheet-1-tallies'

function testAuthor(): Author {
  let now = Date.UTC(2031, 0, 1)
  const clock = { now: () => (now += 1000), monotonic: () => now, zone: () => 'UTC' }
  return { by: 'observer 1', device: 'tablet', clock: createLogicalClock(clock, 'tablet') }
}

function minutesOf(start: string | number): number {
  if (typeof start === 'number') return start
  const [hours, minutes] = start.split(':')
  return Number(hours) * 60 + Number(minutes ?? 0)
}

const declared: { readonly [column: string]: { readonly type: 'number' | 'text' } } = tableDeclarations.count

function columnOf(name: string, cells: readonly unknown[]): Column {
  const type = declared[name]?.type ?? (cells.some((cell) => typeof cell === 'string') ? 'text' : 'number')
  if (type === 'text') return textColumn(cells.map((cell) => (cell === undefined || cell === null ? null : String(cell))))
  return numberColumn(
    cells.map((cell) => {
      if (cell === undefined || cell === null) return null
      if (name === 'date') return dayNumber(String(cell))
      return name === 'start' ? minutesOf(cell as string | number) : Number(cell)
    }),
  )
}

function countColumns(counts: readonly CountRow[]): readonly NamedColumn[] {
  const names = new Set(counts.flatMap((row) => Object.keys(row)).filter((name) => name !== 'tallies'))
  return [...names].map((name) => ({
    name,
    column: columnOf(
      name,
      counts.map((row) => row[name]),
    ),
  }))
}

function tallyColumns(counts: readonly CountRow[]): readonly NamedColumn[] {
  const rows = counts.flatMap(({ tallies = {} }, count) =>
    Object.entries(tallies).flatMap(([kind, written]) =>
      (Array.isArray(written) ? (written as readonly Tally[]) : [written as Tally]).map((tally) => ({ count, kind, tally })),
    ),
  )
  const numbers = rows.map(({ tally }) => (typeof tally === 'object' ? (tally?.number ?? null) : tally))
  const marks = rows.map(({ tally }) => {
    if (tally === null) return mark.notLookedFor
    return typeof tally === 'object' ? mark[tally.mark] : mark.asWritten
  })
  return [
    { name: 'count', column: numberColumn(rows.map(({ count }) => count)) },
    { name: 'kind', column: textColumn(rows.map(({ kind }) => kind)) },
    {
      name: 'number',
      column: {
        type: 'number',
        values: Float64Array.from(numbers, (value) => value ?? Number.NaN),
        marks: Uint8Array.from(marks),
      },
    },
  ]
}

function batch(author: Author, id: string, table: 'count' | 'tally', first: number, columns: readonly NamedColumn[]): Fact {
  const packed = packColumns(columns)
  return makeFact(
    rowsBrought,
    { sheet: 'sheet-1', table, batch: first, first: 0, rows: packed.rows, columns: [...packed.heads] },
    author,
    { id, subject: 'sheet-1', data: packed.data },
  )
}

/** The facts a project of one sheet would hold. */
export function factsOfCounts(project: Project): readonly Fact[] {
  const author = testAuthor()
  const rows = project.counts.length
  const read = { read: rows, accepted: rows, waiting: 0, refused: 0 }
  return [
    makeFact(projectDescribed, { project: 'ostrel-vale', title: 'Ostrel Vale' }, author),
    ...(project.fields ?? []).map((body) => makeFact(fieldDescribed, body, author)),
    ...(project.kinds ?? []).map((body) => makeFact(kindDescribed, body, author)),
    ...(project.treatments ?? []).map((body) => makeFact(treatmentSet, body, author)),
    ...(project.hives ?? []).map((body) => makeFact(hivesPlaced, body, author)),
    ...(project.hivesLookedFor ?? []).map((body) => makeFact(hivesLookedFor, body, author)),
    ...(project.plan === undefined ? [] : [makeFact(planMade, project.plan, author)]),
    makeFact(
      sheetRead,
      { sheet: 'sheet-1', file: 'counts.csv', fileHash: 'made for a test', bytes: 1, mapping: {}, rows: read, notes: [] },
      author,
    ),
    batch(author, countBatch, 'count', 0, countColumns(project.counts)),
    batch(author, tallyBatch, 'tally', 1, tallyColumns(project.counts)),
    makeFact(sheetAccepted, { sheet: 'sheet-1', batches: 2 }, author),
    ...(project.more?.(author) ?? []),
  ]
}

/** A snapshot of plain rows, made the way a project makes it: facts, packed batches, one fold. */
export function projectOfCounts(project: Project): Snapshot {
  return foldFacts(factsOfCounts(project))
}
