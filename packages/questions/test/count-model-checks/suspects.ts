import type { CheckMade, CheckSubject, Influence, LeftOut, ModelSuspect, Shown, ShownLabel } from '@thrum/stats'

const line = (label: ShownLabel, found: number, expected: number): Shown => ({
  label,
  rows: 12,
  found,
  expected,
  least: 0.5 * expected,
  most: 1.6 * expected,
})

/** Lines as each check has them. */
const linesOf: { readonly [kind in CheckSubject['kind']]: readonly Shown[] } = {
  uniformity: [line({ kind: 'quantiles', low: 0, high: 0.1 }, 19, 8), line({ kind: 'quantiles', low: 0.1, high: 0.2 }, 2, 8)],
  dispersion: [line({ kind: 'means', low: 1.25, high: 4 }, 2.4, 1), line({ kind: 'all-rows' }, 0.3, 1)],
  zeros: [line({ kind: 'means', low: 1.25, high: 4 }, 0, 3.5), line({ kind: 'means', low: 4, high: 9 }, 7, 1.2)],
  outliers: [line({ kind: 'beyond', side: 'above' }, 3, 0.2), line({ kind: 'beyond', side: 'below' }, 0, 0.1)],
  covariate: [line({ kind: 'range', low: -1.5, high: 14 }, 0, 40), line({ kind: 'range', low: 14, high: 14 }, 95, 44)],
  time: [line({ kind: 'range', low: 20_225, high: 20_228 }, 30, 41), line({ kind: 'range', low: 20_230, high: 20_230 }, 64, 44)],
  autocorrelation: [
    { ...line({ kind: 'apart', visits: 1 }, 0.42, 0), least: -0.3, most: 0.1 },
    { ...line({ kind: 'apart', visits: 2 }, 0.2, 0), least: -0.25, most: 0.15 },
  ],
}

export const checkMade = (check: CheckSubject, own: Partial<CheckMade> = {}): CheckMade => ({
  kind: 'checked',
  check,
  statistic: 3,
  expected: { low: 0.5, high: 1.2 },
  p: 0.004,
  holm: 0.028,
  verdict: 'suspect',
  side: 'above',
  scale: check.kind === 'outliers' || check.kind === 'autocorrelation' ? 'plain' : 'ratio',
  lines: linesOf[check.kind],
  points: null,
  rows: [],
  ...own,
})

const subjects: readonly CheckSubject[] = [
  { kind: 'uniformity' },
  { kind: 'dispersion' },
  { kind: 'zeros' },
  { kind: 'outliers' },
  { kind: 'covariate', name: 'temperature' },
  { kind: 'time' },
  { kind: 'autocorrelation' },
]

const sum: Influence['sums'][number] = { name: 'strip / no strip', estimate: 0.9, lower: 0.2, upper: 1.6 }
const part = { by: 'field', rows: 8 } as const
const refitted = (level: string, estimate: number, change: number): LeftOut => ({
  ...part,
  level,
  kind: 'refitted',
  sums: [
    {
      kind: 'estimated',
      sum: sum.name,
      estimate,
      lower: estimate - 0.7,
      upper: estimate + 0.7,
      change,
      ratio: Math.exp(estimate - 0.9),
      turns: estimate < 0.7,
    },
  ],
})
const influence = (leftOut: LeftOut): ModelSuspect => ({
  kind: 'influence',
  verdict: 'suspect',
  sum,
  rows: 80,
  leftOut,
  beside: [refitted('Marl Field', 0.85, -0.14), { ...part, level: 'Weir Field', kind: 'not-fitted', because: 'all-zero' }],
})

/** A suspect of every sort. */
export const suspects: readonly (readonly [string, ModelSuspect])[] = [
  ...subjects.flatMap((check) =>
    (['above', 'below'] as const).map(
      (side) => [`${check.kind}, ${side}`, { kind: 'check', verdict: 'suspect', check: checkMade(check, { side }) }] as const,
    ),
  ),
  ['a wild field', influence(refitted('Averlusk Orchard', 0.4, -1.4))],
  [
    'a field on which all hangs',
    influence({ ...part, level: 'Averlusk Orchard', kind: 'refitted', sums: [{ kind: 'aliased', sum: sum.name, columns: [1] }] }),
  ],
  [
    'a field without which nothing can be fitted',
    influence({ ...part, level: 'Averlusk Orchard', kind: 'separated', columns: [1] }),
  ],
]
