import type { Estimate, Snapshot } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { ratioOfContrast } from '@thrum/stats'
import type { Finding, Measure, PairContrast } from '@thrum/survey'
import { type ContrastCase, type ContrastOptions, contrastCase } from '../contrast/contrast-case.ts'
import { finite } from '../contrast/estimates.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'

/** The same comparison made another fair way, shown beside the headline. */
export interface Variant {
  readonly estimates: readonly Estimate[]
  /** Kinds (by label) and levels for which it points the other way. */
  readonly disagrees: (kind: string, level: number) => boolean
}

function estimated(asked: ContrastCase): readonly { readonly kind: string; readonly pair: PairContrast }[] {
  return asked.kinds.flatMap(({ kind, contrast }) =>
    contrast.pairs.flatMap((pair) => (pair.kind === 'estimated' ? [{ kind: kind.label, pair }] : [])),
  )
}

function variantOf(asked: ContrastCase, name: string): Variant {
  const found = estimated(asked)
  return {
    estimates: found.map(({ kind, pair }): Estimate => {
      const { ratio, lower, upper } = ratioOfContrast(pair.contrast)
      const level = asked.design.levels[pair.level] ?? ''
      return {
        id: `ratio/${kind}/${level}/${name}`,
        label: saying(`questions/estimate/variant/${name}`, { kind, levelA: asked.design.levels[0] ?? '', levelB: level }),
        value: finite(ratio),
        interval: { low: finite(lower), high: finite(upper), level: 0.95 },
        unit: saying('questions/unit/ratio'),
        n: pair.units.z.length,
        counts: 'fields',
        method: saying('questions/method/field-t'),
        role: 'beside',
        verdict: null,
      }
    }),
    disagrees: (kind, level) =>
      found.some((own) => own.kind === kind && own.pair.level === level && own.pair.contrast.estimate < 0),
  }
}

/** The other measure that stands beside: per flower and per area are answered side by side. */
function otherMeasure(asked: ContrastCase): Measure | null {
  if (asked.against !== null || asked.measure === 'time') return null
  if (asked.measure === 'area') return 'time'
  const area = asked.snapshot.tables.count.columns.area.values
  return Array.from(asked.selected.rows).every((row) => (area[row] ?? 0) > 0) ? 'area' : 'time'
}

export interface Variants {
  readonly estimates: readonly Estimate[]
  readonly findings: readonly Finding[]
  /** True for a pair whose two fair measures of effort point in opposite directions. */
  readonly opposed: (found: PairVerdict) => boolean
}

/** With the counts outside the weather window; and, for a rate per flower or area, by the other measure. */
export function variantsOf(snapshot: Snapshot, asked: ContrastCase, options: ContrastOptions): Variants {
  const leftOut = asked.design.leftOut.some(({ because }) => because === 'outside-window')
  const whole = leftOut ? variantOf(contrastCase(snapshot, options, asked.worth, { window: 'all' }), 'window-all') : null
  const measure = otherMeasure(asked)
  const other = measure === null ? null : variantOf(contrastCase(snapshot, options, asked.worth, { measure }), `per-${measure}`)
  const opposed = (found: PairVerdict): boolean => {
    if (other === null || found.pair.kind === 'refused' || other.estimates.length === 0) return false
    return other.disagrees(found.kind.kind.label, found.pair.level) !== found.pair.contrast.estimate < 0
  }
  const disagreeing = estimated(asked).some(
    ({ kind, pair }) =>
      other !== null && other.estimates.length > 0 && other.disagrees(kind, pair.level) !== pair.contrast.estimate < 0,
  )
  return {
    estimates: [...(whole?.estimates ?? []), ...(other?.estimates ?? [])],
    findings: disagreeing
      ? [
          {
            code: 'measures-disagree',
            severity: 'warn',
            text: saying('questions/caution/measures-disagree', { other: saying(`questions/measure/${measure}`) }),
            rows: Array.from(asked.design.rows),
            cure: null,
          },
        ]
      : [],
    opposed,
  }
}
