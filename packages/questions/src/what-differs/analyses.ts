import { type Saying, saying } from '@thrum/model/ground'
import type { Contrast } from '@thrum/stats'
import {
  fitStanding,
  isBlocked,
  type ModelContrast,
  type ModelVariant,
  modelContrast,
  modelVariants,
  nuisanceSaying,
  nuisancesLeftOut,
  type PairContrast,
  totalsOfPair,
  type UnitNuisance,
} from '@thrum/survey'
import type { ContrastCase } from '../contrast/contrast-case.ts'
import type { PairVerdict } from '../contrast/pair-verdict.ts'
import { refusalSaying } from './headline.ts'
import { nameWithout, type OtherFits, readOf, verdictWithout } from './sensitivity.ts'

/** What an analysis is made of, so that a receipt can make it again. */
export type AnalysisSource =
  /** The units of the headline, adjusted for some nuisances. */
  | { readonly kind: 'units'; readonly nuisances: readonly UnitNuisance[] }
  /** The field-level t where thinning decides. */
  | { readonly kind: 'field-t' }
  /** The comparison with or without the counts outside the weather window. */
  | { readonly kind: 'window'; readonly asked: ContrastCase; readonly pair: PairContrast }
  /** Without the counts of one visit, rows of the snapshot. */
  | { readonly kind: 'visit'; readonly rows: readonly number[] }
  | { readonly kind: 'model'; readonly model: ModelContrast }

/** One analysis of one comparison: a ratio on the log scale, or why there is none. */
export interface MadeAnalysis {
  readonly id: string
  readonly label: Saying
  readonly outcome:
    | { readonly kind: 'estimated'; readonly contrast: Contrast }
    /** Its verdict is blocked where the analysis was made and nothing is left to compare; else it has none. */
    | { readonly kind: 'none'; readonly because: Saying; readonly isBlocked: boolean }
  readonly source: AnalysisSource
}

const label = (id: string, values: Saying['values'] = {}): Saying => saying(`questions/analysis/${id}`, values)
const estimated = (contrast: Contrast): MadeAnalysis['outcome'] => ({ kind: 'estimated', contrast })
const none = (because: Saying, blocked = false): MadeAnalysis['outcome'] => ({ kind: 'none', because, isBlocked: blocked })

function asAsked({ against }: ContrastCase, pair: PairContrast): MadeAnalysis {
  const values = { adjusted: pair.adjusted.length > 0 ? 'yes' : 'no', nuisances: pair.adjusted.map(nuisanceSaying) }
  return {
    id: 'as-asked',
    label: label('as-asked', {
      ...values,
      method: saying(`questions/method/${against !== null ? 'relative-t' : pair.isThinned ? 'thinned' : 'field-t'}`),
    }),
    outcome: estimated(pair.contrast),
    source: { kind: 'units', nuisances: pair.nuisances },
  }
}

/** The field-level t, where few insects or unequal exposures bend it and thinning decides. */
function fieldT(pair: PairContrast): readonly MadeAnalysis[] {
  if (!pair.isThinned) return []
  return [{ id: 'field-t', label: label('field-t'), outcome: estimated(pair.fieldT), source: { kind: 'field-t' } }]
}

/** Adjusted for less than the headline; or, where that is adjusted for nothing, for the nuisance most tangled with the level. */
function adjustedOtherwise(asked: ContrastCase, pair: PairContrast, fits: OtherFits | null): readonly MadeAnalysis[] {
  if (pair.nuisances.length > 0) {
    const others = fits?.adjusted ?? [{ without: pair.nuisances.map(({ name }) => name), contrast: pair.unadjusted, plain: true }]
    return others.map((own) => ({
      id: own.plain ? 'unadjusted' : nameWithout(own),
      label: own.plain ? label('unadjusted') : label('without-nuisances', { nuisances: own.without.map(nuisanceSaying) }),
      outcome: estimated(own.contrast),
      source: { kind: 'units', nuisances: pair.nuisances.filter(({ name }) => !own.without.includes(name)) },
    }))
  }
  const { snapshot, design, tangles } = asked
  if (design.measured !== null || pair.notAdjusted.length > 0) return []
  for (const nuisance of nuisancesLeftOut(snapshot, design, pair.units, tangles, pair.level)) {
    const fit = fitStanding(design, pair.cells, pair.units, pair.level, [nuisance])
    if (fit.kind !== 'fitted') continue
    return [
      {
        id: `adjusted-${nuisance.name}`,
        label: label('adjusted', { nuisances: [nuisanceSaying(nuisance.name)] }),
        outcome: estimated(fit.contrast),
        source: { kind: 'units', nuisances: [nuisance] },
      },
    ]
  }
  return []
}

/** With the counts outside the weather window where the headline leaves them out, and the other way round. */
function otherWindow(asked: ContrastCase, found: PairVerdict, other: OtherWindow | null): readonly MadeAnalysis[] {
  if (other === null) return []
  const level = asked.design.levels[found.pair.level]
  const pair = other.asked.kinds
    .find(({ kind }) => kind.label === found.kind.kind.label)
    ?.contrast.pairs.find((own) => other.asked.design.levels[own.level] === level)
  if (pair === undefined) return []
  const made = { id: `window-${other.window}`, label: label(`window-${other.window}`) }
  if (pair.kind === 'refused' || isBlocked(other.asked.findings)) {
    const because = pair.kind === 'refused' ? refusalSaying(pair.refusal) : label('none/blocked')
    return [{ ...made, outcome: none(because, true), source: { kind: 'units', nuisances: [] } }]
  }
  return [{ ...made, outcome: estimated(pair.contrast), source: { kind: 'window', asked: other.asked, pair } }]
}

/** Without the visit that sways it most: of those that change the verdict, if any does, the one that moves the ratio furthest. */
function withoutVisit(
  asked: ContrastCase,
  found: PairVerdict,
  pair: PairContrast,
  fits: OtherFits | null,
): readonly MadeAnalysis[] {
  const moved = (contrast: Contrast | null): number =>
    contrast === null ? Number.POSITIVE_INFINITY : Math.abs(contrast.estimate - pair.contrast.estimate)
  const visits = fits?.visits ?? []
  const changing = visits.filter((visit) => verdictWithout(asked, found, visit) !== readOf(found))
  const [first, ...rest] = changing.length > 0 ? changing : visits
  if (first === undefined) return []
  const visit = rest.reduce((most, own) => (moved(own.contrast) > moved(most.contrast) ? own : most), first)
  return [
    {
      id: 'without-visit',
      label: label('without-visit', { field: visit.field, date: visit.date, dated: visit.date === '' ? 'no' : 'yes' }),
      outcome: visit.contrast === null ? none(label('none/nothing-left'), true) : estimated(visit.contrast),
      source: { kind: 'visit', rows: visit.rows },
    },
  ]
}

function modelId(variant: ModelVariant, model: ModelContrast, against: ContrastCase['against']): string {
  if (against !== null) return 'model-shares'
  if (variant !== 'flowers') return variant === 'minutes' ? 'model-minutes' : 'model'
  return model.kind === 'fitted' && model.flowers === 'covariate' ? 'model-flowers' : 'model-per-flower'
}

function models(asked: ContrastCase, found: PairVerdict, pair: PairContrast): readonly MadeAnalysis[] {
  const { snapshot, design, against } = asked
  const input = { snapshot, design, pair, tallies: found.kind.tallies, against: against?.tallies ?? null }
  const totals = totalsOfPair(input)
  return modelVariants(input, totals).map((variant) => {
    const model = modelContrast(input, variant, totals)
    const id = modelId(variant, model, against)
    return {
      id,
      label: label(id),
      outcome: model.kind === 'fitted' ? estimated(model.contrast) : none(label(`none/${model.because}`)),
      source: { kind: 'model', model },
    }
  })
}

/** The whole comparison with, or without, the counts outside the weather window. */
export interface OtherWindow {
  readonly window: 'all' | 'in'
  readonly asked: ContrastCase
}

/** The analyses of one comparison that apply to it, the headline first; null where nothing may be compared. */
export function analysesOf(
  asked: ContrastCase,
  found: PairVerdict,
  fits: OtherFits | null,
  other: OtherWindow | null,
): readonly MadeAnalysis[] | null {
  const { pair } = found
  if (pair.kind === 'refused' || found.verdict === 'design-blocks') return null
  return [
    asAsked(asked, pair),
    ...fieldT(pair),
    ...adjustedOtherwise(asked, pair, fits),
    ...otherWindow(asked, found, other),
    ...withoutVisit(asked, found, pair, fits),
    ...models(asked, found, pair),
  ]
}
