import type { Estimate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { poissonInterval, verdictLevels } from '@thrum/stats'
import type { ContrastCase } from './contrast-case.ts'
import type { PairVerdict } from './pair-verdict.ts'
import { finite, type RatioRow, ratioEstimate, ratioUnit } from './ratio-estimate.ts'
import { countedByLevel, exactRatio } from './watches.ts'

/** The ratio of one pair: as it decides, at plain 95 % and 90 %, and unadjusted where it was adjusted. */
function pairEstimates(asked: ContrastCase, found: PairVerdict): readonly Estimate[] {
  const { pair } = found
  if (pair.kind === 'refused') return []
  const adjusted = pair.adjusted.length > 0
  const make = (row: Omit<RatioRow, 'contrast' | 'adjusted'> & Partial<RatioRow>): Estimate =>
    ratioEstimate(asked, { kind: found.kind.kind, pair }, { contrast: pair.contrast, adjusted, ...row })
  if (found.verdict === 'design-blocks') return [make({ name: 'described', label: 'questions/estimate/ratio-described' })]
  const { deciding } = verdictLevels(found.contrasts)
  return [
    make({ name: null, label: 'questions/estimate/ratio', role: 'headline', verdict: found.verdict }),
    ...(found.contrasts > 1 ? [make({ name: 'together', label: 'questions/estimate/ratio-together', level: deciding })] : []),
    make({ name: '90', label: 'questions/estimate/ratio-90', level: 0.9 }),
    ...(adjusted
      ? [
          make({
            name: 'unadjusted',
            label: 'questions/estimate/ratio-unadjusted',
            contrast: pair.unadjusted,
            adjusted: false,
          }),
        ]
      : []),
  ]
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
    if (!(effort > 0) || !asked.design.effortKnown) return []
    const { lower, upper } = poissonInterval(total)
    return [
      {
        id: `rate/${kind}/${level}`,
        label: saying('questions/estimate/rate-at', { kind, level, total }),
        value: (total / effort) * scale,
        interval: { low: (lower / effort) * scale, high: (upper / effort) * scale, level: 0.95 },
        unit,
        scale: 'plain',
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
      scale: 'ratio',
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
