import type { Snapshot } from '@thrum/model'
import { byGravity, checkCounts, type Finding } from '@thrum/survey'

/** Checks of every science; a science adds one line here. */
const checks: readonly ((snapshot: Snapshot) => readonly Finding[])[] = [checkCounts]

/** What is missing or cannot be right in a project, whatever will be asked of it; the gravest first. */
export function checkProject(snapshot: Snapshot): readonly Finding[] {
  return byGravity(checks.flatMap((check) => check(snapshot)))
}
