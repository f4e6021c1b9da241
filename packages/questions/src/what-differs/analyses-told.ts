import type { Analysis, ComparedAnalyses, Figure, IntervalsFigure, Verdict } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { ratioOfContrast } from '@thrum/stats'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import { limitsOfPair, type PairVerdict } from '../contrast/pair-verdict.ts'
import type { TestedPermutation } from '../contrast/permutation.ts'
import { levelNames, rateNoun } from '../contrast/phrases.ts'
import { finite, ratioUnit } from '../contrast/ratio-estimate.ts'
import type { MadeAnalysis } from './analyses.ts'
import { readOf, verdictOf, verdictSaying } from './sensitivity.ts'

/** Level of the intervals that are shown side by side, whatever level decides. */
const shownLevel = 0.95

/** What a permutation of fields can say beside an interval: nothing, for want of fields; that they differ; that they may not. */
type Reach = 'too-few' | 'apart' | 'not-apart'

function reachOf({ p, smallestP }: TestedPermutation, { deciding }: PairVerdict): Reach {
  const allowed = 1 - deciding + 1e-12
  if (smallestP > allowed) return 'too-few'
  return p <= allowed ? 'apart' : 'not-apart'
}

function analysisTold(asked: ContrastCase, found: PairVerdict, { id, label, outcome }: MadeAnalysis): Analysis {
  if (outcome.kind === 'none') {
    const verdict = outcome.isBlocked ? 'design-blocks' : null
    return { id, label, value: null, interval: null, verdict, told: outcome.because }
  }
  const { ratio, lower, upper } = ratioOfContrast(outcome.contrast, shownLevel)
  return {
    id,
    label,
    value: finite(ratio),
    interval: { low: finite(lower), high: finite(upper), level: shownLevel },
    verdict: id === 'as-asked' ? readOf(found) : verdictOf(asked, found, outcome.contrast),
    told: null,
  }
}

function permutationTold(found: PairVerdict, fields: number, test: TestedPermutation): Analysis {
  return {
    id: 'permutation',
    label: saying('questions/analysis/permutation'),
    value: null,
    interval: null,
    verdict: null,
    told: saying(`questions/analysis/permutation/${reachOf(test, found)}`, { p: test.p, smallest: test.smallestP, fields }),
  }
}

/** Whether the permutation contradicts the interval that decides: it finds less, or more, than that. */
function contradiction(found: PairVerdict, test: TestedPermutation | null): 'less' | 'more' | null {
  if (test === null || found.pair.kind === 'refused') return null
  const reach = reachOf(test, found)
  if (reach === 'too-few') return null
  const { lower, upper } = limitsOfPair(found.pair)(found.deciding)
  const excludesOne = lower > 1 || upper < 1
  if (excludesOne === (reach === 'apart')) return null
  return excludesOne ? 'less' : 'more'
}

/** The analyses by the verdict they give, that of the headline first. */
function byVerdict(analyses: readonly Analysis[]): ReadonlyMap<Verdict, readonly Analysis[]> {
  return Map.groupBy(
    analyses.flatMap((own) => (own.verdict === null ? [] : [{ ...own, verdict: own.verdict }])),
    ({ verdict }) => verdict,
  )
}

/** Which analyses give which verdict, as one saying. */
function eachGives(groups: ReadonlyMap<Verdict, readonly Analysis[]>): Saying {
  const each = [...groups].map(([verdict, analyses]) =>
    saying('questions/analyses/gives', {
      analyses: analyses.map(({ label }) => label),
      count: analyses.length,
      verdict: verdictSaying(verdict),
    }),
  )
  const [first = saying('text', { text: '' }), ...rest] = each
  return rest.reduce((before, next) => saying('questions/analyses/and', { before, next }), first)
}

function mainSentence(comparison: Saying, analyses: readonly Analysis[], against: 'less' | 'more' | null): Saying {
  const groups = byVerdict(analyses)
  const [[verdict, alike] = ['unsettled' as const, []]] = groups
  const values = { comparison, count: alike.length, verdict: verdictSaying(verdict) }
  if (groups.size > 1) return saying('questions/analyses/hangs', { comparison, each: eachGives(groups) })
  if (against !== null) return saying(`questions/analyses/permutation-finds/${against}`, values)
  return saying(alike.length > 1 ? 'questions/analyses/holds' : 'questions/analyses/alone', values)
}

/** What stands beside the main sentence: the permutation, what could not be made, a verdict that is held back. */
function notes(found: PairVerdict, analyses: readonly Analysis[]): readonly Saying[] {
  const permutation = analyses.find(({ id }) => id === 'permutation')
  const missing = analyses.filter(({ id, verdict }) => id !== 'permutation' && verdict === null)
  return [
    ...(permutation?.told == null ? [] : [saying('questions/analyses/permutation', { told: permutation.told })]),
    ...(missing.length === 0
      ? []
      : [
          saying('questions/analyses/missing', {
            each: missing.map(({ label, told }) => saying('questions/analyses/missing/one', { label, because: told ?? '' })),
          }),
        ]),
    ...(found.verdict === readOf(found)
      ? []
      : [saying('questions/analyses/held-back', { verdict: verdictSaying(found.verdict) })]),
  ]
}

/** A comparison by its analyses, as an answer carries it. */
export function comparedBy(
  asked: ContrastCase,
  found: PairVerdict,
  made: readonly MadeAnalysis[],
  test: TestedPermutation | null,
): ComparedAnalyses {
  const comparison = saying('questions/estimate/ratio', {
    kind: found.kind.kind.label,
    ...levelNames(asked, found.pair.level),
    noun: rateNoun(asked),
  })
  const fields = found.pair.kind === 'refused' ? 0 : found.pair.units.z.length
  const analyses = [
    ...made.map((own) => analysisTold(asked, found, own)),
    ...(test === null ? [] : [permutationTold(found, fields, test)]),
  ]
  const against = contradiction(found, test)
  const main = mainSentence(comparison, analyses, against)
  return {
    comparison,
    fields,
    analyses,
    hangs: against !== null || byVerdict(analyses).size > 1,
    told: notes(found, analyses).reduce(
      (before, note) => saying('questions/headline/with-notes', { main: before, notes: [note] }),
      main,
    ),
  }
}

/** More comparisons than this are told together under a figure. */
const toldEach = 2

function rowsOf({ comparison, fields: n, analyses }: ComparedAnalyses): IntervalsFigure['rows'] {
  return analyses.map(({ id, label, value, interval, verdict, told }) => {
    const named = { comparison, label, ...(verdict === null ? {} : { verdict: verdictSaying(verdict) }) }
    const row = {
      value,
      low: interval?.low ?? null,
      high: interval?.high ?? null,
      level: interval?.level ?? shownLevel,
      n,
    }
    if (id === 'as-asked') return { ...row, label: comparison, role: 'headline' }
    if (id === 'permutation') {
      const { p = 1, smallest = 1 } = told?.values ?? {}
      return { ...row, label: saying('questions/analyses/row/permutation', { comparison, p, smallest }), role: 'beside' }
    }
    return { ...row, label: saying(`questions/analyses/row${verdict === null ? '/none' : ''}`, named), role: 'beside' }
  })
}

/** One figure of all comparisons: a row an analysis, the headline on top of its own. */
export function analysesFigure({ worth }: ContrastCase, compared: readonly ComparedAnalyses[]): readonly Figure[] {
  const rows = compared.flatMap(rowsOf)
  if (rows.length === compared.length) return []
  const hanging = compared.filter(({ hangs }) => hangs).length
  return [
    {
      kind: 'intervals',
      title: saying('questions/figure/analyses'),
      unit: ratioUnit,
      scale: 'log',
      band: { low: 1 / worth, high: worth },
      rows,
      told:
        compared.length > toldEach
          ? [saying('questions/analyses/several', { comparisons: compared.length, hanging })]
          : compared.map(({ told }) => told),
    },
  ]
}
