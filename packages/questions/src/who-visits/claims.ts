import { type Saying, saying } from '@thrum/model/ground'
import { perUnit } from '../contrast/estimates.ts'
import { type ToldRate, toldRate } from './estimates.ts'
import { fieldsOf, type VisitCase } from './groups.ts'

const rateSaying = (told: ToldRate, unit: Saying): Saying =>
  saying(`questions/who-visits/rate/${told.none ? 'none' : told.counts}`, {
    kind: told.kind,
    value: told.value,
    low: told.low,
    high: told.high,
    n: told.n,
    unit,
  })

/** The most frequent kind, with its rate and share; why there is none. */
export function headline(asked: VisitCase, blocked: boolean): Saying {
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

/** What was counted, rates where they are not blocked, and shares, each scoped to what it rests on. */
export function canSay(asked: VisitCase, blocked: boolean): readonly Saying[] {
  const { scale, unit } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  return asked.groups.flatMap((group) => {
    const counted = saying('questions/who-visits/can-say/counted', {
      watches: group.rows.length,
      fields: fieldsOf(asked.snapshot, group.rows),
      named: group.name === null ? 'no' : 'yes',
      group: group.name ?? '',
      each: group.rates.map(({ kind, data }) =>
        saying('questions/who-visits/can-say/total', {
          kind: kind.label,
          total: data.counts.reduce((sum, { total }) => sum + total, 0),
        }),
      ),
    })
    const rates = blocked ? [] : group.rates.flatMap((own) => toldRate(own, scale) ?? [])
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
              `questions/who-visits/can-say/shares-${shares.every(({ fields }) => fields !== null) ? 'fields' : 'watches'}`,
              {
                named: group.name === null ? 'no' : 'yes',
                group: group.name ?? '',
                among: asked.sightingsOnly ? 'sightings' : 'visitors',
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

export function cannotSay(asked: VisitCase, blocked: boolean): readonly Saying[] {
  const few = asked.groups.some(({ rates }) => rates.some(({ rate }) => rate?.fields.kind === 'too-few-units'))
  return [
    ...(blocked ? [saying('questions/who-visits/cannot-say/rate')] : []),
    ...(few ? [saying('questions/who-visits/cannot-say/other-fields')] : []),
    saying('questions/who-visits/cannot-say/pollinates'),
    ...(asked.groups.length > 1 ? [saying('questions/who-visits/cannot-say/difference')] : []),
  ]
}
