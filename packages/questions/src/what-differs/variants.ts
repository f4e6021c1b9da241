import type { Estimate, Snapshot } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import type { Finding, Measure, PairContrast } from '@thrum/survey'
import { type ContrastCase, type ContrastOptions, contrastCase } from '../contrast/contrast-case.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'
import { ratioEstimate, type ToldPair } from '../contrast/ratio-estimate.ts'
import type { OtherWindow } from './analyses.ts'

/** The same comparison made another fair way, shown beside the headline. */
export interface Variant {
  readonly estimates: readonly Estimate[]
  /** True where it points the other way than this pair of a kind (by label); a pair it has no answer for disagrees with none. */
  readonly disagrees: (kind: string, pair: PairContrast) => boolean
}

function estimated(asked: ContrastCase): readonly ToldPair[] {
  return asked.kinds.flatMap(({ kind, contrast }) =>
    contrast.pairs.flatMap((pair) => (pair.kind === 'estimated' ? [{ kind, pair }] : [])),
  )
}

function variantOf(asked: ContrastCase, name: string): Variant {
  const found = estimated(asked)
  return {
    estimates: found.map((own) =>
      ratioEstimate(asked, own, {
        name,
        label: `questions/estimate/variant/${name}`,
        contrast: own.pair.contrast,
        adjusted: own.pair.adjusted.length > 0,
      }),
    ),
    disagrees: (kind, { level, contrast }) =>
      found.some(
        (own) => own.kind.label === kind && own.pair.level === level && own.pair.contrast.estimate < 0 !== contrast.estimate < 0,
      ),
  }
}

/** True where the watched area of every selected count is known. */
function areaKnown({ snapshot, selected }: ContrastCase): boolean {
  const area = snapshot.tables.count.columns.area.values
  return Array.from(selected.rows).every((row) => (area[row] ?? 0) > 0)
}

/** The other measure that stands beside: per flower and per area are answered side by side. */
function otherMeasure(asked: ContrastCase, asPut: Measure): Measure | null {
  if (asked.against !== null || asPut === 'time') return null
  if (asked.measure !== asPut) return asPut
  if (asPut === 'area') return 'time'
  return areaKnown(asked) ? 'area' : 'time'
}

/**
 * Where the levels themselves differ in open flowers, a rate per flower hides what they did: per area is the headline then
 * (per time, where areas are not known), and the rate per flower stands beside it.
 */
export function fairMeasure(snapshot: Snapshot, asked: ContrastCase, options: ContrastOptions): ContrastCase {
  const differ = estimated(asked).some(({ pair }) => pair.flowersDiffer)
  return differ ? contrastCase(snapshot, options, asked.worth, { measure: areaKnown(asked) ? 'area' : 'time' }) : asked
}

export interface Variants {
  readonly estimates: readonly Estimate[]
  readonly findings: readonly Finding[]
  /** The whole comparison with the counts outside the weather window; null where none was left out. */
  readonly whole: ContrastCase | null
  /** True for a pair whose two fair measures of effort point in opposite directions. */
  readonly opposed: (found: PairVerdict) => boolean
}

function measureFindings(asked: ContrastCase, asPut: Measure): readonly Finding[] {
  if (asked.measure === asPut) return []
  const text = saying('questions/caution/flowers-differ', { measure: saying(`questions/measure/${asked.measure}`) })
  return [{ code: 'flowers-differ', severity: 'warn', text, rows: Array.from(asked.design.rows), cure: null }]
}

function disagreement(asked: ContrastCase, other: Measure): Finding {
  const text = saying('questions/caution/measures-disagree', { other: saying(`questions/measure/${other}`) })
  return { code: 'measures-disagree', severity: 'warn', text, rows: Array.from(asked.design.rows), cure: null }
}

/** With the counts outside the weather window; and, for a rate per flower or area, by the other measure. */
export function variantsOf(snapshot: Snapshot, asked: ContrastCase, options: ContrastOptions): Variants {
  const leftOut = asked.design.leftOut.some(({ because }) => because === 'outside-window')
  const whole = leftOut ? contrastCase(snapshot, options, asked.worth, { measure: asked.measure, window: 'all' }) : null
  const asPut = options.per ?? 'time'
  const measure = otherMeasure(asked, asPut)
  const other = measure === null ? null : variantOf(contrastCase(snapshot, options, asked.worth, { measure }), `per-${measure}`)
  const opposed = ({ kind, pair }: PairVerdict): boolean =>
    other !== null && pair.kind === 'estimated' && other.disagrees(kind.kind.label, pair)
  const disagreeing = estimated(asked).some(({ kind, pair }) => other?.disagrees(kind.label, pair) === true)
  return {
    estimates: [...(whole === null ? [] : variantOf(whole, 'window-all').estimates), ...(other?.estimates ?? [])],
    whole,
    findings: [...measureFindings(asked, asPut), ...(disagreeing ? [disagreement(asked, measure ?? 'time')] : [])],
    opposed,
  }
}

/**
 * The comparison by the other choice about counts outside the weather window, where there are any.
 *
 * @param whole with them, where the headline leaves some out
 */
export function otherWindow(
  snapshot: Snapshot,
  asked: ContrastCase,
  options: ContrastOptions,
  whole: ContrastCase | null,
): OtherWindow | null {
  if (options.window !== 'all') return whole === null ? null : { window: 'all', asked: whole }
  const inside = contrastCase(snapshot, options, asked.worth, { measure: asked.measure, window: 'in' })
  const leftOut = inside.design.leftOut.some(({ because }) => because === 'outside-window')
  return leftOut ? { window: 'in', asked: inside } : null
}
