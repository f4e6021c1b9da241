import { describeRead, type Mapping, parseMapping, type Sheet } from '@thrum/exchange'
import {
  type CountsOffered,
  earlierMapping,
  type MendedOptions,
  type MendedOr,
  offerCounts,
  offerMended,
  type Project,
  requireWritable,
} from '@thrum/host'
import { textAt } from '@thrum/model'
import { type LongWork, ThrumError } from '@thrum/model/ground'
import type { OfferBody } from '../../api/table.ts'
import { failureTold } from '../../door/failure.ts'
import type { TableAt } from '../../thread/protocol.ts'
import type { Desk } from '../desk.ts'
import type { KeptSheet } from './kept-sheets.ts'
import { previewRows } from './preview-rows.ts'
import { shortened, shortText } from './short-text.ts'
import { mendedTold } from './tell-mended.ts'

/** Different values that are shown of a column, and rows that are looked through for them. */
const mostSamples = 6
const rowsLookedAt = 2000

function samplesOf({ columns, rows }: Sheet, at: number): readonly string[] {
  const column = columns[at]
  const found = new Set<string>()
  for (let row = 0; column !== undefined && row < Math.min(rows, rowsLookedAt) && found.size < mostSamples; row++) {
    const text = textAt(column, row)
    if (text !== null) found.add(shortText(text))
  }
  return [...found]
}

/** A table read under a mapping, or why it cannot be. */
export type Reading =
  | { readonly kind: 'read'; readonly offered: CountsOffered; readonly mended: MendedOr }
  | { readonly kind: 'refused'; readonly because: ThrumError; readonly offered: CountsOffered | null }

/** Reads a table under a mapping; what cannot be read as a whole is told with the mapping, so that the mapping can be mended. */
export async function readTable(
  project: Project,
  at: TableAt,
  { bytes, sheet }: KeptSheet,
  mapping: Mapping,
  options: MendedOptions,
  work: LongWork,
): Promise<Reading> {
  let offered: CountsOffered | null = null
  try {
    offered = await offerCounts(bytes, mapping, work, sheet)
    return { kind: 'read', offered, mended: await offerMended(project, at.name, offered, options) }
  } catch (error) {
    if (!(error instanceof ThrumError) || work.signal.aborted) throw error
    return { kind: 'refused', because: error, offered }
  }
}

function told(at: TableAt, { bytes, sheet, proposal }: KeptSheet, mapping: Mapping, reading: Reading): unknown {
  const read = reading.offered?.read ?? null
  return {
    table: at.table,
    file: at.name,
    bytes: bytes.length,
    state: reading.kind === 'refused' ? 'refused' : reading.mended.kind,
    refusal: reading.kind === 'refused' ? failureTold(reading.because) : null,
    mapping,
    columns: sheet.headers.map((header, column) => ({ header, samples: samplesOf(sheet, column) })),
    reasons: proposal.reasons,
    questions: proposal.questions,
    rows: read?.rows ?? { read: sheet.rows + sheet.refused.length, accepted: 0, waiting: 0, refused: 0 },
    counts: read?.counts ?? 0,
    tallies: read?.tallies ?? 0,
    kinds: read?.kinds ?? [],
    preview: previewRows(sheet, mapping, read),
    sentences: read === null ? [] : describeRead(read).map(shortened),
    mended: reading.kind === 'read' && reading.mended.kind === 'mended' ? mendedTold(reading.mended) : null,
  }
}

/**
 * A table that was just taken in, with a mapping: that of its earlier version where the project holds one, else a proposed one.
 *
 * @throws ThrumError exchange/... where it is no table, host/read-only
 */
export async function proposeTable(desk: Desk, project: Project, at: TableAt, work: LongWork): Promise<unknown> {
  requireWritable(project)
  const kept = desk.sheets.read(at)
  await work.breathe()
  let mapping = kept.proposal.mapping
  try {
    mapping = (await earlierMapping(project, at.name, {})) ?? mapping
  } catch (error) {
    // Several files of that name: which one is meant is asked when the table is offered.
    if (!(error instanceof ThrumError)) throw error
  }
  return told(at, kept, mapping, await readTable(project, at, kept, mapping, {}, work))
}

/** The same table under an edited mapping. @throws ThrumError exchange/mapping/misshapen, host/read-only */
export async function offerTable(
  desk: Desk,
  project: Project,
  { mapping: json, options = {}, ...at }: TableAt & Pick<OfferBody, 'mapping' | 'options'>,
  work: LongWork,
): Promise<unknown> {
  requireWritable(project)
  const mapping = parseMapping(json)
  const kept = desk.sheets.read(at)
  const { mends, separate = false } = options
  return told(at, kept, mapping, await readTable(project, at, kept, mapping, { mends, separate }, work))
}
