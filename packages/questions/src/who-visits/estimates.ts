import type { Estimate } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { dispersionHidden } from '@thrum/survey'
import { perUnit } from '../contrast/estimates.ts'
import { shareUnit } from '../contrast/phrases.ts'
import type { KindRate, VisitCase, VisitGroup } from './groups.ts'

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

/** Rates of one group: over fields, and beside them these watches only and the plain mean of fields. */
export function rateEstimates(asked: VisitCase, group: VisitGroup): readonly Estimate[] {
  const { scale, unit } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  return group.rates.flatMap((own): readonly Estimate[] => {
    const told = toldRate(own, scale)
    const { rate } = own
    if (told === null || rate === null) return []
    const base = { unit, scale: 'plain', verdict: null } as const
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
        // No rate is below none, whatever a symmetric interval says.
        interval: { low: Math.max(0, rate.mean.limits.lower) * scale, high: rate.mean.limits.upper * scale, level: 0.95 },
        n: rate.mean.units,
        counts: 'fields',
        method: saying('questions/method/mean-of-rates'),
        role: 'beside',
      })
    }
    return estimates
  })
}

/** Shares of one group among all visitors. */
export function shareEstimates(group: VisitGroup, sightingsOnly: boolean): readonly Estimate[] {
  return group.shares.map(
    ({ kind, share, limits, fields }): Estimate => ({
      id: `${prefix(group)}share/${kind}`,
      label: saying('questions/estimate/share', { kind, group: group.name ?? '', named: group.name === null ? 'no' : 'yes' }),
      value: share,
      interval: { low: limits.lower, high: limits.upper, level: 0.95 },
      unit: shareUnit(sightingsOnly),
      scale: 'share',
      n: fields ?? group.shared.rows.length,
      counts: fields === null ? 'watches' : 'fields',
      method: saying(fields === null ? 'questions/method/goodman' : 'questions/method/share-t'),
      role: 'headline',
      verdict: null,
    }),
  )
}
