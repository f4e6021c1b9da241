import { areStagesFarApart, bloomWindow, stageGapAllowed } from '@thrum/biology'
import { saying } from '@thrum/model/ground'
import { isOutsideBloom } from '../design/bloom.ts'
import { nuisancesOf } from '../nuisance/nuisance.ts'
import { levelsEmptiedBy } from './emptied-levels.ts'
import { type AuditInput, type Finding, softened } from './finding.ts'

/** Counts made when insects could not fly: left out of the headline, shown with and without; a whole level of them blocks. */
export function outsideWindow({ snapshot, design }: AuditInput): readonly Finding[] {
  const out = design.leftOut.find(({ because }) => because === 'outside-window')
  if (out === undefined) return []
  const empty = levelsEmptiedBy(snapshot, design, out)
  if (empty.length > 0) {
    return [
      {
        code: 'outside-window',
        severity: 'block',
        text: saying('survey/audit/outside-window/level', { level: empty.join(', ') }),
        rows: out.rows,
        cure: saying('survey/cure/count-in-window'),
      },
    ]
  }
  return [
    {
      code: 'outside-window',
      severity: 'warn',
      text: saying('survey/audit/outside-window/warn', { counts: out.rows.length }),
      rows: out.rows,
      cure: saying('survey/cure/count-in-window'),
    },
  ]
}

/** Stages more than four codes apart in a comparison that leaves the stage out (methods 1.4). */
export function stagesApart(input: AuditInput, adjusted: readonly string[]): readonly Finding[] {
  const { snapshot, design } = input
  if (design.factor?.about === 'stage' || adjusted.includes('stage')) return []
  const stage = nuisancesOf(snapshot, design).find(({ name }) => name === 'stage')?.columns[0]
  if (stage === undefined) return []
  const means = design.levels
    .map((_, level) => {
      let sum = 0
      let effort = 0
      for (let k = 0; k < stage.length; k++) {
        if (design.levelOf[k] !== level || Number.isNaN(stage[k] as number)) continue
        sum += (stage[k] as number) * (design.effort[k] as number)
        effort += design.effort[k] as number
      }
      return sum / effort
    })
    .filter((mean) => !Number.isNaN(mean))
  const low = means.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY)
  const high = means.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY)
  if (means.length < 2 || !areStagesFarApart(low, high)) return []
  const finding: Finding = {
    code: 'stages-apart',
    severity: 'block',
    text: saying('survey/audit/stages-apart', { low, high, allowed: stageGapAllowed }),
    rows: Array.from(design.rows),
    cure: saying('survey/cure/same-stage'),
  }
  return [softened(finding, input.relative)]
}

/** Counts at stages at which a crop has hardly any flowers open, or none (methods 1.4). */
export function outsideBloom({ snapshot, design }: AuditInput): readonly Finding[] {
  const rows = Array.from(design.rows).filter((row) => isOutsideBloom(snapshot, row))
  if (rows.length === 0 || design.factor?.about === 'stage') return []
  return [
    {
      code: 'outside-bloom',
      severity: 'warn',
      text: saying('survey/audit/outside-bloom', { counts: rows.length, from: bloomWindow.from, to: bloomWindow.to }),
      rows,
      cure: null,
    },
  ]
}
