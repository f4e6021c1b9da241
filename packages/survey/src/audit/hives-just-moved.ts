import { warningDistance } from '@thrum/biology'
import { numberAt } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { distanceOfHives } from './exposure.ts'
import type { AuditInput, Finding } from './finding.ts'

/** Bees of hives that were just moved still search: counts within so many days warn (product charter). */
const settlingDays = 4

/** Hives further away than honey bees usually fly do not matter to a field [m]. */
const reach = warningDistance('honey-bee')

/** Counts made less than four days after hives were set down within reach of the field. */
export function hivesJustMoved({ snapshot, design }: AuditInput): readonly Finding[] {
  if (snapshot.hives.length === 0) return []
  const { date } = snapshot.tables.count.columns
  const rows = Array.from(design.rows).filter((row) => {
    const day = numberAt(date, row)
    const field = snapshot.fields[snapshot.countField[row] ?? -1]
    return (
      day !== null &&
      snapshot.hives.some((placed) => {
        const { from } = placed
        const metres = distanceOfHives(placed, field)
        return from !== null && metres !== null && metres <= reach && day >= from && day - from < settlingDays
      })
    )
  })
  if (rows.length === 0) return []
  return [
    {
      code: 'hives-just-moved',
      severity: 'warn',
      text: saying('survey/audit/hives-just-moved', { counts: rows.length, days: settlingDays }),
      rows,
      cure: saying('survey/cure/wait-after-move', { days: settlingDays }),
    },
  ]
}
