import type { Answer, Estimate, Figure, Snapshot } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { dispersionHidden, dispersionWarned, type Finding, isBlocked } from '@thrum/survey'
import { cautionOf } from '../contrast/cautions.ts'
import { perUnit } from '../contrast/estimates.ts'
import { recipeOf } from '../contrast/recipe.ts'
import type { Work } from '../question.ts'
import { type KindRate, type VisitCase, type VisitGroup, visitCase, type WhoVisitsOptions } from './groups.ts'

const prefix = (group: VisitGroup): string => (group.name === null ? '' : `${group.name}/`)

/** The rate that stands for a kind: over fields where three or more stand, else these watches only. */
export interface ToldRate {
  readonly kind: string
  readonly value: number
  readonly low: number
  readonly high: number
  readonly n: number
  readonly counts: 'fields' | 'watches'
  /** None was counted at all. */
  readonly none: boolean
}

export function toldRate({ kind, rate, data }: KindRate, scale: number): ToldRate | null {
  if (rate === null) return null
  const { fields, pooled } = rate
  if (fields.kind === 'rate') {
    const { rate: value, limits, units } = fields
    return {
      kind: kind.label,
      value: value * scale,
      low: limits.lower * scale,
      high: limits.upper * scale,
      n: units,
      counts: 'fields',
      none: false,
    }
  }
  if (fields.kind === 'none') {
    return { kind: kind.label, value: 0, low: 0, high: fields.upper * scale, n: fields.units, counts: 'fields', none: true }
  }
  const limits = { low: pooled.limits.lower * scale, high: pooled.limits.upper * scale }
  return {
    kind: kind.label,
    value: pooled.rate * scale,
    ...limits,
    n: data.counts.length,
    counts: 'watches',
    none: pooled.total === 0,
  }
}

function rateEstimates(asked: VisitCase, group: VisitGroup): readonly Estimate[] {
  const { scale, unit } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  return group.rates.flatMap((own): readonly Estimate[] => {
    const told = toldRate(own, scale)
    const { rate } = own
    if (told === null || rate === null) return []
    const base = { unit, verdict: null }
    const id = `${prefix(group)}rate/${own.kind.label}`
    const values = { kind: own.kind.label, group: group.name ?? '', named: group.name === null ? 'no' : 'yes' }
    const estimates: Estimate[] = [
      {
        ...base,
        id,
        label: saying('questions/estimate/rate', values),
        value: told.value,
        interval: { low: told.low, high: told.high, level: 0.95 },
        n: told.n,
        counts: told.counts,
        method: saying(told.counts === 'fields' ? 'questions/method/ratio-of-sums' : 'questions/method/poisson-watches'),
        role: 'headline',
      },
    ]
    if (told.counts === 'fields' && (rate.dispersion === null || rate.dispersion <= dispersionHidden)) {
      const { pooled } = rate
      estimates.push({
        ...base,
        id: `${id}/these-watches`,
        label: saying('questions/estimate/rate-watches', values),
        value: pooled.rate * scale,
        interval: { low: pooled.limits.lower * scale, high: pooled.limits.upper * scale, level: 0.95 },
        n: own.data.counts.length,
        counts: 'watches',
        method: saying('questions/method/poisson-watches'),
        role: 'beside',
      })
    }
    if (rate.mean.kind === 'mean') {
      estimates.push({
        ...base,
        id: `${id}/mean-of-fields`,
        label: saying('questions/estimate/rate-mean', values),
        value: rate.mean.mean * scale,
        interval: { low: rate.mean.limits.lower * scale, high: rate.mean.limits.upper * scale, level: 0.95 },
        n: rate.mean.units,
        counts: 'fields',
        method: saying('questions/method/mean-of-rates'),
        role: 'beside',
      })
    }
    return estimates
  })
}

function shareEstimates(group: VisitGroup): readonly Estimate[] {
  return group.shares.map(
    ({ kind, share, limits, fields }): Estimate => ({
      id: `${prefix(group)}share/${kind}`,
      label: saying('questions/estimate/share', { kind, group: group.name ?? '', named: group.name === null ? 'no' : 'yes' }),
      value: share,
      interval: { low: limits.lower, high: limits.upper, level: 0.95 },
      unit: saying('questions/unit/share'),
      n: fields ?? group.rows.length,
      counts: fields === null ? 'watches' : 'fields',
      method: saying(fields === null ? 'questions/method/goodman' : 'questions/method/share-t'),
      role: 'headline',
      verdict: null,
    }),
  )
}

/** Watches that clump make exact intervals too narrow; only where those stand in a headline it is a warning. */
function clumped(asked: VisitCase): readonly Finding[] {
  const found = asked.groups.flatMap(({ rates }) =>
    rates.flatMap((own) =>
      (own.rate?.dispersion ?? 0) > dispersionWarned ? [{ own, dispersion: own.rate?.dispersion ?? 0 }] : [],
    ),
  )
  const told = found.filter(({ own }) => own.rate?.fields.kind === 'too-few-units')
  return told.map(({ own, dispersion }) => ({
    code: 'counts-clump',
    severity: 'warn' as const,
    text: saying('questions/caution/counts-clump', { kind: own.kind.label, dispersion }),
    rows: own.rows,
    cure: saying('questions/caution/counts-clump/cure'),
  }))
}

function outside(asked: VisitCase): readonly Finding[] {
  const left = asked.groups.flatMap((group) => group.rates.flatMap(({ rows }) => group.rows.filter((row) => !rows.includes(row))))
  const rows = [...new Set(left)]
  if (rows.length === 0) return []
  return [
    {
      code: 'outside-window',
      severity: 'warn',
      text: saying('questions/caution/outside-window', { counts: rows.length }),
      rows,
      cure: saying('survey/cure/count-in-window'),
    },
  ]
}

const rateSaying = (told: ToldRate, unit: Saying): Saying =>
  saying(`questions/who-visits/rate/${told.none ? 'none' : told.counts}`, {
    kind: told.kind,
    value: told.value,
    low: told.low,
    high: told.high,
    n: told.n,
    unit,
  })

function headline(asked: VisitCase, blocked: boolean): Saying {
  const whole = asked.groups.length === 1 ? asked.groups[0] : undefined
  const { scale, unit } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  if (blocked) {
    const reasons = [...new Set(asked.findings.filter(({ severity }) => severity === 'block').map(({ code }) => code))]
    return saying('questions/who-visits/headline/blocked', { reasons: reasons.map((code) => saying(`questions/reason/${code}`)) })
  }
  const told = (whole?.rates ?? asked.groups.flatMap(({ rates }) => rates)).flatMap((own) => toldRate(own, scale) ?? [])
  if (whole === undefined)
    return saying('questions/who-visits/headline/groups', { groups: asked.groups.length, counts: asked.selected.rows.length })
  const most = [...told].sort((a, b) => b.value - a.value)[0]
  if (most === undefined || most.none) return saying('questions/who-visits/headline/none', { counts: asked.selected.rows.length })
  const share = whole.shares.find(({ kind }) => kind === most.kind)
  return saying(share === undefined ? 'questions/who-visits/headline/rate' : 'questions/who-visits/headline/rate-and-share', {
    rate: rateSaying(most, unit),
    ...(share === undefined ? {} : { share: share.share, low: share.limits.lower, high: share.limits.upper }),
  })
}

function canSay(asked: VisitCase): readonly Saying[] {
  const { scale, unit } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  return asked.groups.flatMap((group) => {
    const counted = saying('questions/who-visits/can-say/counted', {
      watches: group.rows.length,
      fields: new Set(group.rows.map((row) => asked.snapshot.countField[row])).size,
      named: group.name === null ? 'no' : 'yes',
      group: group.name ?? '',
      each: group.rates.map(({ kind, data }) =>
        saying('questions/who-visits/can-say/total', {
          kind: kind.label,
          total: data.counts.reduce((sum, { total }) => sum + total, 0),
        }),
      ),
    })
    const rates = group.rates.flatMap((own) => toldRate(own, scale) ?? [])
    const shares = group.shares.filter(({ part }) => part > 0)
    return [
      counted,
      ...(rates.length > 0
        ? [
            saying('questions/who-visits/can-say/rates', {
              group: group.name ?? '',
              named: group.name === null ? 'no' : 'yes',
              each: rates.map((told) => rateSaying(told, unit)),
            }),
          ]
        : []),
      ...(shares.length > 1
        ? [
            saying(
              shares.every(({ fields }) => fields !== null)
                ? 'questions/can-say/shares-fields'
                : 'questions/can-say/shares-watches',
              {
                level: group.name ?? 'these counts',
                each: shares.map(({ kind, share, limits }) =>
                  saying('questions/can-say/share', { kind, share, low: limits.lower, high: limits.upper }),
                ),
              },
            ),
          ]
        : []),
    ]
  })
}

function cannotSay(asked: VisitCase, blocked: boolean): readonly Saying[] {
  const few = asked.groups.some(({ rates }) => rates.some(({ rate }) => rate?.fields.kind === 'too-few-units'))
  return [
    ...(blocked ? [saying('questions/who-visits/cannot-say/rate')] : []),
    ...(few ? [saying('questions/who-visits/cannot-say/other-fields')] : []),
    saying('questions/who-visits/cannot-say/pollinates'),
    ...(asked.groups.length > 1 ? [saying('questions/who-visits/cannot-say/difference')] : []),
  ]
}

function figures(asked: VisitCase, estimates: readonly Estimate[]): readonly Figure[] {
  const { scale, unit } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  const intervals = (part: 'rate' | 'share', scaleName: 'linear' | 'share', title: string, unitOf: Saying): Figure => ({
    kind: 'intervals',
    title: saying(title),
    unit: unitOf,
    scale: scaleName,
    band: null,
    rows: estimates
      .filter(({ id, role }) => role === 'headline' && (id.startsWith(`${part}/`) || id.includes(`/${part}/`)))
      .map(({ label, value, interval, n, role }) => ({ label, value, ...interval, n, role })),
  })
  return [
    intervals('rate', 'linear', 'questions/figure/visit-rates', unit),
    intervals('share', 'share', 'questions/figure/shares', saying('questions/unit/share')),
    {
      kind: 'rates-by-level',
      title: saying('questions/figure/visit-rates-by-field'),
      unit,
      points: asked.groups.flatMap((group) =>
        group.rates.flatMap(({ kind, data }) =>
          data.fields.map(({ name, total, effort }) => ({
            field: name,
            level: group.name ?? '',
            kind: kind.label,
            count: total,
            effort,
            rate: (total / effort) * scale,
          })),
        ),
      ),
    },
  ]
}

function nextSteps(asked: VisitCase, blocked: boolean): readonly Saying[] {
  const cures = asked.findings.flatMap(({ severity, cure }) => (severity === 'block' && cure !== null ? [cure] : []))
  if (blocked) return cures
  const fields = new Set(Array.from(asked.selected.rows, (row) => asked.snapshot.countField[row])).size
  if (fields < 3) return [saying('questions/who-visits/next/fields', { more: 3 - fields })]
  return fields < 6 ? [saying('questions/who-visits/next/few-fields', { fields })] : [saying('questions/who-visits/next/compare')]
}

/** Rates and shares of kinds, with the scatter between fields; one or two fields: these watches only. */
export async function runWhoVisits(snapshot: Snapshot, options: WhoVisitsOptions, work: Work): Promise<Answer> {
  const asked = visitCase(snapshot, options)
  await work.breathe()
  const findings = [...asked.findings, ...clumped(asked), ...outside(asked)]
  const blocked = isBlocked(findings)
  const estimates = asked.groups.flatMap((group) => [...(blocked ? [] : rateEstimates(asked, group)), ...shareEstimates(group)])
  return {
    version: 1,
    question: 'who-visits',
    asked: saying('questions/who-visits/asked', {
      kinds: asked.kinds.map(({ label }) => label).join(', '),
      by: options.by ?? '',
      grouped: options.by === undefined ? 'no' : 'yes',
    }),
    verdict: blocked ? 'design-blocks' : null,
    evidence: 'counted',
    headline: headline(asked, blocked),
    claims: { canSay: canSay(asked), cannotSay: cannotSay(asked, blocked) },
    estimates,
    cautions: findings.map((finding) => cautionOf(snapshot, finding)),
    method: {
      name: saying('questions/method/ratio-of-sums'),
      equation: 'R = sum Y_f / sum E_f;  se = sqrt(F/(F-1) * sum (Y_f - R E_f)^2) / sum E;  limits R * exp(-/+ t(F-1) * se / R)',
      choices: [
        saying('questions/choice/rates-over-fields'),
        ...(asked.selected.excepted > 0 ? [saying('questions/left-out/excepted', { counts: asked.selected.excepted })] : []),
      ],
      checks: asked.groups.flatMap(({ rates }) =>
        rates.flatMap(({ kind, rate }) =>
          rate?.dispersion == null
            ? []
            : [saying('questions/check/dispersion', { kind: kind.label, dispersion: rate.dispersion })],
        ),
      ),
      references: [
        {
          source: 'Cochran W.G. (1977) Sampling Techniques, 3rd ed., ch. 6 (ratio estimate), on the log scale.',
          trust: 'from memory',
        },
        {
          source: 'Garwood F. (1936) Fiducial limits for the Poisson distribution. Biometrika 28, 437-442.',
          trust: 'from memory',
        },
        {
          source: 'Goodman L.A. (1965) Simultaneous confidence intervals for multinomial proportions. Technometrics 7, 247-254.',
          trust: 'from memory',
        },
      ],
    },
    figures: figures(asked, estimates),
    next: nextSteps(asked, blocked),
    receipt: recipeOf(snapshot, options, asked.selected.rows.length, work),
  }
}
