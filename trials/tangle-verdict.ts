// Puts a made design to the audit, as the question about its contrast would.

import { auditContrast, buildDesign, type Finding, isBlocked, kindSet, selectCounts, tanglesOf } from '@thrum/survey'
import type { MadeDesign } from './tangle-designs.ts'
import { asked, dateOf, snapshotOf } from './tangle-project.ts'

export interface AuditVerdict {
  readonly blocked: boolean
  /** What blocked it: finding and, where it is a tangle, the nuisances. */
  readonly because: readonly string[]
}

function nameOf({ code, text }: Finding): string {
  const nuisance = text.values.nuisance
  if (code !== 'tangled' || !Array.isArray(nuisance)) return code
  return `tangled: ${nuisance.map(({ id }: { readonly id: string }) => id.slice(id.lastIndexOf('/') + 1)).join(' with ')}`
}

export function auditOf(design: MadeDesign): AuditVerdict {
  const snapshot = snapshotOf(design)
  const selected = selectCounts(snapshot, { where: [], except: [], unit: null })
  const set = kindSet(snapshot, 'bee')
  const built = buildDesign(snapshot, selected.rows, selected.unit, {
    between: design.structure === 'before/after' ? null : asked,
    levels: null,
    since: design.since === null ? null : dateOf(design.since),
    step: null,
    measure: 'time',
    window: 'in',
    needsEffort: true,
    kindClass: set.class,
  })
  const findings = auditContrast({
    snapshot,
    design: built,
    tangles: tanglesOf(snapshot, built),
    selected: Array.from(selected.rows),
    kinds: [set],
    worth: 1.5,
    relative: false,
  })
  return {
    blocked: isBlocked(findings),
    because: findings.filter(({ severity }) => severity === 'block').map(nameOf),
  }
}
