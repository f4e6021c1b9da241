import type { Snapshot } from '@thrum/model'
import { sha256Hex } from '@thrum/model/ground'
import { shippedSeed } from '../demonstration/shipped-seed.ts'

/** True for the demonstration that is shipped, whatever was added to it: nothing that it came with is real. */
export function isDemonstration({ project }: Pick<Snapshot, 'project'>): boolean {
  return project?.id === sha256Hex(`ostrel vale/${shippedSeed}`)
}
