import { sheetAccepted, sheetRead } from '@thrum/model'
import { fileHashOf, sheetOf } from '../fact/sheet-of.ts'
import type { ProjectLog } from '../port.ts'

/** The names of all sheets that count in at least one of these logs. */
export async function acceptedSheets(logs: readonly ProjectLog[]): Promise<ReadonlySet<string>> {
  const accepted = new Set<string>()
  for (const log of logs) {
    for await (const facts of log.factsAfter(0, { kinds: [sheetAccepted.kind] })) {
      for (const fact of facts) {
        const sheet = sheetOf(fact)
        if (sheet !== null) accepted.add(sheet)
      }
    }
  }
  return accepted
}

/** Hashes of the files behind sheets that do not count, unless a sheet that does came from the same file. */
export async function filesHeldBack(log: ProjectLog, accepted: ReadonlySet<string>): Promise<ReadonlySet<string>> {
  const held = new Set<string>()
  const wanted = new Set<string>()
  for await (const facts of log.factsAfter(0, { kinds: [sheetRead.kind] })) {
    for (const fact of facts) {
      const sheet = sheetOf(fact)
      const fileHash = fileHashOf(fact)
      if (sheet === null || fileHash === null) continue
      if (accepted.has(sheet)) wanted.add(fileHash)
      else held.add(fileHash)
    }
  }
  for (const hash of wanted) held.delete(hash)
  return held
}
