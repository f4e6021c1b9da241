import type { Estimate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { poissonInterval, ratioOfContrast, verdictLevels } from '@thrum/stats'
import type { PairContrast } from '@thrum/survey'
import type { ContrastCase } from './contrast-case.ts'
import { limitsOfPair, type PairVerdict } from './pair-verdict.ts'
import { levelNames, rateNoun } from './phrases.ts'
import { countedByLevel, exactRatio } from './watches.ts'

/** A number as JSON can hold it: an endless limit is null. */
export const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)

const ratioUnit = saying('questions/unit/ratio')

interface Row {
  readonly id: string
  readonly label: Saying
  readonly value: number
  readonly limits: { readonly lower: number; readonly upper: number }
  readonly level: number
  readonly method: string
  readonly role: Estimate['role']
}

function ratioEstimate(asked: ContrastCase, found: PairVerdict, pair: PairContrast, row: Row): Estimate {
  return {
    id: row.id,
    label: row.label,
    value: finite(row.value),
    interval: { low: finite(row.limits.lower), high: finite(row.limits.upper), level: row.level },
    unit: ratioUnit,
    n: pair.units.z.length,
    counts: pair.units.layout === 'within' && asked.design.structure !== 'before-after-control' ? 'pairs of fields' : 'fields',
    method: saying(row.method),
    role: row.role,
    verdict: row.role === 'headline' ? found.verdict : null,
  }
}

/** The ratio of one pair: as it decides, at plain 95 % and 90 %, and unadjusted where it was adjusted. */
function pairEstimates(asked: ContrastCase, found: PairVerdict): readonly Estimate[] {
  const { pair } = found
  if (pair.kind === 'refused') return []
  const kind = found.kind.kind.label
  const level = asked.design.levels[pair.level] ?? ''
  const id = `ratio/${kind}/${level}`
  const values = { kind, ...levelNames(asked, pair.level), noun: rateNoun(asked) }
  const method = pair.adjusted.length > 0 ? 'questions/method/field-t-adjusted' : 'questions/method/field-t'
  const limits = limitsOfPair(pair)
  const ratio = ratioOfContrast(pair.contrast).ratio
  const make = (name: string, at: number, role: Estimate['role'], label: string): Estimate =>
    ratioEstimate(asked, found, pair, {
      id: name,
      label: saying(label, values),
      value: ratio,
      limits: limits(at),
      level: at,
      method,
      role,
    })
  if (found.verdict === 'design-blocks') return [make(`${id}/described`, 0.95, 'beside', 'questions/estimate/ratio-described')]
  const levels = verdictLevels(found.contrasts)
  const rows = [make(id, 0.95, 'headline', 'questions/estimate/ratio')]
  if (found.contrasts > 1) rows.push(make(`${id}/together`, levels.deciding, 'beside', 'questions/estimate/ratio-together'))
  rows.push(make(`${id}/90`, 0.9, 'beside', 'questions/estimate/ratio-90'))
  if (pair.adjusted.length > 0) {
    const plain = ratioOfContrast(pair.unadjusted)
    rows.push(
      ratioEstimate(asked, found, pair, {
        id: `${id}/unadjusted`,
        label: saying('questions/estimate/ratio-unadjusted', values),
        value: plain.ratio,
        limits: plain,
        level: 0.95,
        method: 'questions/method/field-t',
        role: 'beside',
      }),
    )
  }
  return rows
}

/** Effort in the unit that rates are told in: hours; 100 flowers and an hour; 100 m2 and an hour; a scan. */
export function perUnit(
  measure: 'time' | 'flower' | 'area',
  isSnapshot: boolean,
): { readonly scale: number; readonly unit: Saying } {
  if (isSnapshot) return { scale: measure === 'time' ? 1 : 100, unit: saying(`questions/unit/scan/${measure}`) }
  return { scale: measure === 'time' ? 60 : 6000, unit: saying(`questions/unit/rate/${measure}`) }
}

/** What was counted at each level, with exact limits that hold for these watches only. */
function watchEstimates(asked: ContrastCase, found: PairVerdict): readonly Estimate[] {
  const kind = found.kind.kind.label
  const levels = countedByLevel(asked, found.kind)
  const { scale, unit } = perUnit(asked.measure, asked.design.unit === 'snapshot')
  const rates = levels.flatMap(({ level, total, effort, watches }): readonly Estimate[] => {
    if (!(effort > 0)) return []
    const { lower, upper } = poissonInterval(total)
    return [
      {
        id: `rate/${kind}/${level}`,
        label: saying('questions/estimate/rate-at', { kind, level, total }),
        value: (total / effort) * scale,
        interval: { low: (lower / effort) * scale, high: (upper / effort) * scale, level: 0.95 },
        unit,
        n: watches,
        counts: 'watches',
        method: saying('questions/method/poisson-watches'),
        role: 'beside',
        verdict: null,
      },
    ]
  })
  const told = found.pair.kind === 'refused' && asked.against === null && asked.design.structure !== 'before-after-control'
  const exact = told ? exactRatio(levels, found.pair.level) : null
  if (exact === null) return rates
  return [
    ...rates,
    {
      id: `ratio/${kind}/${asked.design.levels[found.pair.level] ?? ''}/these-watches`,
      label: saying('questions/estimate/ratio-watches', {
        kind,
        levelA: levels[0]?.level ?? '',
        levelB: levels[found.pair.level]?.level ?? '',
      }),
      value: finite(exact.ratio),
      interval: { low: finite(exact.limits.lower), high: finite(exact.limits.upper), level: 0.95 },
      unit: ratioUnit,
      n: levels.reduce((sum, { watches }) => sum + watches, 0),
      counts: 'watches',
      method: saying('questions/method/exact-ratio'),
      role: 'beside',
      verdict: null,
    },
  ]
}

export function contrastEstimates(asked: ContrastCase, found: readonly PairVerdict[]): readonly Estimate[] {
  const firsts = found.filter((own, k) => found.findIndex((other) => other.kind === own.kind) === k)
  return [...found.flatMap((own) => pairEstimates(asked, own)), ...firsts.flatMap((own) => watchEstimates(asked, own))]
}
