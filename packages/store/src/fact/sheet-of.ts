import { type Fact, type FactBody, rowsBrought, sheetAccepted, sheetRead } from '@thrum/model'

const ofSheets: ReadonlySet<string> = new Set([sheetRead.kind, rowsBrought.kind, sheetAccepted.kind])

/** The sheet whose acceptance decides whether this fact counts; null where it belongs to none. */
export function sheetOf(fact: Fact): string | null {
  return ofSheets.has(fact.kind) && typeof fact.body.sheet === 'string' ? fact.body.sheet : null
}

/** The hash of the file a sheet was read from; null for every other fact. */
export function fileHashOf(fact: Fact): string | null {
  return fact.kind === sheetRead.kind && typeof fact.body.fileHash === 'string' ? fact.body.fileHash : null
}

/** What is left of the body when a fact is emptied: nothing, but for the two hashes that tell which sheet and file it was of. */
export function emptiedBody(fact: Fact): FactBody {
  const sheet = sheetOf(fact)
  const fileHash = fileHashOf(fact)
  return { ...(sheet === null ? {} : { sheet }), ...(fileHash === null ? {} : { fileHash }) }
}
