import type { Answer, Estimate, Snapshot, Verdict } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { auditRelativeCounts, byGravity, comfortableFields, type Finding, isBlocked, leastFields } from '@thrum/survey'
import { cautionOf } from '../contrast/cautions.ts'
import { leftOutOfWindow } from '../contrast/outside-window.ts'
import { isEarly, primaryKind } from '../contrast/plan.ts'
import { finite } from '../contrast/ratio-estimate.ts'
import { recipeOf } from '../contrast/recipe.ts'
import type { Work } from '../question.ts'
import { combineVerdicts, readVerdict, type VerdictRead } from '../verdict/read-verdict.ts'
import { type KindPair, kindsCase } from './kind-pairs.ts'
import { peeks } from './peeks.ts'
import { requireWorth, type WhatDiffersOptions } from './run.ts'

interface JudgedPair extends KindPair {
  readonly verdict: Verdict
  readonly read: VerdictRead | null
}

/** Told of the pair that was counted in the fewest fields. */
function replication(pairs: readonly KindPair[]): readonly Finding[] {
  const pair = pairs.reduce((least, own) => (own.fields.length < least.fields.length ? own : least))
  const fields = pair.fields.length
  if (fields >= comfortableFields) return []
  const severity = fields < leastFields ? 'block' : 'warn'
  return [
    {
      code: 'not-replicated',
      severity,
      text: saying(`questions/caution/kinds-not-replicated/${severity}`, { fields }),
      rows: pair.rows,
      cure: saying('questions/caution/kinds-not-replicated/cure', {
        more: (severity === 'block' ? leastFields : comfortableFields) - fields,
      }),
    },
  ]
}

function valuesOf(pair: JudgedPair, worth: number): Saying['values'] {
  const names = { kindA: pair.reference.label, kindB: pair.other.label, worth, least: 1 / worth, fields: pair.fields.length }
  if (pair.count === null) return { ...names, first: 0, second: 0 }
  const level = pair.verdict === 'leaning' ? 0.95 : (pair.read?.level ?? 0.95)
  const { lower, upper } = pair.count.limits(level)
  return {
    ...names,
    ratio: finite(pair.count.odds) ?? 0,
    level,
    low: lower,
    high: finite(upper) ?? 0,
    ends: Number.isFinite(upper) ? 'closed' : 'open',
    direction: saying(pair.count.odds >= 1 ? 'questions/direction/more' : 'questions/direction/fewer'),
    first: pair.count.first,
    second: pair.count.second,
  }
}

function sentence(pair: JudgedPair, worth: number, findings: readonly Finding[]): Saying {
  const values = valuesOf(pair, worth)
  if (pair.verdict === 'design-blocks') {
    const reasons = findings.filter(({ severity }) => severity === 'block').map(({ code }) => saying(`questions/reason/${code}`))
    return saying('questions/kinds/headline/design-blocks', {
      ...values,
      reasons: reasons.length > 0 ? reasons : [saying('questions/reason/refused')],
    })
  }
  if (pair.verdict === 'shown') {
    return saying('questions/kinds/headline/shown', {
      ...values,
      size: saying(`questions/what-differs/size/${pair.read?.size ?? 'may-be-too-small'}`, { worth }),
    })
  }
  return saying(`questions/kinds/headline/${pair.verdict}`, values)
}

function estimateOf(pair: JudgedPair): readonly Estimate[] {
  if (pair.count === null) return []
  const { lower, upper } = pair.count.limits(0.95)
  return [
    {
      id: `relative/${pair.other.label}/${pair.reference.label}`,
      label: saying('questions/estimate/kinds', { kindA: pair.reference.label, kindB: pair.other.label }),
      value: finite(pair.count.odds),
      interval: { low: finite(lower), high: finite(upper), level: 0.95 },
      unit: saying('questions/unit/ratio'),
      scale: 'ratio',
      n: pair.count.fields ?? pair.rows.length,
      counts: pair.count.fields === null ? 'watches' : 'fields',
      method: saying(pair.count.fields === null ? 'questions/method/odds-watches' : 'questions/method/odds-t'),
      role: 'headline',
      verdict: pair.verdict,
    },
  ]
}

const cures = (findings: readonly Finding[]): readonly Saying[] =>
  findings.flatMap(({ severity, cure }) => (severity === 'block' && cure !== null ? [cure] : []))

/** What to do next where the audit lets it be answered: a kind that was never seen is not settled by that. */
function nextOf(judged: readonly JudgedPair[]): readonly Saying[] {
  const unseen = judged.filter(({ verdict }) => verdict === 'design-blocks')
  const open = judged.some(({ verdict }) => verdict === 'unsettled' || verdict === 'leaning')
  return [
    ...unseen.map(({ other }) => saying('questions/next/refused/few-insects', { kind: other.label })),
    ...(open ? [saying('questions/kinds/next/more')] : []),
    ...(unseen.length === 0 && !open ? [saying('questions/kinds/next/settled')] : []),
  ]
}

/** Kind against kind in the same watches (methods 2.9a, one level): odds with the scatter between fields. */
export async function runKinds(snapshot: Snapshot, options: WhatDiffersOptions, work: Work): Promise<Answer> {
  const worth = requireWorth(options)
  const { selected, kinds, reference, pairs, outside } = kindsCase(snapshot, options)
  await work.breathe()
  const findings = byGravity([
    ...auditRelativeCounts({ snapshot, selected, kinds }),
    ...leftOutOfWindow(outside),
    ...replication(pairs),
    ...peeks(snapshot, options.looks),
  ])
  const early = isEarly(snapshot)
  const blocked = isBlocked(findings)
  const primary = primaryKind(snapshot)
  const judged = pairs.map((pair): JudgedPair => {
    if (blocked || pair.count === null || pair.count.fields === null) return { ...pair, verdict: 'design-blocks', read: null }
    const contrasts = pair.other.label === primary ? 1 : pairs.length
    const read = readVerdict({ limits: pair.count.limits, worth, contrasts, early })
    return { ...pair, verdict: read.verdict, read }
  })
  const estimates = judged.flatMap(estimateOf)
  const sentences = judged.map((pair) => sentence(pair, worth, findings))
  const main =
    sentences.length === 1
      ? (sentences[0] as Saying)
      : saying('questions/kinds/headline/several', {
          comparisons: judged.length,
          each: judged.map((pair) =>
            saying('questions/kinds/headline/one-of-several', {
              ...valuesOf(pair, worth),
              verdict: saying(`questions/verdict/${pair.verdict}`),
            }),
          ),
        })
  const worthNote = saying('questions/headline/worth-after-look', { worth })
  return {
    version: 1,
    question: 'what-differs',
    asked: saying('questions/kinds/asked', { kindA: reference.label, others: judged.map(({ other }) => other.label).join(', ') }),
    verdict: combineVerdicts(judged.map(({ verdict }) => verdict)),
    evidence: 'counted',
    headline: options.worthSet === 'after-looking' ? saying('questions/headline/with-notes', { main, notes: [worthNote] }) : main,
    claims: {
      canSay: [
        ...sentences.filter((_, k) => judged[k]?.verdict !== 'design-blocks'),
        ...judged.map((pair) =>
          saying('questions/kinds/can-say/counted', { ...valuesOf(pair, worth), watches: pair.rows.length }),
        ),
      ],
      cannotSay: judged.map((pair) => saying(`questions/kinds/cannot-say/${pair.verdict}`, valuesOf(pair, worth))),
    },
    estimates,
    cautions: findings.map((finding) => cautionOf(snapshot, finding)),
    method: {
      name: saying(
        judged.every(({ count }) => count?.fields == null) ? 'questions/method/odds-watches' : 'questions/method/odds-t',
      ),
      equation: 'p = sum A_f / sum (A_f + B_f);  limits logit(p) -/+ t(F-1) * se / (p (1 - p));  A per B = p / (1 - p)',
      choices: [saying('questions/choice/worth', { worth }), ...(early ? [saying('questions/choice/early')] : [])],
      checks: [],
      references: [
        { source: 'Cochran W.G. (1977) Sampling Techniques, 3rd ed., 3.12, on the logit scale.', trust: 'from memory' },
      ],
    },
    figures: [
      {
        kind: 'intervals',
        title: saying('questions/figure/kinds'),
        unit: saying('questions/unit/ratio'),
        scale: 'log',
        band: { low: 1 / worth, high: worth },
        rows: estimates.map(({ label, value, interval, n, role }) => ({ label, value, ...interval, n, role })),
      },
    ],
    next: blocked ? cures(findings) : nextOf(judged),
    receipt: recipeOf(snapshot, options, new Set(pairs.flatMap((pair) => pair.rows)).size, work),
  }
}
