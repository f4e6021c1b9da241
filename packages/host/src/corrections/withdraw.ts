import { makeFact, sheetAccepted, withdrawn } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { type Project, requireWritable } from '../project/project.ts'
import { namedCell } from './correct.ts'
import { type CorrectedProject, readCorrected, standingWithdrawals } from './corrected-project.ts'
import { fileNameOf } from './file-versions.ts'
import { type Found, findRow } from './find-row.ts'
import { talliesOfCount, toldCount } from './row-cells.ts'

/** What a withdrawal took back. */
export type WithdrawnWhat = 'count' | 'tally' | 'row' | 'file' | 'correction' | 'withdrawal' | 'fact'

export interface WithdrawalMade {
  readonly fact: string
  readonly of: string
  readonly what: WithdrawnWhat
  readonly row: string
  /** Where and when the count was; empty for others. */
  readonly told: string
  /** Tallies that go with a count. */
  readonly tallies: number
}

function whatOf(found: Found, isTally: boolean): WithdrawnWhat {
  if (isTally) return 'tally'
  if (found.kind !== 'fact') return found.kind
  if (found.fact.kind === 'amended' || found.fact.kind === 'cell-settled') return 'correction'
  return found.fact.kind === 'withdrawn' ? 'withdrawal' : 'fact'
}

/** A later version of a file holds only what was new in it, so an earlier one cannot go alone. */
function requireLatest({ sheets }: CorrectedProject, of: string): void {
  const sheet = sheets.find(({ fact }) => fact === of)
  const later = sheets.find(({ mends, stands }) => stands && mends === sheet?.sheet)
  if (sheet === undefined || later === undefined) return
  throw new ThrumError('host/withdraw/mended', { row: fileNameOf(sheet, sheets), by: fileNameOf(later, sheets) })
}

/**
 * Takes back a count with its tallies, one tally of it (`kind`), any other row, a file with all its rows, any fact, a
 * correction or a withdrawal. What a mended file corrected goes with it. Nothing is deleted: a withdrawal can be withdrawn.
 *
 * @throws ThrumError host/row/..., host/cell/..., host/withdraw/already, host/withdraw/mended (a later version stands),
 *   host/withdraw/never, host/correct/no-reason, host/read-only
 */
export async function withdraw(
  project: Project,
  asked: { readonly row: string; readonly kind?: string | undefined; readonly reason: string },
): Promise<WithdrawalMade> {
  requireWritable(project)
  const reason = asked.reason.trim()
  if (reason === '') throw new ThrumError('host/correct/no-reason')
  const corrected = await readCorrected(project)
  const found = await findRow(corrected, asked.row)
  const cell = asked.kind === undefined ? null : namedCell(corrected, found, asked.kind)
  if (cell !== null && cell.table !== 'tally') throw new ThrumError('host/withdraw/no-kind', { name: asked.kind ?? '' })
  if (
    found.kind === 'fact' &&
    ([sheetAccepted.kind, 'redacted', 'project-described'] as const).some((kind) => kind === found.fact.kind)
  ) {
    throw new ThrumError('host/withdraw/never', { kind: found.fact.kind })
  }
  const address = found.kind === 'fact' ? found.fact.id : found.kind === 'file' ? found.sheet.fact : found.address
  const of = cell?.of ?? address
  requireLatest(corrected, of)
  const row = found.kind === 'fact' || found.kind === 'row' ? address : found.name
  if (standingWithdrawals(corrected, of).length > 0) throw new ThrumError('host/withdraw/already', { row })
  const fact = makeFact(withdrawn, { of, reason }, project.author, { subject: of })
  await project.log.append([fact])
  const what = whatOf(found, cell !== null)
  return {
    fact: fact.id,
    of,
    what,
    row,
    told: found.kind === 'count' ? toldCount(corrected, found.address) : '',
    tallies: what === 'count' ? talliesOfCount(corrected, of).length : 0,
  }
}
