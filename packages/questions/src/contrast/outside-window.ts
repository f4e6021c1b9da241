import { saying } from '@thrum/model/ground'
import type { Finding } from '@thrum/survey'

/** Counts that were left out because they were made when the insects could not be expected to fly. */
export function leftOutOfWindow(rows: readonly number[]): readonly Finding[] {
  if (rows.length === 0) return []
  return [
    {
      code: 'outside-window',
      severity: 'warn',
      text: saying('questions/caution/outside-window', { counts: rows.length }),
      rows,
      cure: saying('survey/cure/count-in-window'),
    },
  ]
}
