import { forgottenKeys, parseMapping } from '@thrum/exchange'
import { addressOf, type BodyOf, redacted, sheetAccepted } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { heldRows } from '../mended/held-rows.ts'
import { type BroughtSheet, numberIn, placeOf, textIn, versionsOf } from './brought-rows.ts'
import type { CorrectedProject } from './corrected-project.ts'
import { findRow } from './find-row.ts'
import { talliesOfCount } from './row-cells.ts'
import { latestVersions } from './row-names.ts'

/** What a `redacted` fact says of one fact or row, but for the reason. */
export type ForgottenOf = Pick<BodyOf<typeof redacted>, 'keys'> & { readonly of: string }

/** What was set aside of a row when its file was read: its cells that waited, as they were written. */
function asidesOf({ sheets }: CorrectedProject, address: string): readonly string[] {
  const place = placeOf(sheets, address)
  if (place === null) return []
  const { sheet, batch, row } = place
  const line = numberIn(batch, 'line', row)
  return sheet.batches
    .filter(({ table }) => table === 'setAside')
    .flatMap((aside) =>
      Array.from({ length: aside.rows }, (_, at) => at)
        .filter(
          (at) =>
            (textIn(aside, 'table', at) === batch.table && numberIn(aside, 'row', at) === batch.first + row) ||
            (line !== null && numberIn(aside, 'line', at) === line),
        )
        .map((at) => addressOf(aside.id, at)),
    )
}

/** What recognises a count in a mended file once nothing is left of it. */
function keysOf(corrected: CorrectedProject, address: string): ForgottenOf['keys'] {
  const sheet = placeOf(corrected.sheets, address)?.sheet
  if (sheet === undefined) return []
  const latest = latestVersions(corrected.sheets).get(sheet.sheet) ?? sheet
  const held = heldRows(corrected, versionsOf(latest, corrected.sheets))
  const row = Array.from({ length: held.rows }, (_, at) => at).find((at) => held.address(at) === address)
  return row === undefined ? [] : [...forgottenKeys(held, row, parseMapping(latest.mapping))]
}

/** A file with all that it brought, and what it corrected and withdrew as a mended one; but not the word that accepted it. */
async function factsOfFile(
  { project, histories, withdrawals }: CorrectedProject,
  file: BroughtSheet,
): Promise<readonly string[]> {
  const own: string[] = []
  for await (const facts of project.log.factsBySubject(file.sheet)) {
    own.push(...facts.filter(({ kind }) => kind !== sheetAccepted.kind).map(({ id }) => id))
  }
  const said = histories.flatMap(({ steps }) => steps).filter(({ sheet }) => sheet === file.sheet)
  const gone = withdrawals.filter(({ sheet }) => sheet === file.sheet)
  return [...new Set([file.fact, ...own, ...[...said, ...gone].map(({ fact }) => fact.id)])]
}

/**
 * Every fact and row that goes when a person forgets a row, a fact or a file: a count with its tallies, and what was set aside
 * of them. What corrections and withdrawals say of these goes by itself, in every copy.
 *
 * @throws ThrumError host/row/..., host/forget/never
 */
export async function whatGoesWith(corrected: CorrectedProject, name: string): Promise<readonly ForgottenOf[]> {
  const found = await findRow(corrected, name)
  if (found.kind === 'file') return (await factsOfFile(corrected, found.sheet)).map((of) => ({ of }))
  if (found.kind === 'fact') {
    const { id, kind } = found.fact
    if (kind === 'project-described' || kind === redacted.kind || kind === sheetAccepted.kind) {
      throw new ThrumError('host/forget/never', { kind })
    }
    return [{ of: id }]
  }
  const { address } = found
  const tallies = found.kind === 'count' ? talliesOfCount(corrected, address).map((tally) => tally.address) : []
  const asides = new Set([address, ...tallies].flatMap((own) => asidesOf(corrected, own)))
  const keys = found.kind === 'count' ? keysOf(corrected, address) : []
  return [{ of: address, keys }, ...[...tallies, ...asides].map((of) => ({ of }))]
}

/** Files of later versions that still have one of these rows, which an earlier version brought. */
export function filesWithRows(sheets: readonly BroughtSheet[], isForgotten: (address: string) => boolean): readonly string[] {
  const holds = ({ batches }: BroughtSheet): boolean =>
    batches.some(
      (batch) =>
        batch.table === 'heldLine' &&
        Array.from({ length: batch.rows }, (_, at) => at).some((at) =>
          isForgotten(addressOf(textIn(batch, 'source', at) ?? '', numberIn(batch, 'row', at) ?? -1)),
        ),
    )
  return sheets.filter(holds).map(({ file }) => file)
}
