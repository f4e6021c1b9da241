import type { Severity, Snapshot } from '@thrum/model'
import type { Saying } from '@thrum/model/ground'
import type { Design } from '../design/design.ts'
import type { Tangles } from '../nuisance/tangle.ts'
import type { KindSet } from '../selection/kind-set.ts'

/** What is wrong with a design, in plain words, the counts that show it, and the cheapest cure. */
export interface Finding {
  readonly code: string
  readonly severity: Severity
  readonly text: Saying
  /** Rows of the snapshot's counts. */
  readonly rows: readonly number[]
  readonly cure: Saying | null
}

/** What the audit of a contrast sees: the design and its records, never how many insects there were. */
export interface AuditInput {
  readonly snapshot: Snapshot
  readonly design: Design
  readonly tangles: Tangles
  /** Counts the question is about, before any was left out. */
  readonly selected: readonly number[]
  readonly kinds: readonly KindSet[]
  /** The smallest ratio worth acting on. */
  readonly worth: number
  /** Kind against kind in the same watches: what thins both alike cancels, and can at most warn. */
  readonly relative: boolean
}

const severities: readonly Severity[] = ['block', 'warn', 'note']

/** Findings with the gravest first; order among equals is kept. */
export function byGravity<F extends { readonly severity: Severity }>(findings: readonly F[]): readonly F[] {
  return [...findings].sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity))
}

export function isBlocked(findings: readonly { readonly severity: Severity }[]): boolean {
  return findings.some(({ severity }) => severity === 'block')
}

/** A finding that may block a rate but can at most warn of a relative count. */
export function softened(finding: Finding, relative: boolean): Finding {
  return relative && finding.severity === 'block' ? { ...finding, severity: 'warn' } : finding
}
