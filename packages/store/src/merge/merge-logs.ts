import { type Fact, redacted, sheetAccepted } from '@thrum/model'
import { type LongWork, sha256Stream } from '@thrum/model/ground'
import { storeError } from '../errors.ts'
import { sheetOf } from '../fact/sheet-of.ts'
import type { ProjectLog } from '../port.ts'
import { acceptedSheets, filesHeldBack } from './accepted-sheets.ts'

export interface Merged {
  /** Facts that `into` did not have. */
  readonly added: number
  /** Facts it had in a copy that was not the one to keep. */
  readonly replaced: number
  readonly attachments: number
  /** Facts left where they are, because their sheet was never accepted. */
  readonly heldBack: number
}

/**
 * Takes into one log what another holds: the union by id. Doing it twice equals doing it once, and two logs that take
 * from each other end with the same facts in either order. `from` is only read.
 *
 * What is to be forgotten comes first, then attachments, then facts, and the acceptance of sheets last: a merge that is
 * stopped or killed leaves every sheet whole or not counted, and is finished by doing it again. A sheet counts if either
 * log accepted it; facts and files of others are held back. A few hundred facts are in memory at a time.
 *
 * @throws ThrumError as the two logs do; the reason of `work.signal` when stopped
 */
export async function mergeLogs(into: ProjectLog, from: ProjectLog, work: LongWork): Promise<Merged> {
  const accepted = await acceptedSheets([into, from])
  const counts = { added: 0, replaced: 0, heldBack: 0 }
  const progress = { done: 0, total: await from.factCount(), unit: 'fact' }

  const pause = async (): Promise<void> => {
    work.onProgress?.({ ...progress })
    await work.breathe()
    if (work.signal.aborted) throw work.signal.reason
  }
  const take = async (chunks: AsyncIterable<readonly Fact[]>, isWanted: (fact: Fact) => boolean): Promise<void> => {
    for await (const chunk of chunks) {
      const { added, replaced } = await into.append(chunk.filter(isWanted))
      counts.added += added.length
      counts.replaced += replaced.length
      await pause()
    }
  }
  async function* tellingHowFar(chunks: AsyncIterable<readonly Fact[]>): AsyncGenerator<readonly Fact[]> {
    for await (const chunk of chunks) {
      progress.done += chunk.length
      yield chunk
    }
  }
  const isCounted = (fact: Fact): boolean => {
    const sheet = sheetOf(fact)
    return sheet === null || accepted.has(sheet)
  }

  await pause()
  await take(from.factsAfter(0, { kinds: [redacted.kind] }), () => true)
  const attachments = await takeAttachments(into, from, await filesHeldBack(from, accepted), pause)
  await take(tellingHowFar(from.factsAfter(0)), (fact) => {
    if (fact.kind === sheetAccepted.kind) return false
    if (!isCounted(fact)) counts.heldBack += 1
    return isCounted(fact)
  })
  await take(from.factsAfter(0, { kinds: [sheetAccepted.kind] }), isCounted)
  return { ...counts, attachments }
}

async function takeAttachments(
  into: ProjectLog,
  from: ProjectLog,
  heldBack: ReadonlySet<string>,
  pause: () => Promise<void>,
): Promise<number> {
  let taken = 0
  for await (const heads of from.attachments()) {
    for (const { hash, media } of heads) {
      const held = await into.attachment(hash)
      if (held === null && heldBack.has(hash)) continue
      // The same bytes under another media type: both logs keep the smaller name.
      if (held !== null && held.media <= media) continue
      const attachment = await from.attachment(hash)
      if (attachment === null) continue
      const { kept } = await into.putAttachment(media, unchanged(hash, attachment.parts()))
      if (held === null && kept) taken += 1
      await pause()
    }
  }
  return taken
}

/** The same parts; fails behind the last one if they are not what the hash promises, so that nothing of them is kept. */
async function* unchanged(hash: string, parts: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const found = sha256Stream()
  for await (const part of parts) {
    found.update(part)
    yield part
  }
  if (found.hex() !== hash) throw storeError('store/attachment-damaged', { hash })
}
