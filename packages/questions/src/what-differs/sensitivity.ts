import type { Estimate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { type Contrast, ratioOfContrast } from '@thrum/stats'
import { type Finding, fitFieldUnits, leaveOutVisits, nuisanceSaying, type PairContrast } from '@thrum/survey'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import { finite } from '../contrast/estimates.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'
import { levelNames } from '../contrast/phrases.ts'
import { readVerdict } from '../verdict/read-verdict.ts'

/** Visits that are named, where the verdict hangs on several. */
const visitsNamed = 3

/** Verdict of another contrast of the same pair, by the same rule. */
function verdictOf(asked: ContrastCase, found: PairVerdict, contrast: Contrast): string {
  const limits = (level: number) => ratioOfContrast(contrast, level)
  return readVerdict({ limits, worth: asked.worth, contrasts: found.contrasts, early: asked.early }).verdict
}

const verdictSaying = (verdict: string): Saying => saying(`questions/verdict/${verdict}`)

/** What the rule read of the pair itself: a verdict that was held back for another reason is not compared. */
const readOf = (found: PairVerdict): string => found.read?.verdict ?? found.verdict

/** Visits without which the verdict would be another. */
function influentialVisits(asked: ContrastCase, found: PairVerdict, pair: PairContrast): readonly Finding[] {
  const { snapshot, design, against } = asked
  const changing = leaveOutVisits(snapshot, design, found.kind.tallies, against?.tallies ?? null, pair).flatMap((without) => {
    const verdict = without.contrast === null ? 'design-blocks' : verdictOf(asked, found, without.contrast)
    return verdict === readOf(found) ? [] : [{ ...without, verdict }]
  })
  if (changing.length === 0) return []
  return [
    {
      code: 'influential-visit',
      severity: 'warn',
      text: saying('questions/caution/influential-visit', {
        kind: found.kind.kind.label,
        verdict: verdictSaying(readOf(found)),
        visits: changing.length,
        each: changing
          .slice(0, visitsNamed)
          .map(({ field, date, verdict }) =>
            saying('questions/caution/influential-visit/one', { field, date, verdict: verdictSaying(verdict) }),
          ),
        more: Math.max(0, changing.length - visitsNamed),
      }),
      rows: changing.flatMap(({ rows }) => rows),
      cure: saying('questions/caution/influential-visit/cure'),
    },
  ]
}

/** The same pair adjusted otherwise: for nothing, and with each nuisance left out in turn. */
function adjustedOtherwise(pair: PairContrast): readonly { readonly without: readonly string[]; readonly contrast: Contrast }[] {
  if (pair.nuisances.length === 0) return []
  const oneLess = pair.nuisances.length < 2 ? [] : pair.nuisances.map(({ name }) => [name as string])
  return [pair.nuisances.map(({ name }) => name as string), ...oneLess].flatMap((without) => {
    const fit = fitFieldUnits(
      pair.units,
      pair.level,
      pair.nuisances.filter(({ name }) => !without.includes(name)),
    )
    return fit.kind === 'fitted' ? [{ without, contrast: fit.contrast }] : []
  })
}

function hangsOnAdjustment(asked: ContrastCase, found: PairVerdict, pair: PairContrast): readonly Finding[] {
  const other = adjustedOtherwise(pair).flatMap(({ without, contrast }) => {
    const verdict = verdictOf(asked, found, contrast)
    return verdict === readOf(found) ? [] : [{ without, verdict }]
  })
  if (other.length === 0) return []
  return [
    {
      code: 'hangs-on-adjustment',
      severity: 'warn',
      text: saying('questions/caution/hangs-on-adjustment', {
        kind: found.kind.kind.label,
        verdict: verdictSaying(readOf(found)),
        each: other.map(({ without, verdict }) =>
          saying('questions/caution/hangs-on-adjustment/one', {
            nuisances: without.map((name) => nuisanceSaying(name as Parameters<typeof nuisanceSaying>[0])),
            verdict: verdictSaying(verdict),
          }),
        ),
      }),
      rows: [],
      cure: null,
    },
  ]
}

/** Whether a verdict hangs on one visit, or on what it was adjusted for. */
export function sensitivityFindings(asked: ContrastCase, found: readonly PairVerdict[]): readonly Finding[] {
  return found.flatMap((own) =>
    own.pair.kind === 'refused' || own.verdict === 'design-blocks' || asked.design.measured !== null
      ? []
      : [...influentialVisits(asked, own, own.pair), ...hangsOnAdjustment(asked, own, own.pair)],
  )
}

/** Ratios with each nuisance left out in turn, beside the headline. */
export function sensitivityEstimates(asked: ContrastCase, found: readonly PairVerdict[]): readonly Estimate[] {
  return found.flatMap((own) => {
    const { pair } = own
    if (pair.kind === 'refused' || own.verdict === 'design-blocks' || asked.design.measured !== null) return []
    const kind = own.kind.kind.label
    const level = asked.design.levels[pair.level] ?? ''
    return adjustedOtherwise(pair)
      .filter(({ without }) => without.length < pair.nuisances.length)
      .map(({ without, contrast }): Estimate => {
        const { ratio, lower, upper } = ratioOfContrast(contrast)
        return {
          id: `ratio/${kind}/${level}/without-${without.join('+')}`,
          label: saying('questions/estimate/ratio-without', {
            kind,
            ...levelNames(asked, pair.level),
            nuisances: without.map((name) => nuisanceSaying(name as Parameters<typeof nuisanceSaying>[0])),
          }),
          value: finite(ratio),
          interval: { low: finite(lower), high: finite(upper), level: 0.95 },
          unit: saying('questions/unit/ratio'),
          n: pair.units.z.length,
          counts: 'fields',
          method: saying('questions/method/field-t-adjusted'),
          role: 'beside',
          verdict: null,
        }
      })
  })
}
