import type { Estimate } from '@thrum/model'
import { type Saying, saying } from '@thrum/model/ground'
import { type Interval, oddsRatioExact, ratioOfContrast } from '@thrum/stats'
import {
  type AdjustedFor,
  allKinds,
  auditContrast,
  fieldContrast,
  isBlocked,
  type KindSet,
  kindSet,
  nuisanceSaying,
  talliesOf,
} from '@thrum/survey'
import type { ContrastCase } from './contrast-case.ts'
import { shareUnit } from './phrases.ts'
import { finite, ratioUnit } from './ratio-estimate.ts'
import { commonestKind, relativeAt, sharesAt } from './watches.ts'

/** A kind against all others, level against level: what thins all alike cancels. Offered where a rate is blocked. */
export interface RelativeOffer {
  readonly kind: string
  readonly levelA: string
  readonly levelB: string
  readonly ratio: number
  readonly limits: Interval
  /** Fields behind the limits; null: these watches only. */
  readonly fields: number | null
  /** What it was adjusted for, and the ratio without that; null where for nothing. */
  readonly adjusted: { readonly for: readonly AdjustedFor[]; readonly unadjusted: Interval & { readonly ratio: number } } | null
}

function restOf(asked: ContrastCase, kind: KindSet): KindSet {
  const kinds = kindSet(asked.snapshot, allKinds).kinds.filter((k) => !kind.kinds.includes(k))
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
    const adjusted = pair.adjusted.length === 0 ? null : { for: pair.adjusted, unadjusted: ratioOfContrast(pair.unadjusted) }
    return { ...names, ratio, limits: { lower, upper }, fields: pair.units.z.length, adjusted }
  }
  const [before, after] = [relativeAt(asked, kind, 0), relativeAt(asked, kind, 1)]
  if (before === null || after === null) return null
  const exact = oddsRatioExact(after.first, after.second, before.first, before.second)
  // Without a single other visitor at one level the ratio is endless, and nothing that a sentence could hold.
  return exact.kind === 'ratio' && Number.isFinite(exact.ratio)
    ? { ...names, ratio: exact.ratio, limits: exact.limits, fields: null, adjusted: null }
    : null
}

/** The offer as estimates: as it is said, and without its adjustment where there is one. */
export function relativeEstimates(offer: RelativeOffer, watches: number): readonly Estimate[] {
  const { kind, levelA, levelB, fields, adjusted } = offer
  const make = (name: string, label: string, method: string, found: Interval & { readonly ratio: number }): Estimate => ({
    id: `relative/${kind}/${levelB}${name}`,
    label: saying(label, { kind, levelA, levelB }),
    value: finite(found.ratio),
    interval: { low: finite(found.lower), high: finite(found.upper), level: 0.95 },
    unit: ratioUnit,
    scale: 'ratio',
    n: fields ?? watches,
    counts: fields === null ? 'watches' : 'fields',
    method: saying(method),
    role: 'beside',
    verdict: null,
  })
  const told = { ratio: offer.ratio, ...offer.limits }
  if (fields === null) return [make('', 'questions/estimate/relative', 'questions/method/odds-exact', told)]
  if (adjusted === null) return [make('', 'questions/estimate/relative', 'questions/method/relative-t', told)]
  return [
    make('', 'questions/estimate/relative', 'questions/method/relative-t-adjusted', told),
    make('/unadjusted', 'questions/estimate/relative-unadjusted', 'questions/method/relative-t', adjusted.unadjusted),
  ]
}

/** Each kind's share among all visitors, level by level, with intervals scoped to what they rest on. */
export function shareEstimates(asked: ContrastCase): readonly Estimate[] {
  const { design } = asked
  if (design.structure === 'before-after-control') return []
  return design.levels.flatMap((level, side) => {
    const { shares, watches } = sharesAt(asked, side)
    return shares.map(
      ({ kind, share, limits, fields, part, whole }): Estimate => ({
        id: `share/${kind}/${level}`,
        label: saying('questions/estimate/share-at', { kind, level, part, whole }),
        value: share,
        interval: { low: limits.lower, high: limits.upper, level: 0.95 },
        unit: shareUnit(asked.sightingsOnly),
        scale: 'share',
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
    adjusted: offer.adjusted === null ? 'no' : 'yes',
    nuisances: offer.adjusted?.for.map(nuisanceSaying) ?? [],
    plain: offer.adjusted?.unadjusted.ratio ?? offer.ratio,
  })
}
