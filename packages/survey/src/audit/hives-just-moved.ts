import { numberAt } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import type { AuditInput, Finding } from './finding.ts'

/** Bees of hives that were just moved still search: counts within so many days warn (product charter). */
const settlingDays = 4

/** Counts made less than four days after hives were set down at the field. */
export function hivesJustMoved({ snapshot, design }: AuditInput): readonly Finding[] {
  const { date } = snapshot.tables.count.columns
  const rows = Array.from(design.rows).filter((row) => {
    const day = numberAt(date, row)
    const field = snapshot.fields[snapshot.countField[row] ?? -1]?.name
    return (
      day !== null &&
      snapshot.hives.some(
        ({ from, field: near }) => from !== null && (near === null || near === field) && day >= from && day - from < settlingDays,
      )
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
