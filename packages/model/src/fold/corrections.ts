import { type MarkName, mark } from '../columns/mark.ts'
import type { Fact } from '../facts/fact.ts'
import { amended, type BodyOf, cellSettled } from '../facts/kinds.ts'
import type { Conflict } from '../snapshot/snapshot.ts'
import { type ReadLog, readLog } from './read-log.ts'

/** What stands in a cell after all corrections of it. */
export interface Correction {
  readonly of: string
  readonly column: string
  readonly to: string | number | null
  readonly mark: number
  readonly fact: string
  /** The moment of that correction. */
  readonly at: string
}

/** One correction, or the settling of a cell that waited. */
export interface CellStep {
  readonly fact: Fact
  readonly to: string | number | null
  readonly mark: number
  /** The last correction of the cell that was known where this one was made, and the others that were known beside it. */
  readonly knew: readonly string[]
  /** Null where a cell was settled: what was written says why. */
  readonly reason: string | null
  /** The sheet whose mended file says so; null where a person does. */
  readonly sheet: string | null
  /** True where a withdrawal that itself stands has taken it back, or the mended file that said it. */
  readonly takenBack: boolean
}

/** All that happened to one cell. */
export interface CellHistory {
  readonly of: string
  readonly column: string
  /** In log order, those taken back among them. */
  readonly steps: readonly CellStep[]
  /** The one that stands; null where all were taken back. */
  readonly standing: CellStep | null
  /** Those that no other was made in knowledge of: a person decides if they differ. */
  readonly open: readonly CellStep[]
}

type Body = BodyOf<typeof amended> | BodyOf<typeof cellSettled>

function markOf(body: Body): number {
  const name: MarkName | undefined =
    body.mark ?? ('approximate' in body && body.approximate === true ? 'approximate' : body.to === null ? 'lost' : undefined)
  return mark[name ?? 'asWritten']
}

function stepOf(log: ReadLog, fact: Fact, body: Body): CellStep {
  return {
    fact,
    to: body.to,
    mark: markOf(body),
    knew: [...(body.after == null ? [] : [body.after]), ...(body.knowing ?? [])],
    reason: 'reason' in body ? body.reason : null,
    sheet: 'sheet' in body ? (body.sheet ?? null) : null,
    takenBack: log.withdrawn.has(fact.id),
  }
}

/** Ids of the steps that some standing step was made in knowledge of, straight or through others. */
function everKnown(steps: readonly CellStep[]): ReadonlySet<string> {
  const byId = new Map(steps.map((step) => [step.fact.id, step]))
  const known = new Set<string>()
  const pending = steps.filter(({ takenBack }) => !takenBack).flatMap(({ knew }) => knew)
  for (let id = pending.pop(); id !== undefined; id = pending.pop()) {
    if (known.has(id)) continue
    known.add(id)
    pending.push(...(byId.get(id)?.knew ?? []))
  }
  return known
}

/** What happened to each cell that was ever corrected or settled. */
function historiesOf(log: ReadLog): readonly CellHistory[] {
  const kinds: readonly string[] = [amended.kind, cellSettled.kind]
  // Entries are in log order, so the last that stands is the latest.
  const entries = log.entries
    .filter(({ fact }) => kinds.includes(fact.kind))
    .map(({ fact, body }) => ({ fact, body: body as Body }))
  const cells = Map.groupBy(entries, ({ body }) => JSON.stringify([body.of, body.column]))
  return [...cells].map(([cell, list]) => {
    const [of, column] = JSON.parse(cell) as [string, string]
    const steps = list.map(({ fact, body }) => stepOf(log, fact, body))
    const standing = steps.filter(({ takenBack }) => !takenBack)
    const known = everKnown(steps)
    return { of, column, steps, standing: standing.at(-1) ?? null, open: standing.filter(({ fact }) => !known.has(fact.id)) }
  })
}

/** What a log says of corrections and withdrawals. */
export interface CorrectionsRead {
  readonly histories: readonly CellHistory[]
  /** Addresses that are taken back: a row or a fact by a withdrawal, what a mended file said with that file. */
  readonly takenBack: ReadonlySet<string>
}

/**
 * What happened to each cell, and what was taken back. Facts in any order; corrections, settlements, withdrawals, redactions
 * and the `sheet-read` of mended files among them are enough.
 */
export function readCorrections(facts: Iterable<Fact>): CorrectionsRead {
  const log = readLog(facts)
  return { histories: historiesOf(log), takenBack: log.withdrawn }
}

/** True where corrections that knew nothing of each other say different things. */
export function isContested({ open }: Pick<CellHistory, 'open'>): boolean {
  return new Set(open.map((step) => JSON.stringify([step.to, step.mark]))).size > 1
}

/** The latest correction of each cell, and the cells where two were made without knowledge of each other. */
export function corrections(log: ReadLog): { readonly standing: readonly Correction[]; readonly conflicts: readonly Conflict[] } {
  const histories = historiesOf(log)
  return {
    standing: histories.flatMap(({ of, column, standing }) =>
      standing === null
        ? []
        : [{ of, column, to: standing.to, mark: standing.mark, fact: standing.fact.id, at: standing.fact.at }],
    ),
    conflicts: histories.filter(isContested).map(({ of, column, open }) => ({
      of,
      column,
      choices: open.map(({ fact, to }) => ({ fact: fact.id, to, by: fact.by, at: fact.at })),
    })),
  }
}
