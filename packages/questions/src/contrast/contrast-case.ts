import type { OptionsOf, Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import {
  allKinds,
  areSightingsOnly,
  auditContrast,
  buildDesign,
  type ContrastAsked,
  type Design,
  type FieldContrast,
  type Finding,
  fieldContrast,
  type KindSet,
  kindSet,
  type Measure,
  type Nuisance,
  nuisancesOf,
  type SelectedCounts,
  stagesApart,
  type Tangles,
  talliesOf,
  tanglesOf,
} from '@thrum/survey'
import type { contrastOptions } from './options.ts'
import { isEarly, primaryKind } from './plan.ts'
import { selectByOptions } from './selection.ts'

export type ContrastOptions = OptionsOf<typeof contrastOptions>

/** One kind's contrast, with its tallies. */
export interface KindContrast {
  readonly kind: KindSet
  readonly tallies: Float64Array
  readonly contrast: FieldContrast
}

/** A contrast as it was asked, its design, the audit of it, and what the counts say, kind by kind. */
export interface ContrastCase {
  readonly snapshot: Snapshot
  readonly selected: SelectedCounts
  readonly measure: Measure
  readonly design: Design
  readonly tangles: Tangles
  readonly nuisances: readonly Nuisance[]
  readonly kinds: readonly KindContrast[]
  readonly against: { readonly kind: KindSet; readonly tallies: Float64Array } | null
  readonly findings: readonly Finding[]
  readonly worth: number
  /** True where shares are among sightings: the file does not say whether an absent kind was looked for. */
  readonly sightingsOnly: boolean
  /** True while counts of the plan are still to come. */
  readonly early: boolean
  /** The kind that the plan declared primary before counting began. */
  readonly primary: string | null
}

/** S that is suggested where nobody set one (product charter): 2 for one kind, 1.5 for all together. */
export function suggestedWorth(kinds: readonly string[]): number {
  return kinds.length === 1 && kinds[0] === allKinds ? 1.5 : 2
}

export function kindsAsked(options: ContrastOptions): readonly string[] {
  return options.kinds === undefined || options.kinds.length === 0 ? [allKinds] : options.kinds
}

/** How a contrast is made in another way than it was put. */
export interface Vary {
  readonly measure?: Measure
  readonly window?: 'in' | 'all'
  /** False where counts alone are told: then those without effort enter as well. */
  readonly needsEffort?: boolean
}

function askedOf(options: ContrastOptions, kinds: readonly KindSet[], vary: Vary): ContrastAsked {
  return {
    between: options.between ?? null,
    levels: options.levels ?? null,
    since: options.since ?? null,
    step: options.step ?? null,
    measure: vary.measure ?? options.per ?? 'time',
    window: vary.window ?? options.window ?? 'in',
    needsEffort: vary.needsEffort ?? options.against === undefined,
    kindClass: kinds.length === 1 ? (kinds[0]?.class ?? 'other') : 'other',
  }
}

/** The contrast over the selected counts, in a measure and with or without counts outside the window. */
export function contrastCase(snapshot: Snapshot, options: ContrastOptions, worth: number, vary: Vary = {}): ContrastCase {
  const selected = selectByOptions(snapshot, options)
  const sets = kindsAsked(options).map((name) => kindSet(snapshot, name))
  const against = options.against === undefined ? null : kindSet(snapshot, options.against)
  if (against !== null && options.step !== undefined) throw new ThrumError('questions/slope-relative')
  if (options.step !== undefined && options.since !== undefined) throw new ThrumError('questions/slope-since')
  if (against !== null && sets.some((set) => set.kinds.some((kind) => against.kinds.includes(kind)))) {
    throw new ThrumError('questions/against-itself', { kind: against.label })
  }
  const design = buildDesign(snapshot, selected.rows, selected.unit, askedOf(options, sets, vary))
  if (design.levels.length < 2) {
    throw new ThrumError('questions/one-level', { factor: options.between ?? '', level: design.levels[0] ?? '' })
  }
  const tangles = tanglesOf(snapshot, design)
  const againstTallies = against === null ? null : talliesOf(snapshot, against)
  const kinds = sets.map((kind): KindContrast => {
    const tallies = talliesOf(snapshot, kind)
    return { kind, tallies, contrast: fieldContrast(snapshot, design, tangles, tallies, againstTallies) }
  })
  const input = {
    snapshot,
    design,
    tangles,
    selected: Array.from(selected.rows),
    kinds: against === null ? sets : [...sets, against],
    worth,
    relative: against !== null,
  }
  const adjusted = kinds.flatMap(({ contrast }) =>
    contrast.pairs.flatMap((pair) => (pair.kind === 'estimated' ? pair.adjusted : [])),
  )
  return {
    snapshot,
    selected,
    measure: design.measure,
    design,
    tangles,
    nuisances: nuisancesOf(snapshot, design),
    kinds,
    against: against === null || againstTallies === null ? null : { kind: against, tallies: againstTallies },
    findings: [...stagesApart(input, adjusted), ...auditContrast(input)],
    worth,
    sightingsOnly: areSightingsOnly(snapshot, selected.rows),
    early: isEarly(snapshot),
    primary: primaryKind(snapshot),
  }
}

/** The same for what may be told of counts alone, shares and relative counts: where effort is missing, it is not needed. */
export function countsAlone(snapshot: Snapshot, asked: ContrastCase, options: ContrastOptions): ContrastCase {
  const lacking = asked.design.leftOut.some(({ because }) => because === 'no-effort')
  return lacking ? contrastCase(snapshot, options, asked.worth, { measure: asked.measure, needsEffort: false }) : asked
}
