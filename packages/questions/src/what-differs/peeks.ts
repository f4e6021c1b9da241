import type { Snapshot } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import type { Finding } from '@thrum/survey'
import { isEarly } from '../contrast/plan.ts'

/**
 * The answer was looked at before, with other counts: each look is another chance to stop at a lucky moment.
 *
 * @param looks how many earlier states of the data it was looked at with, from the log
 */
export function peeks(snapshot: Snapshot, looks: number | undefined): readonly Finding[] {
  if (looks === undefined || looks < 1) return []
  return [
    {
      code: 'repeated-peeks',
      severity: 'warn',
      text: saying('questions/caution/repeated-peeks', { looks }),
      rows: [],
      cure: isEarly(snapshot) || snapshot.plan !== null ? null : saying('questions/caution/repeated-peeks/cure'),
    },
  ]
}
