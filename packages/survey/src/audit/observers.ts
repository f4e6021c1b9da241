import { saying } from '@thrum/model/ground'
import { type AuditInput, type Finding, softened } from './finding.ts'

/** Share of visits by others from which observers count as exchanged (product charter). */
const exchangedFrom = 0.2
/** An observer with more than this share of a level's visits is that level's observer. Common practice, no source. */
const ownsLevel = 2 / 3

interface Lead {
  readonly code: number
  readonly share: number
  readonly visits: number
}

function leadOf(input: AuditInput, level: number): Lead | null {
  const { snapshot, design } = input
  const { observer } = snapshot.tables.count.columns
  const counts = new Map<number, number>()
  let all = 0
  for (let k = 0; k < design.rows.length; k++) {
    const code = observer.codes[design.rows[k] as number] ?? -1
    if (design.levelOf[k] !== level || code < 0) continue
    counts.set(code, (counts.get(code) ?? 0) + 1)
    all += 1
  }
  const [code, most] = [...counts].reduce((best, next) => (next[1] > best[1] ? next : best), [-1, 0] as [number, number])
  return all === 0 ? null : { code, share: most / all, visits: all }
}

/** Each level watched by an observer of its own: what is seen may be the eyes and not the field. */
export function oneObserverPerLevel(input: AuditInput): readonly Finding[] {
  const { design } = input
  if (design.factor?.about === 'observer' || design.structure === 'before-after-control') return []
  const leads = design.levels.map((_, level) => leadOf(input, level))
  const first = leads[0]
  for (const [k, other] of leads.entries()) {
    if (k === 0 || first === null || first === undefined || other === null || other.code === first.code) continue
    if (Math.min(first.share, other.share) <= ownsLevel) continue
    // Of all visits to the two levels, those made by somebody else than the level's own observer.
    const exchanged = 1 - (first.share * first.visits + other.share * other.visits) / (first.visits + other.visits)
    // A fifth of the visits is a fifth, whatever the last bit of the division says.
    const severity = exchanged >= exchangedFrom - 1e-12 ? 'warn' : 'block'
    const finding: Finding = {
      code: 'one-observer-per-level',
      severity,
      text: saying(`survey/audit/one-observer-per-level/${severity}`, {
        levelA: design.levels[0] ?? '',
        levelB: design.levels[k] ?? '',
        percent: 100 * exchanged,
      }),
      rows: Array.from(design.rows),
      cure: saying('survey/cure/rotate-observers'),
    }
    return [softened(finding, input.relative)]
  }
  return []
}
