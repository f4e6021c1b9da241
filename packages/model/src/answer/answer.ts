import type { RowAddress } from '../facts/fact.ts'
import type { Saying } from '../ground/index.ts'
import type { ComparedAnalyses } from './analyses.ts'
import type { Figure } from './figure.ts'
import type { Verdict } from './verdict.ts'

export interface Interval {
  /** null: no limit on that side. */
  readonly low: number | null
  readonly high: number | null
  readonly level: number
}

export interface Estimate {
  /** Stable name inside the answer, e.g. `rate/bumble bee` or `ratio/bumble bee/strip`. */
  readonly id: string
  readonly label: Saying
  readonly value: number | null
  readonly interval: Interval
  readonly unit: Saying
  /** How its numbers read: a share in per cent, a ratio or anything else by its digits. */
  readonly scale: 'ratio' | 'share' | 'plain'
  /** Number of independent units, and what they are. */
  readonly n: number
  readonly counts: 'fields' | 'pairs of fields' | 'watches'
  readonly method: Saying
  readonly role: 'headline' | 'beside'
  /** Verdict of this one contrast, where it is one. */
  readonly verdict: Verdict | null
}

export type Severity = 'note' | 'warn' | 'block'

/** A finding of the audit: what is wrong, in plain words, the rows that show it, and the cheapest cure. */
export interface Caution {
  readonly code: string
  readonly severity: Severity
  readonly text: Saying
  /** The first rows that show it, and how many there are in all. */
  readonly evidence: readonly RowAddress[]
  readonly evidenceRows: number
  readonly cure: Saying | null
}

export interface Reference {
  readonly source: string
  /** published, computed, from memory, common practice */
  readonly trust: 'published' | 'computed' | 'from memory' | 'common practice, no source'
}

export interface Method {
  readonly name: Saying
  readonly equation: string
  readonly choices: readonly Saying[]
  readonly checks: readonly Saying[]
  readonly references: readonly Reference[]
}

/** The recipe of an answer: with it and the project's facts anyone gets the same answer again. */
export interface Recipe {
  readonly digest: string
  readonly options: { readonly [name: string]: string | number | boolean | readonly string[] }
  readonly rows: { readonly selected: number; readonly of: number }
  readonly seed: string
  readonly random: string
  readonly thrum: string
}

/** Answer, JSON version 1. Plain data: it can be printed, sent to a worker and kept. */
export interface Answer {
  readonly version: 1
  readonly question: string
  /** The question as a sentence, its blanks filled. */
  readonly asked: Saying
  readonly verdict: Verdict | null
  readonly evidence: 'counted' | 'modelled'
  readonly headline: Saying
  readonly claims: { readonly canSay: readonly Saying[]; readonly cannotSay: readonly Saying[] }
  readonly estimates: readonly Estimate[]
  /** The comparisons by other defensible analyses; absent where none is compared, or the design blocks. */
  readonly analyses?: readonly ComparedAnalyses[]
  readonly cautions: readonly Caution[]
  readonly method: Method
  readonly figures: readonly Figure[]
  readonly next: readonly Saying[]
  readonly receipt: Recipe
}

/** How many rows of evidence an answer carries; the rest is counted. */
export const evidenceShown = 40
