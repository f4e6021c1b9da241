import { type Author, createLogicalClock, type Fact, fieldDescribed, makeFact } from '@thrum/model'
import { sha256Hex } from '@thrum/model/ground'

/** Who writes in one round of the trial. The clock is the round's own: a second passes between two facts. */
export function roundAuthor(round: string): Author {
  let now = Date.UTC(2026, 4, 4, 9)
  const clock = { now: () => (now += 1000), monotonic: () => now, zone: () => 'UTC' }
  return { by: 'observer 1', device: round, clock: createLogicalClock(clock, round) }
}

/** A fact whose content follows from its id, so that whoever reads it can tell whether it is as it was. */
export function factOf(id: string, author: Author): Fact {
  return makeFact(fieldDescribed, bodyOf(id), author, { id, subject: id, data: dataOf(id) })
}

export function isAsWritten(fact: Fact): boolean {
  const { field, crop } = bodyOf(fact.id)
  return (
    fact.body.field === field && fact.body.crop === crop && Buffer.compare(fact.data ?? new Uint8Array(), dataOf(fact.id)) === 0
  )
}

function bodyOf(id: string): { readonly field: string; readonly crop: string } {
  return { field: id, crop: sha256Hex(id) }
}

/** From nothing to 40 kB, so that a kill meets commits of one page and of many. */
function dataOf(id: string): Uint8Array {
  const digest = sha256Hex(id)
  return new Uint8Array(
    Number.parseInt(digest.slice(0, 2), 16) < 200 ? 0 : Number.parseInt(digest.slice(2, 6), 16) % 40_000,
  ).fill(7)
}

/** Bytes of an attachment: the hash tells whether they are whole. */
export function attachmentOf(id: string): Uint8Array {
  const digest = sha256Hex(id)
  const size = Number.parseInt(digest.slice(0, 6), 16) % 3_000_000
  return Uint8Array.from({ length: size }, (_, k) => (k * 31 + digest.charCodeAt(k % 64)) & 255)
}
