import type { Snapshot } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { watchedMinutes } from '../design/effort.ts'
import { levelsEmptiedBy } from './emptied-levels.ts'
import type { AuditInput, Finding } from './finding.ts'

/** Durations that differ by more than this within a question warn (methods 1.1). */
export const evenDurations = 1.5

/** Counts whose watched minutes nobody wrote down. */
export function effortUnknown(snapshot: Snapshot, selected: readonly number[], isSnapshot: boolean): readonly Finding[] {
  if (isSnapshot) return []
  const rows = selected.filter((row) => Number.isNaN(watchedMinutes(snapshot, row)))
  if (rows.length === 0) return []
  const severity = rows.length === selected.length ? 'block' : 'warn'
  return [
    {
      code: 'effort-unknown',
      severity,
      text: saying(`survey/audit/effort-unknown/${severity}`, { counts: rows.length, of: selected.length }),
      rows,
      cure: saying('survey/cure/record-minutes'),
    },
  ]
}

/** A level all of whose counts lack effort cannot be compared. */
export function levelWithoutEffort({ snapshot, design }: AuditInput): readonly Finding[] {
  const lost = design.leftOut.find(({ because }) => because === 'no-effort')
  if (lost === undefined) return []
  const empty = levelsEmptiedBy(snapshot, design, lost)
  if (empty.length === 0) return []
  const per = design.measure
  return [
    {
      code: per === 'time' ? 'effort-unknown' : 'flowers-not-counted',
      severity: 'block',
      text: saying(`survey/audit/level-without-effort/${per}`, { level: empty.join(', ') }),
      rows: lost.rows,
      cure: saying(per === 'time' ? 'survey/cure/record-minutes' : 'survey/cure/count-flowers'),
    },
  ]
}

/** Insects already there when a watch starts make short watches look busier (methods 1.1). */
export function durationsDiffer(snapshot: Snapshot, rows: readonly number[], isSnapshot: boolean): readonly Finding[] {
  if (isSnapshot) return []
  let low = Number.POSITIVE_INFINITY
  let high = 0
  for (const row of rows) {
    const minutes = watchedMinutes(snapshot, row)
    if (minutes < low) low = minutes
    if (minutes > high) high = minutes
  }
  if (!(high / low > evenDurations)) return []
  return [
    {
      code: 'durations-differ',
      severity: 'warn',
      text: saying('survey/audit/durations-differ', { shortest: low, longest: high }),
      rows: rows.filter((row) => watchedMinutes(snapshot, row) === low || watchedMinutes(snapshot, row) === high),
      cure: saying('survey/cure/one-duration'),
    },
  ]
}
