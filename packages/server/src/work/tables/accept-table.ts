import { parseMapping } from '@thrum/exchange'
import { bringCounts, bringMended, type Project, requireWritable } from '@thrum/host'
import type { LongWork } from '@thrum/model/ground'
import type { AcceptBody, BroughtTold } from '../../api/table.ts'
import type { TableAt } from '../../thread/protocol.ts'
import type { Desk } from '../desk.ts'
import { readTable } from './offer-table.ts'

/**
 * Brings a table under a mapping. Stopped half way nothing of it counts; brought again it goes on.
 *
 * @throws ThrumError what reading it throws, host/..., store/...
 */
export async function acceptTable(
  desk: Desk,
  project: Project,
  { mapping: json, options = {}, ...at }: TableAt & Pick<AcceptBody, 'mapping' | 'options'>,
  work: LongWork,
): Promise<BroughtTold> {
  requireWritable(project)
  const kept = desk.sheets.read(at)
  const { mends, separate = false, withdrawMissing = false } = options
  const reading = await readTable(project, at, kept, parseMapping(json), { mends, separate }, work)
  if (reading.kind === 'refused') throw reading.because
  const { offered, mended } = reading
  const none = { file: at.name, counts: 0, tallies: 0, corrections: 0, withdrawn: 0, kept: true }
  const digest = async (): Promise<string> => (await project.snapshot()).digest
  if (mended.kind === 'known') return { ...none, state: 'known', digest: await digest() }
  if (mended.kind === 'mended') {
    const done = await bringMended(project, at.name, kept.bytes, mended, { withdrawMissing }, work)
    return { ...none, ...done, state: 'mended', digest: await digest() }
  }
  const { kept: isKept } = await bringCounts(project, at.name, kept.bytes, offered, work)
  const { counts, tallies } = offered.read
  return { ...none, state: 'accepted', counts, tallies, kept: isKept, digest: await digest() }
}
