import type { Estimate, Verdict } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { type Contrast, ratioOfContrast } from '@thrum/stats'
import {
  type Finding,
  fitStanding,
  leaveOutVisits,
  nuisanceSaying,
  type PairContrast,
  type UnitNuisance,
  type WithoutVisit,
} from '@thrum/survey'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'
import { ratioEstimate } from '../contrast/ratio-estimate.ts'
import { readVerdict } from '../verdict/read-verdict.ts'

/** Visits that are named, where the verdict hangs on several. */
const visitsNamed = 3

/** Verdict of another contrast of the same pair, by the same rule. */
export function verdictOf(asked: ContrastCase, found: PairVerdict, contrast: Contrast): Verdict {
  const limits = (level: number) => ratioOfContrast(contrast, level)
  return readVerdict({ limits, worth: asked.worth, contrasts: found.contrasts, early: asked.early }).verdict
}

export const verdictSaying = (verdict: Verdict): Saying => saying(`questions/verdict/${verdict}`)

/** What the rule read of the pair itself: a verdict that was held back for another reason is not compared. */
export const readOf = (found: PairVerdict): Verdict => found.read?.verdict ?? found.verdict

/** Verdict without a visit; blocked where what is left can no longer be compared. */
export const verdictWithout = (asked: ContrastCase, found: PairVerdict, { contrast }: WithoutVisit): Verdict =>
  contrast === null ? 'design-blocks' : verdictOf(asked, found, contrast)

/** Visits without which the verdict would be another. */
function influentialVisits(asked: ContrastCase, found: PairVerdict, visits: OtherFits['visits']): readonly Finding[] {
  const changing = visits.flatMap((without) => {
    const verdict = verdictWithout(asked, found, without)
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

/** A pair adjusted otherwise than in the headline. */
export interface AdjustedOtherwise {
  readonly without: readonly UnitNuisance['name'][]
  readonly contrast: Contrast
  /** True where nothing is adjusted for any more. */
  readonly plain: boolean
}

/** The same pair adjusted otherwise: for nothing, and with each nuisance left out in turn. */
function adjustedOtherwise({ design }: ContrastCase, pair: PairContrast): readonly AdjustedOtherwise[] {
  const names = pair.nuisances.map(({ name }) => name)
  if (names.length === 0) return []
  return [names, ...(names.length < 2 ? [] : names.map((name) => [name]))].flatMap((without) => {
    const kept = pair.nuisances.filter(({ name }) => !without.includes(name))
    const fit = fitStanding(design, pair.cells, pair.units, pair.level, kept)
    return fit.kind === 'fitted' ? [{ without, contrast: fit.contrast, plain: kept.length === 0 }] : []
  })
}

function hangsOnAdjustment(asked: ContrastCase, found: PairVerdict, others: readonly AdjustedOtherwise[]): readonly Finding[] {
  const other = others.flatMap(({ without, contrast }) => {
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
            nuisances: without.map(nuisanceSaying),
            verdict: verdictSaying(verdict),
          }),
        ),
      }),
      rows: [],
      cure: null,
    },
  ]
}

/** A pair fitted again: with each visit left out in turn, and adjusted otherwise. */
export interface OtherFits {
  readonly visits: readonly WithoutVisit[]
  readonly adjusted: readonly AdjustedOtherwise[]
}

/** Of each comparison; null where nothing may be compared, or a slope is asked. */
export function otherFits(asked: ContrastCase, found: readonly PairVerdict[]): readonly (OtherFits | null)[] {
  const { snapshot, design, against } = asked
  return found.map(({ pair, verdict, kind }) =>
    pair.kind === 'refused' || verdict === 'design-blocks' || design.measured !== null
      ? null
      : {
          visits: leaveOutVisits(snapshot, design, kind.tallies, against?.tallies ?? null, pair),
          adjusted: adjustedOtherwise(asked, pair),
        },
  )
}

/** Whether verdicts hang on one visit or on what they were adjusted for, and the ratios adjusted otherwise. */
export interface Sensitivity {
  readonly findings: readonly Finding[]
  /** Ratios with each nuisance left out in turn, beside the headline. */
  readonly estimates: readonly Estimate[]
}

/** Name among the estimates of a ratio with some nuisances left out. */
export const nameWithout = ({ without }: Pick<AdjustedOtherwise, 'without'>): string => `without-${without.join('+')}`

function sensitivityOfPair(asked: ContrastCase, found: PairVerdict, pair: PairContrast, fits: OtherFits): Sensitivity {
  return {
    findings: [...influentialVisits(asked, found, fits.visits), ...hangsOnAdjustment(asked, found, fits.adjusted)],
    // Adjusted for nothing it stands beside the headline already.
    estimates: fits.adjusted
      .filter(({ plain }) => !plain)
      .map((own) =>
        ratioEstimate(
          asked,
          { kind: found.kind.kind, pair },
          {
            name: nameWithout(own),
            label: 'questions/estimate/ratio-without',
            values: { nuisances: own.without.map(nuisanceSaying) },
            contrast: own.contrast,
            adjusted: true,
          },
        ),
      ),
  }
}

export function sensitivityOf(
  asked: ContrastCase,
  found: readonly PairVerdict[],
  fits: readonly (OtherFits | null)[],
): Sensitivity {
  const each = found.flatMap((own, k) => {
    const other = fits[k] ?? null
    return own.pair.kind === 'refused' || other === null ? [] : [sensitivityOfPair(asked, own, own.pair, other)]
  })
  return { findings: each.flatMap(({ findings }) => findings), estimates: each.flatMap(({ estimates }) => estimates) }
}
