import type { Estimate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { type Interval, oddsRatioExact, ratioOfContrast } from '@thrum/stats'
import { auditContrast, fieldContrast, isBlocked, type KindSet, kindSet, talliesOf } from '@thrum/survey'
import type { ContrastCase } from './contrast-case.ts'
import { finite } from './estimates.ts'
import { againstTheRest, commonestKind, sharesAt } from './watches.ts'

/** A kind against all others, level against level: what thins all alike cancels. Offered where a rate is blocked. */
export interface RelativeOffer {
  readonly kind: string
  readonly levelA: string
  readonly levelB: string
  readonly ratio: number
  readonly limits: Interval
  /** Fields behind the limits; null: these watches only. */
  readonly fields: number | null
}

function restOf(asked: ContrastCase, kind: KindSet): KindSet {
  const kinds = asked.snapshot.kinds.map((_, k) => k).filter((k) => !kind.kinds.includes(k))
  return { label: 'all other kinds', kinds, class: 'other' }
}

/** Field-level relative contrast where the design carries one, else the exact odds ratio of the pooled watches. */
export function relativeOffer(asked: ContrastCase): RelativeOffer | null {
  const { snapshot, design } = asked
  const first = asked.kinds[0]?.kind
  const label = first === undefined || first.kinds.length === snapshot.kinds.length ? commonestKind(asked) : first.label
  if (label === null || asked.against !== null || design.levels.length !== 2 || design.structure === 'before-after-control')
    return null
  const kind = kindSet(snapshot, label)
  const rest = restOf(asked, kind)
  if (rest.kinds.length === 0) return null
  const found = fieldContrast(snapshot, design, asked.tangles, talliesOf(snapshot, kind), talliesOf(snapshot, rest))
  const pair = found.pairs[0]
  const names = { kind: label, levelA: design.levels[0] ?? '', levelB: design.levels[1] ?? '' }
  const selected = Array.from(asked.selected.rows)
  const blocked = isBlocked(
    auditContrast({
      snapshot,
      design,
      tangles: asked.tangles,
      selected,
      kinds: [kind, rest],
      worth: asked.worth,
      relative: true,
    }),
  )
  if (pair?.kind === 'estimated' && !blocked) {
    const { ratio, lower, upper } = ratioOfContrast(pair.contrast)
    return { ...names, ratio, limits: { lower, upper }, fields: pair.units.z.length }
  }
  const [before, after] = [againstTheRest(asked, label, 0), againstTheRest(asked, label, 1)]
  if (before === null || after === null) return null
  const exact = oddsRatioExact(after.first, after.second, before.first, before.second)
  // Without a single other visitor at one level the ratio is endless, and nothing that a sentence could hold.
  return exact.kind === 'ratio' && Number.isFinite(exact.ratio)
    ? { ...names, ratio: exact.ratio, limits: exact.limits, fields: null }
    : null
}

export function relativeEstimate(offer: RelativeOffer, watches: number): Estimate {
  return {
    id: `relative/${offer.kind}/${offer.levelB}`,
    label: saying('questions/estimate/relative', { kind: offer.kind, levelA: offer.levelA, levelB: offer.levelB }),
    value: finite(offer.ratio),
    interval: { low: finite(offer.limits.lower), high: finite(offer.limits.upper), level: 0.95 },
    unit: saying('questions/unit/ratio'),
    n: offer.fields ?? watches,
    counts: offer.fields === null ? 'watches' : 'fields',
    method: saying(offer.fields === null ? 'questions/method/odds-exact' : 'questions/method/relative-t'),
    role: 'beside',
    verdict: null,
  }
}

/** Each kind's share among all visitors, level by level, with intervals scoped to what they rest on. */
export function shareEstimates(asked: ContrastCase): readonly Estimate[] {
  const { design } = asked
  if (design.structure === 'before-after-control') return []
  return design.levels.flatMap((level, side) => {
    const watches = design.levelOf.reduce((sum, own) => sum + (own === side ? 1 : 0), 0)
    return sharesAt(asked, side).map(
      ({ kind, share, limits, fields, part, whole }): Estimate => ({
        id: `share/${kind}/${level}`,
        label: saying('questions/estimate/share-at', { kind, level, part, whole }),
        value: share,
        interval: { low: limits.lower, high: limits.upper, level: 0.95 },
        unit: saying('questions/unit/share'),
        n: fields ?? watches,
        counts: fields === null ? 'watches' : 'fields',
        method: saying(fields === null ? 'questions/method/goodman' : 'questions/method/share-t'),
        role: 'beside',
        verdict: null,
      }),
    )
  })
}

export function relativeSaying(offer: RelativeOffer): Saying {
  return saying(offer.fields === null ? 'questions/can-say/relative-watches' : 'questions/can-say/relative-fields', {
    kind: offer.kind,
    levelA: offer.levelA,
    levelB: offer.levelB,
    ratio: offer.ratio,
    low: offer.limits.lower,
    high: Number.isFinite(offer.limits.upper) ? offer.limits.upper : 0,
    ends: Number.isFinite(offer.limits.upper) ? 'closed' : 'open',
    fields: offer.fields ?? 0,
  })
}
