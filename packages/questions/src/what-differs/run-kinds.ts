import type { Answer, Estimate, Snapshot, Verdict } from '@thrum/model'
import { type Saying, saying, ThrumError } from '@thrum/model/ground'
import {
  auditRates,
  byGravity,
  comfortableFields,
  type Finding,
  isBlocked,
  type KindSet,
  kindSet,
  leastFields,
  type RelativeCount,
  relativeCount,
  talliesOf,
} from '@thrum/survey'
import { cautionOf } from '../contrast/cautions.ts'
import { finite } from '../contrast/estimates.ts'
import { isEarly, primaryKind } from '../contrast/plan.ts'
import { recipeOf } from '../contrast/recipe.ts'
import { selectByOptions } from '../contrast/selection.ts'
import type { Work } from '../question.ts'
import { combineVerdicts, readVerdict, type VerdictRead } from '../verdict/read-verdict.ts'
import { peeks } from './peeks.ts'
import { requireWorth, type WhatDiffersOptions } from './run.ts'

/** Two kinds counted in the same watches, field by field. */
export interface KindPair {
  readonly reference: KindSet
  readonly other: KindSet
  readonly fields: readonly {
    readonly name: string
    readonly other: number
    readonly reference: number
    readonly rows: readonly number[]
  }[]
  readonly count: RelativeCount | null
  readonly rows: readonly number[]
}

interface JudgedPair extends KindPair {
  readonly verdict: Verdict
  readonly read: VerdictRead | null
}

/** The kinds compared: levels if given, else kinds; the first is the reference. */
export function kindsCompared(snapshot: Snapshot, options: WhatDiffersOptions): readonly KindSet[] {
  const names = options.levels ?? options.kinds ?? []
  if (names.length < 2)
    throw new ThrumError('questions/two-kinds-needed', { known: snapshot.kinds.map(({ name }) => name).join(', ') })
  return names.map((name) => kindSet(snapshot, name))
}

/** Counts of one kind for each of another, over the watches in which both were looked for. */
export function kindPair(snapshot: Snapshot, rows: ArrayLike<number>, reference: KindSet, other: KindSet): KindPair {
  const [a, b] = [talliesOf(snapshot, reference), talliesOf(snapshot, other)]
  const fields = new Map<number, { name: string; other: number; reference: number; rows: number[] }>()
  const used: number[] = []
  for (const row of Array.from(rows)) {
    const field = snapshot.countField[row] ?? -1
    if (field < 0 || Number.isNaN((a[row] as number) + (b[row] as number))) continue
    const found = fields.get(field) ?? { name: snapshot.fields[field]?.name ?? '', other: 0, reference: 0, rows: [] }
    found.reference += a[row] as number
    found.other += b[row] as number
    found.rows.push(row)
    fields.set(field, found)
    used.push(row)
  }
  const list = [...fields.values()]
  return {
    reference,
    other,
    fields: list,
    rows: used,
    count: relativeCount(
      list.map((own) => own.other),
      list.map((own) => own.reference),
    ),
  }
}

function replication(pair: KindPair): readonly Finding[] {
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
  const selected = selectByOptions(snapshot, options)
  const kinds = kindsCompared(snapshot, options)
  const reference = kinds[0] as KindSet
  const pairs = kinds.slice(1).map((other) => kindPair(snapshot, selected.rows, reference, other))
  await work.breathe()
  const rows = Array.from(selected.rows)
  const findings = byGravity([
    ...auditRates({ snapshot, selected: rows, kinds, measure: 'time', isSnapshot: true }),
    ...(pairs[0] === undefined ? [] : replication(pairs[0])),
    ...peeks(snapshot, options.looks),
  ])
  const blocked = isBlocked(findings)
  const primary = primaryKind(snapshot)
  const judged = pairs.map((pair): JudgedPair => {
    if (blocked || pair.count === null || pair.count.fields === null) return { ...pair, verdict: 'design-blocks', read: null }
    const contrasts = pair.other.label === primary ? 1 : pairs.length
    const read = readVerdict({ limits: pair.count.limits, worth, contrasts, early: isEarly(snapshot) })
    return { ...pair, verdict: read.verdict, read }
  })
  const estimates = judged.flatMap(estimateOf)
  const sentences = judged.map((pair) => sentence(pair, worth, findings))
  const first = judged[0] as JudgedPair
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
      name: saying(first.count?.fields === null ? 'questions/method/odds-watches' : 'questions/method/odds-t'),
      equation: 'p = sum A_f / sum (A_f + B_f);  limits logit(p) -/+ t(F-1) * se / (p (1 - p));  A per B = p / (1 - p)',
      choices: [saying('questions/choice/worth', { worth }), ...(isEarly(snapshot) ? [saying('questions/choice/early')] : [])],
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
    receipt: recipeOf(snapshot, options, first.rows.length, work),
  }
}
