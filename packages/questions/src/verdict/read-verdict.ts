import type { Verdict } from '@thrum/model'
import { verdictLevels } from '@thrum/stats'

/** Limits of a ratio at any two-sided level; 0 and Infinity where there is none on that side. */
export type LimitsAt = (level: number) => { readonly lower: number; readonly upper: number }

export interface VerdictAsked {
  readonly limits: LimitsAt
  /** S: the smallest ratio worth acting on, above 1. */
  readonly worth: number
  /** Contrasts asked together (kinds times pairs of levels). */
  readonly contrasts: number
  /** True before the last visit of the plan. */
  readonly early: boolean
}

export interface VerdictRead {
  readonly verdict: Exclude<Verdict, 'design-blocks'>
  /** Of `shown`: whether the nearer limit is beyond S. Of `alike`: whether the interval excludes 1 all the same. */
  readonly size: 'worth-acting-on' | 'may-be-too-small' | 'difference-too-small' | 'no-difference-seen' | null
  /** Level of the interval that decided. */
  readonly level: number
}

const excludesOne = ({ lower, upper }: { lower: number; upper: number }): boolean => lower > 1 || upper < 1

/**
 * The verdict rule, tried in this order, the first that fits stands (product charter, "Verdicts of a contrast"):
 * alike, shown, leaning, unsettled. `design-blocks` stands before all of them and is decided by the audit.
 * With m contrasts the levels are 1 - 0.05/m and 1 - 0.10/m; before the last planned visit 1 - 0.001/m decides `shown` and
 * `alike`, and an exclusion at 1 - 0.05/m is only `leaning`.
 */
export function readVerdict({ limits, worth, contrasts, early }: VerdictAsked): VerdictRead {
  const levels = verdictLevels(contrasts)
  const level = early ? levels.early : levels.deciding
  const deciding = limits(level)
  const inside = deciding.lower >= 1 / worth && deciding.upper <= worth
  if (inside) return { verdict: 'alike', size: excludesOne(deciding) ? 'difference-too-small' : 'no-difference-seen', level }
  if (excludesOne(deciding)) {
    const beyond = deciding.lower > 1 ? deciding.lower > worth : deciding.upper < 1 / worth
    return { verdict: 'shown', size: beyond ? 'worth-acting-on' : 'may-be-too-small', level }
  }
  const leaningLevel = early ? levels.deciding : levels.leaning
  if (excludesOne(limits(leaningLevel))) return { verdict: 'leaning', size: null, level: leaningLevel }
  return { verdict: 'unsettled', size: null, level }
}

/** Several contrasts of one question: shown if any is, alike only if all are, blocked only if all are. */
export function combineVerdicts(each: readonly Verdict[]): Verdict {
  if (each.length === 0 || each.every((verdict) => verdict === 'design-blocks')) return 'design-blocks'
  if (each.includes('shown')) return 'shown'
  if (each.every((verdict) => verdict === 'alike')) return 'alike'
  return each.includes('leaning') ? 'leaning' : 'unsettled'
}
