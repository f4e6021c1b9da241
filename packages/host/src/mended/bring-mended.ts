import { basename } from 'node:path'
import { asCorrection, type CellDifference, onlyNew, sheetFacts, sheetId } from '@thrum/exchange'
import { amended, type Fact, makeFact, withdrawn } from '@thrum/model'
import { canonicalJson, type LongWork, sha256Hex, ThrumError } from '@thrum/model/ground'
import { textIn, versionsOf } from '../corrections/brought-rows.ts'
import { amendmentOf } from '../corrections/correct.ts'
import type { Project } from '../project/project.ts'
import type { MendedOffer } from './offer-mended.ts'

/** What accepting a mended file did. */
export interface MendedBrought {
  readonly corrections: number
  readonly counts: number
  readonly tallies: number
  readonly withdrawn: number
  /** False where the file itself was not kept, because it holds what is forgotten here. */
  readonly kept: boolean
}

/** What earlier versions set aside as a whole, by its text. */
function knownAsides({ corrected, mends }: MendedOffer): (written: string) => boolean {
  const written = new Set<string>()
  for (const sheet of versionsOf(mends, corrected.sheets)) {
    for (const batch of sheet.batches.filter(({ table }) => table === 'setAside')) {
      for (let row = 0; row < batch.rows; row++) {
        if (textIn(batch, 'column', row) === null) written.add(textIn(batch, 'written', row) ?? '')
      }
    }
  }
  return (text) => written.has(text)
}

/**
 * Accepts a mended file: changed cells become corrections, new rows a new batch, and rows that are gone are withdrawn if the
 * person says so. The corrections come in one step with the word that makes the new rows count: stopped before it, nothing
 * of it counts. Ids follow from content, so that the same file accepted at two copies is the same facts.
 *
 * @throws ThrumError store/..., host/stopped
 */
export async function bringMended(
  project: Project,
  path: string,
  bytes: Uint8Array,
  offer: MendedOffer,
  options: { readonly withdrawMissing?: boolean },
  work: LongWork,
): Promise<MendedBrought> {
  const { plan, offered, corrected } = offer
  const file = basename(path)
  const id = corrected.snapshot.project?.id
  if (id === undefined) throw new ThrumError('host/no-project-record', { file: project.path })
  const tables = onlyNew(offered.read, plan, knownAsides(offer))
  const content = sha256Hex(canonicalJson([[...plan.added], plan.addedTallies.map(({ of, label, line }) => [of, label, line])]))
  const mends = { sheet: offer.mends.sheet, content }
  const sheet = sheetId(id, offered.sheet.fileHash, offered.mapping, mends)
  const read = { ...offered.read, tables }
  const facts = [...sheetFacts({ project: id, file, bytes, mapping: offered.mapping, read, author: project.author, mends })]
  const accepted = facts.pop()
  // A file that holds a forgotten row is not kept.
  const kept = plan.forgottenLines.length === 0 && (await project.log.putAttachment('text/csv', [bytes])).kept
  for (const fact of facts) {
    if (work.signal.aborted) throw new ThrumError('host/stopped', { file })
    await project.log.append([fact])
    await work.breathe()
  }
  const corrections = plan.changed.map((cell) => correctionBy(project, offer, sheet, file, cell))
  const gone =
    options.withdrawMissing === true ? [...plan.gone.map(({ address }) => address), ...plan.goneTallies.map(({ of }) => of)] : []
  const withdrawals = gone.map((of) =>
    makeFact(withdrawn, { of, reason: `no longer in ${file}`, sheet }, project.author, {
      id: sha256Hex(canonicalJson([sheet, 'withdrawn', of])),
      subject: of,
    }),
  )
  await project.log.append([...corrections, ...withdrawals, ...(accepted === undefined ? [] : [accepted])])
  return {
    corrections: corrections.length,
    counts: plan.added.length,
    tallies: plan.addedTallies.length,
    withdrawn: withdrawals.length,
    kept,
  }
}

function correctionBy(project: Project, offer: MendedOffer, sheet: string, file: string, cell: CellDifference): Fact {
  const body = {
    ...amendmentOf(offer.corrected, cell, cell.from, cell.to),
    ...asCorrection(cell.to),
    reason: `as in ${file}, line ${cell.line}`,
    sheet,
  }
  const { of, column, to, mark, after, knowing } = { mark: undefined, knowing: undefined, ...body }
  return makeFact(amended, body, project.author, {
    id: sha256Hex(canonicalJson([sheet, 'amended', of, column, to, mark ?? null, after, knowing ?? []])),
    subject: of,
  })
}
