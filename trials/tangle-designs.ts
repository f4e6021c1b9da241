// Made survey designs, sound and tangled, to hold the audit against. Nothing here comes from the audit.
//
// Families, fixed before any design was put to the audit: every structure with every planted nuisance.
//
//   structure                      who has the level                 ordinary dates
//   between, own dates             a field                           rounds; four fields of a crop a day, each on its own day
//   between, common dates          a field                           all fields of a crop on the same days
//   within                         a watch; both levels at a visit   the same
//   before/after                   a period; every field in both     the same, one period after the other
//   before/after with controls     treated fields, afterwards        the same in both arms
//
//   planted: date, stage, hour, temperature, observer, season, position, date with stage
//
// A design has 3 to 12 fields an arm (the arms alike, or one up to half as large again), 1 to 3 crops as blocks with both levels
// in each, 2 to 10 visits a field (1 to 5 in each period of before/after), watches at one or two plots a visit, of 10 minutes
// (in a quarter of the designs of 10 or 15).
//
// Ordinary, as a careful person plans it: in each crop a route through the fields on which levels alternate, walked in turn
// forwards and backwards; short routes by turns before and after noon; two to four observers who rotate, the same for
// neighbours on the route; edge and centre in turn, the same for neighbours; within fields the order of the levels swapped in
// turn; afterwards everything as before. What nobody can plan has the spread of nature: fields of a crop differ in bloom by
// SD 0.5 codes, days in warmth by SD 2.5 degrees, years in the start of bloom by SD 3 days; bloom lasts 20 to 35 days; stages
// are written down in whole codes.
//
// Planted, with a strength s (half of the designs strong, s = 1 - u^2 / 4; half weak, s = 0.6 u; u uniform): what is asked (the
// level; with controls: treated and afterwards) moves a number by s times a size drawn from the range below, and every unit
// (field, field and period, or watch) has a scatter of SD (1 - s) times the number below; observers, seasons and positions, and
// days where arms have common ones, go over to the level's own in a share s of the visits, or of whole units. Date with stage:
// every unit has days of its own (SD 5), whatever its level, and the level moves the stage that it shows on a given day.

import type { Rng } from '@thrum/model/ground'
import { type Planted, type Score, type Structure, scoreDesign, type Watch } from './tangle-score.ts'
import { type Day, watchesOf } from './tangle-watches.ts'

export const structures: readonly Structure[] = [
  'between, own dates',
  'between, common dates',
  'within',
  'before/after',
  'before/after with controls',
]
export const plantedNuisances: readonly Planted[] = [
  'date',
  'stage',
  'hour',
  'temperature',
  'observer',
  'season',
  'position',
  'date with stage',
]

export interface Family {
  readonly structure: Structure
  readonly planted: Planted
}

export const families: readonly Family[] = structures.flatMap((structure) =>
  plantedNuisances.map((planted) => ({ structure, planted })),
)

export interface MadeField {
  readonly name: string
  readonly block: string
  readonly level: 0 | 1
  /** Place on the route through its crop, and how many fields that route has. */
  readonly place: number
  readonly route: number
}

/** What a person decided before the first day. */
export interface MadePlan extends Family {
  readonly strength: number
  /** Whole units go over to a level's own observer, season, position; else single visits. */
  readonly byUnit: boolean
  readonly fields: readonly MadeField[]
  /** Visits to a field, in each period. */
  readonly visits: number
  readonly observers: number
  readonly plots: 1 | 2
  readonly durations: readonly number[]
  readonly bloomDays: number
  /** Days between rounds of visits, and between before and after. */
  readonly pace: number
  readonly gap: number
}

export interface MadeDesign extends Family {
  readonly fields: number
  readonly watches: readonly Watch[]
  /** The first day afterwards; null where time does not divide. */
  readonly since: Day | null
  readonly score: Score
}

const crops = ['cherry', 'plum', 'sunflower'] as const

export const uniform = (rng: Rng, from: number, to: number): number => from + (to - from) * rng.uniform()
const whole = (rng: Rng, from: number, to: number): number => from + rng.below(to - from + 1)
const oneOf = <T>(rng: Rng, list: readonly T[]): T => list[rng.below(list.length)] as T

export const isBeforeAfter = (structure: Structure): boolean => structure.startsWith('before/after')
const isOfFields = (structure: Structure): boolean =>
  structure.startsWith('between') || structure === 'before/after with controls'

/** Fields along the route of each crop, levels in turn; the level that begins changes from crop to crop. */
function makeFields(rng: Rng, withLevels: boolean): readonly MadeField[] {
  const small = whole(rng, 3, 12)
  const large = Math.min(12, oneOf(rng, [small, Math.round(small * uniform(rng, 1, 1.5))]))
  const arms = withLevels ? oneOf(rng, [[small, large] as const, [large, small] as const]) : ([small, 0] as const)
  const blocks = whole(rng, 1, 3)
  return Array.from({ length: blocks }, (_, block) => block).flatMap((block) => {
    const left = arms.map((fields) => Math.floor(fields / blocks) + (block < fields % blocks ? 1 : 0)) as [number, number]
    const route = left[0] + left[1]
    const crop = crops[block] as string
    return Array.from({ length: route }, (_, place): MadeField => {
      const wanted = (place + block) % 2 === 0 ? 0 : 1
      const level = left[wanted] > 0 ? wanted : wanted === 0 ? 1 : 0
      left[level] -= 1
      return { name: `${crop} ${place + 1}`, block: crop, level, place, route }
    })
  })
}

function makePlan({ structure, planted }: Family, rng: Rng): MadePlan {
  const periods = isBeforeAfter(structure) ? 2 : 1
  const drawn = periods === 2 ? whole(rng, 1, 5) : whole(rng, 2, 10)
  // Two seasons need two visits.
  const visits = planted === 'season' ? Math.max(2, drawn) : drawn
  const bloomDays = uniform(rng, 20, 35)
  const u = rng.uniform()
  return {
    structure,
    planted,
    strength: rng.below(2) === 0 ? 1 - (u * u) / 4 : 0.6 * u,
    byUnit: rng.below(2) === 0,
    fields: makeFields(rng, isOfFields(structure)),
    visits,
    observers: whole(rng, 2, 4),
    plots: oneOf(rng, [1, 2]),
    durations: rng.below(4) === 0 ? [10, 15] : [10],
    bloomDays,
    pace: uniform(rng, 0.5, 1) * Math.min(7, bloomDays / (visits * periods)),
    gap: periods === 2 ? uniform(rng, 1, 4) : 0,
  }
}

/** One design of a family. The same stream gives the same design. */
export function makeDesign(family: Family, rng: Rng): MadeDesign {
  const plan = makePlan(family, rng.fork('plan'))
  const { watches, since } = watchesOf(plan, rng.fork('watches'))
  const score = scoreDesign(family.structure, family.planted, watches)
  return { ...family, fields: plan.fields.length, watches, since, score }
}
