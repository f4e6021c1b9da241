import type { Snapshot } from '@thrum/model'
import type { Measure } from '../design/design.ts'
import { durationsDiffer, effortUnknown, levelWithoutEffort } from './effort.ts'
import { type AuditInput, byGravity, type Finding } from './finding.ts'
import { flowersNotCounted } from './flowers.ts'
import { hivesJustMoved } from './hives-just-moved.ts'
import { oneObserverPerLevel } from './observers.ts'
import { outsideBloom, outsideWindow } from './outside-window.ts'
import { notLookedFor, saturatedCounts, unsettledRecords, waitingCells, zerosMissing } from './records.ts'
import { notReplicated } from './replication.ts'
import { sameBeesFields } from './same-bees-fields.ts'
import { sameBeesHives } from './same-bees-hives.ts'
import { everythingDiffered, noControl, tangled, unchecked } from './tangled.ts'

/** Every finding about the design of a contrast, the gravest first. A new finding is one file and one line here. */
export function auditContrast(input: AuditInput): readonly Finding[] {
  const { snapshot, selected, design, kinds } = input
  const isSnapshot = design.unit === 'snapshot'
  const rows = Array.from(design.rows)
  return byGravity([
    ...tangled(input),
    ...noControl(input),
    ...notReplicated(input),
    ...sameBeesHives(input),
    ...sameBeesFields(input),
    ...hivesJustMoved(input),
    ...(input.relative ? [] : ofEffort({ snapshot, selected, entered: rows, measure: design.measure, isSnapshot })),
    ...levelWithoutEffort(input),
    ...zerosMissing(snapshot, selected),
    ...outsideWindow(input),
    ...outsideBloom(input),
    ...oneObserverPerLevel(input),
    ...saturatedCounts(snapshot, rows, kinds),
    ...waitingCells(snapshot, selected, kinds),
    ...notLookedFor(snapshot, selected, kinds),
    ...unchecked(input),
    ...everythingDiffered(input),
    ...unsettledRecords(snapshot),
  ])
}

/** What a rate needs and a relative count does not: minutes, of one length, and flowers where it is per flower. */
function ofEffort({
  snapshot,
  selected,
  entered,
  measure,
  isSnapshot,
}: {
  readonly snapshot: Snapshot
  readonly selected: readonly number[]
  readonly entered: readonly number[]
  readonly measure: Measure
  readonly isSnapshot: boolean
}): readonly Finding[] {
  return [
    ...effortUnknown(snapshot, selected, isSnapshot),
    ...durationsDiffer(snapshot, entered, isSnapshot),
    ...flowersNotCounted(snapshot, selected, measure),
  ]
}

type CountsAudited = Pick<AuditInput, 'snapshot' | 'selected' | 'kinds'>

/** What may be wrong with counts that are compared kind against kind in the same watches: effort cancels. */
export function auditRelativeCounts({ snapshot, selected, kinds }: CountsAudited): readonly Finding[] {
  return byGravity([
    ...zerosMissing(snapshot, selected),
    ...saturatedCounts(snapshot, selected, kinds),
    ...waitingCells(snapshot, selected, kinds),
    ...notLookedFor(snapshot, selected, kinds),
    ...unsettledRecords(snapshot),
  ])
}

/** Every finding about the counts behind a plain rate, the gravest first. */
export function auditRates(
  input: CountsAudited & { readonly measure: Measure; readonly isSnapshot: boolean },
): readonly Finding[] {
  const { snapshot, selected, measure, isSnapshot } = input
  return byGravity([...ofEffort({ snapshot, selected, entered: selected, measure, isSnapshot }), ...auditRelativeCounts(input)])
}
