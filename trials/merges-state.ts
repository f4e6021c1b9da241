import { type Fact, rowsBrought, sheetAccepted, sheetRead } from '@thrum/model'
import { canonicalJson, sha256Hex } from '@thrum/model/ground'
import type { ProjectLog } from '@thrum/store'

/** Everything two copies must agree on after taking from each other, whatever the order: one line a fact or a file. */
export interface SharedState {
  readonly facts: readonly string[]
  readonly files: readonly string[]
}

/**
 * What a log holds but for `seq`, and but for sheets that were never accepted: those stay where they are.
 * Facts are sorted by id, files by hash.
 */
export async function sharedState(log: ProjectLog): Promise<SharedState> {
  const all: Fact[] = []
  for await (const chunk of log.factsAfter(0)) all.push(...chunk)
  const accepted = new Set(all.filter(({ kind }) => kind === sheetAccepted.kind).map(({ body }) => body.sheet))
  const counts = ({ kind, body }: Fact): boolean =>
    (kind !== sheetRead.kind && kind !== rowsBrought.kind) || body.sheet === undefined || accepted.has(body.sheet)
  const held = all.filter((fact) => !counts(fact)).map(({ body }) => body.fileHash)
  const shared = all.filter(counts)
  const wanted = new Set(shared.map(({ body }) => body.fileHash))
  const files: string[] = []
  for await (const heads of log.attachments()) {
    for (const { hash, media, size } of heads) {
      if (wanted.has(hash) || !held.includes(hash)) files.push(`${hash} ${media} ${size}`)
    }
  }
  return { facts: shared.map(line).sort(), files: files.sort() }
}

function line({ id, kind, v, subject, at, by, device, body, data }: Fact): string {
  return `${id} ${canonicalJson([kind, v, subject, at, by, device, body, data === null ? null : sha256Hex(data)])}`
}
