import type { ForgottenKey } from '@thrum/exchange'
import {
  amended,
  type BodyOf,
  type CellHistory,
  cellSettled,
  type Fact,
  readCorrections,
  readFact,
  redacted,
  type Snapshot,
  sheetRead,
  withdrawn,
} from '@thrum/model'
import type { Project } from '../project/project.ts'
import { type BroughtSheet, readBroughtSheets } from './brought-rows.ts'
import { createRowNames } from './row-names.ts'

/** A withdrawal: what it took back, and why. */
export interface Withdrawal {
  readonly fact: Fact
  readonly of: string
  readonly reason: string
  /** The sheet whose mended file no longer has the row; null where a person took it back. */
  readonly sheet: string | null
}

/** A project with all that was ever corrected in it: what correcting, settling and looking back need to know. */
export interface CorrectedProject {
  readonly project: Project
  readonly snapshot: Snapshot
  readonly sheets: readonly BroughtSheet[]
  readonly histories: readonly CellHistory[]
  /** The same by cell: address, a line end, column. */
  readonly byCell: ReadonlyMap<string, CellHistory>
  readonly withdrawals: readonly Withdrawal[]
  /** Addresses that are taken back: rows and facts by a withdrawal, what a mended file said with that file. */
  readonly takenBack: ReadonlySet<string>
  /** Rows and facts that were forgotten one by one, by address, with what recognises a row in a mended file. */
  readonly forgotten: ReadonlyMap<string, { readonly keys: readonly ForgottenKey[] }>
  /** A row as a person can name it. */
  readonly nameOf: (address: string) => string
}

function forgottenBy(fact: Fact): readonly (readonly [of: string, { readonly keys: readonly ForgottenKey[] }])[] {
  const read = fact.kind === redacted.kind ? readFact(fact) : null
  if (read?.kind !== 'read') return []
  const { of, keys = [] } = read.body as BodyOf<typeof redacted>
  return of === undefined ? [] : [[of, { keys }]]
}

/** Reads a project for correcting. Its author's clock is then ahead of every fact in it. @throws ThrumError store/... */
export async function readCorrected(project: Project): Promise<CorrectedProject> {
  const snapshot = await project.snapshot()
  const facts: Fact[] = []
  const kinds = [amended.kind, cellSettled.kind, withdrawn.kind, redacted.kind, sheetRead.kind]
  for await (const chunk of project.log.factsAfter(0, { kinds })) facts.push(...chunk)
  const withdrawals = facts.flatMap((fact): Withdrawal[] => {
    const read = fact.kind === withdrawn.kind ? readFact(fact) : null
    if (read?.kind !== 'read') return []
    const { of, reason, sheet = null } = read.body as BodyOf<typeof withdrawn>
    return [{ fact, of, reason, sheet }]
  })
  const forgotten = new Map(facts.flatMap(forgottenBy))
  const sheets = await readBroughtSheets(project)
  const { histories, takenBack } = readCorrections(facts)
  const byCell = new Map(histories.map((history) => [`${history.of}\n${history.column}`, history]))
  return { project, snapshot, sheets, histories, byCell, withdrawals, takenBack, forgotten, nameOf: createRowNames(sheets) }
}

export function historyOf({ byCell }: Pick<CorrectedProject, 'byCell'>, of: string, column: string): CellHistory | null {
  return byCell.get(`${of}\n${column}`) ?? null
}

/** Withdrawals of an address that themselves stand. */
export function standingWithdrawals(
  { withdrawals, takenBack }: Pick<CorrectedProject, 'withdrawals' | 'takenBack'>,
  of: string,
): readonly Withdrawal[] {
  return withdrawals.filter((own) => own.of === of && !takenBack.has(own.fact.id))
}

/** What a new correction of a cell is made in knowledge of. */
export function knowledgeOf(history: CellHistory | null): {
  readonly after: string | null
  readonly knowing?: string[]
} {
  const after = history?.standing?.fact.id ?? null
  const others = (history?.open ?? []).map(({ fact }) => fact.id).filter((id) => id !== after)
  return others.length === 0 ? { after } : { after, knowing: others }
}
