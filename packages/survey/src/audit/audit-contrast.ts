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
    ...(input.relative ? [] : effortUnknown(snapshot, selected, isSnapshot)),
    ...levelWithoutEffort(input),
    ...durationsDiffer(snapshot, rows, isSnapshot),
    ...flowersNotCounted(snapshot, selected, design.measure),
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

/** Every finding about the counts behind a plain rate, the gravest first. */
export function auditRates(
  input: Pick<AuditInput, 'snapshot' | 'selected' | 'kinds'> & {
    readonly measure: 'time' | 'flower' | 'area'
    readonly isSnapshot: boolean
  },
): readonly Finding[] {
  const { snapshot, selected, kinds, measure, isSnapshot } = input
  return byGravity([
    ...effortUnknown(snapshot, selected, isSnapshot),
    ...durationsDiffer(snapshot, selected, isSnapshot),
    ...flowersNotCounted(snapshot, selected, measure),
    ...zerosMissing(snapshot, selected),
    ...saturatedCounts(snapshot, selected, kinds),
    ...waitingCells(snapshot, selected, kinds),
    ...notLookedFor(snapshot, selected, kinds),
    ...unsettledRecords(snapshot),
  ])
}
