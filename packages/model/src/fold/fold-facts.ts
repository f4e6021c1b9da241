import type { TextColumn } from '../columns/column.ts'
import { mark } from '../columns/mark.ts'
import { digestOfIds } from '../facts/digest.ts'
import { type Fact, parseAddress } from '../facts/fact.ts'
import { questionLookedAt, questionPinned, worthSet } from '../facts/kinds.ts'
import { readFact } from '../facts/read-fact.ts'
import type { Pin, Snapshot } from '../snapshot/snapshot.ts'
import { type TableName, tableDeclarations } from '../tables/declarations.ts'
import type { Table } from '../tables/table.ts'
import { buildTable, type CellChange, changeCells, keepRows } from '../tables/table-builder.ts'
import { type Correction, corrections } from './corrections.ts'
import { fillFromFieldAndDate, linkByName, linkTallies } from './links.ts'
import { foldNouns } from './nouns.ts'
import { type ReadLog, readLog } from './read-log.ts'
import { acceptedSheets, everAccepted, waitsForAcceptance } from './sheets.ts'

/** A corrected number of insects that is none (4.5, -1) is not taken as one: its cell waits for a person again. */
function asCounted(table: Table, change: CellChange): CellChange {
  const isNumber = table.name === 'tally' && change.column === 'number' && typeof change.to === 'number'
  const isCount = Number.isInteger(change.to) && (change.to as number) >= 0
  return isNumber && !isCount ? { ...change, to: null, mark: mark.waiting } : change
}

/** Corrections of rows of batches, as changes of cells of one table. */
function cellChanges(table: Table, standing: readonly Correction[]): readonly CellChange[] {
  if (standing.length === 0) return []
  const sourceIndex = new Map(table.sources.map((source, k) => [source, k]))
  const start = new Map<number, number>()
  for (let row = 0; row < table.rows; row++) {
    const source = table.sourceOf[row] as number
    if (!start.has(source)) start.set(source, row)
  }
  return standing.flatMap(({ of, column, to, mark: code }): readonly CellChange[] => {
    const address = parseAddress(of)
    const source = sourceIndex.get(address.fact) ?? -1
    const row = (start.get(source) ?? Number.NaN) + address.row
    // Beyond the last row of its batch an address names nothing, least of all a row of the next batch.
    return address.row < 0 || table.sourceOf[row] !== source ? [] : [asCounted(table, { row, column, to, mark: code })]
  })
}

/** Words that stand in some row; a word that every row has lost to a correction or a withdrawal names nothing any more. */
function wordsInUse({ codes, dictionary }: TextColumn): readonly string[] {
  const used = new Uint8Array(dictionary.length)
  for (let row = 0; row < codes.length; row++) {
    const code = codes[row] as number
    if (code >= 0) used[code] = 1
  }
  return dictionary.filter((_, code) => used[code] === 1)
}

/** 1 for rows that stand, 0 for rows that were withdrawn one by one or with their batch. */
function standingRows(table: Table, withdrawn: ReadonlySet<string>): Uint8Array {
  const keep = new Uint8Array(table.rows).fill(1)
  if (withdrawn.size === 0) return keep
  const touched = table.sources.map((source) => [...withdrawn].some((address) => address.startsWith(`${source}#`)))
  if (!touched.includes(true)) return keep
  for (let row = 0; row < table.rows; row++) {
    const source = table.sourceOf[row] as number
    if (touched[source] && withdrawn.has(`${table.sources[source]}#${table.rowInSource[row]}`)) keep[row] = 0
  }
  return keep
}

/** What is pinned now: of several words about one question asked the last stands. */
function standingPins(log: ReadLog): readonly Pin[] {
  const pins = new Map<string, Pin>()
  for (const { fact, body } of log.of(questionPinned)) {
    const { question, asked, options, pinned } = body
    const key = `${question}\n${asked}`
    const known = pins.get(key)
    if (!pinned) pins.delete(key)
    else pins.set(key, { question, asked, options, at: known?.at ?? fact.at })
  }
  return [...pins.values()]
}

/** S as it was set, or as it was corrected: then as of that correction, so that a change after looking is told as one. */
function worthsOf(log: ReadLog, standing: readonly Correction[]): Snapshot['worths'] {
  const corrected = new Map(standing.flatMap((own) => (own.column === 'worth' ? [[own.of, own] as const] : [])))
  return log.of(worthSet).map(({ fact, body }) => {
    const own = corrected.get(fact.id)
    return typeof own?.to === 'number' ? { ...body, worth: own.to, at: own.at } : { ...body, at: fact.at }
  })
}

/** What facts about asking say, and which facts wait: what the data has no part in. */
function askedOf(
  log: ReadLog,
  standing: readonly Correction[],
): Pick<Snapshot, 'askedDigest' | 'worths' | 'looks' | 'pins' | 'waitingFacts'> {
  return {
    askedDigest: digestOfIds(log.entries.filter(({ about }) => about === 'asking').map(({ fact }) => fact.id)),
    worths: worthsOf(log, standing),
    looks: log.of(questionLookedAt).map(({ fact, body }) => ({ ...body, at: fact.at })),
    pins: standingPins(log),
    waitingFacts: log.waiting,
  }
}

/** True for a fact about asking that this version can read: the tables of a snapshot are the same with and without it. */
export function isAboutAsking(fact: Fact): boolean {
  const read = readFact(fact)
  return read.kind === 'read' && read.about === 'asking'
}

/**
 * The snapshot to which nothing but facts about asking came: its tables and nouns are shared, not folded again.
 *
 * @param facts all facts there are now, in any order; batches may have lost their bytes, which are not looked at
 */
export function foldAsked(snapshot: Snapshot, facts: Iterable<Fact>): Snapshot {
  const log = readLog(facts)
  return { ...snapshot, ...askedOf(log, corrections(log).standing) }
}

/**
 * Folds facts into the read model. Pure; the order in which facts arrive does not matter.
 *
 * @throws ThrumError model/batch/damaged when the bytes of an accepted batch cannot be read
 */
export function foldFacts(facts: Iterable<Fact>): Snapshot {
  const log = readLog(facts)
  const accepted = everAccepted(log)
  const { sheets, unfinished, blocks } = acceptedSheets(log)
  const { standing, conflicts } = corrections(log)
  const single = Map.groupBy(standing, (correction) => correction.of)

  const names = Object.keys(tableDeclarations) as TableName[]
  const whole = Object.fromEntries(
    names.map((name) => {
      const table = buildTable(name, blocks.get(name) ?? [])
      const corrected = changeCells(table, cellChanges(table, standing))
      // Counts and tallies lose their withdrawn rows below, once tallies stand with their counts.
      const linkedLater = name === 'count' || name === 'tally'
      return [name, linkedLater ? corrected : keepRows(corrected, standingRows(corrected, log.withdrawn)).table]
    }),
  ) as unknown as { [N in TableName]: Table<N> }

  const linked = linkTallies(whole.tally, blocks.get('tally') ?? [], blocks.get('count') ?? [])
  const counts = keepRows(whole.count, standingRows(whole.count, log.withdrawn))
  const keepTally = standingRows(whole.tally, log.withdrawn)
  for (let row = 0; row < linked.length; row++) {
    if ((counts.newRow[linked[row] as number] ?? -1) < 0) keepTally[row] = 0
  }
  const tallies = keepRows(whole.tally, keepTally)
  const tallyCount = new Int32Array(tallies.table.rows)
  for (let row = 0, kept = 0; row < linked.length; row++) {
    if (keepTally[row] === 1) tallyCount[kept++] = counts.newRow[linked[row] as number] as number
  }

  const nouns = foldNouns(
    { ...log, of: (kind) => log.of(kind).filter(({ fact }) => !waitsForAcceptance(fact, accepted)) },
    (fact, body) => ({
      ...body,
      ...Object.fromEntries((single.get(fact.id) ?? []).map(({ column, to }) => [column, to ?? undefined])),
    }),
    { fields: wordsInUse(counts.table.columns.field), kinds: wordsInUse(tallies.table.columns.kind) },
  )
  const countField = linkByName(
    counts.table.columns.field,
    nouns.fields.map((field) => field.name),
  )
  const inDigest = log.entries.filter(({ fact, about }) => about === 'data' && !waitsForAcceptance(fact, accepted))
  return {
    digest: digestOfIds(inDigest.map(({ fact }) => fact.id)),
    ...askedOf(log, standing),
    ...nouns,
    tables: { ...whole, count: fillFromFieldAndDate(counts.table, countField, nouns.fields), tally: tallies.table },
    countField,
    tallyCount,
    tallyKind: linkByName(
      tallies.table.columns.kind,
      nouns.kinds.map((kind) => kind.name),
    ),
    sheets,
    unfinishedSheets: unfinished,
    conflicts,
  }
}
