// From a plan to its watches: who stood where, when, under what sky. See tangle-designs.ts for what is ordinary and what planted.

import type { Rng } from '@thrum/model/ground'
import { isBeforeAfter, type MadeField, type MadePlan, uniform } from './tangle-designs.ts'
import type { Planted, Watch } from './tangle-score.ts'

/** A day of a year, 1 being 1 January, and the year. */
export interface Day {
  readonly day: number
  readonly year: number
}

/** Size of a planted shift, from and to, and SD of the scatter at no strength: days, codes, hours, degrees. */
const sizes = {
  date: { from: 4, to: 20, scatter: 5 },
  stage: { from: 2, to: 6, scatter: 1.5 },
  hour: { from: 1, to: 4, scatter: 1.2 },
  temperature: { from: 2, to: 6, scatter: 2 },
} as const

/** First day of bloom of each crop. Before/after has one date for all, so its crops bloom together. */
const bloomStart: { readonly [crop: string]: number } = { cherry: 105, plum: 98, sunflower: 190 }
const commonStart = 105
const firstYear = 2031
const earliest = 10.2
const latest = 15.7

const clip = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))
const normal = (rng: Rng, sd: number): number =>
  sd * Math.sqrt(-2 * Math.log(rng.uniform())) * Math.cos(2 * Math.PI * rng.uniform())

/** One watch before anything is planted. */
interface Slot {
  readonly field: MadeField
  readonly level: 0 | 1
  readonly period: 0 | 1
  /** Visit within its period. */
  readonly visit: number
  readonly watch: number
}

function slotsOf({ structure, visits, plots, fields }: MadePlan): readonly Slot[] {
  const periods = isBeforeAfter(structure) ? ([0, 1] as const) : ([0] as const)
  const watches = Array.from({ length: structure === 'within' ? 2 * plots : plots }, (_, watch) => watch)
  return fields.flatMap((field) =>
    periods.flatMap((period) =>
      Array.from({ length: visits }, (_, visit) => visit).flatMap((visit) =>
        watches.map((watch): Slot => {
          const swapped = (watch + visit + field.place) % 2 === 0 ? 0 : 1
          const level = structure === 'within' ? swapped : structure === 'before/after' ? period : field.level
          return { field, level, period, visit, watch }
        }),
      ),
    ),
  )
}

/** 1 where what is asked is on. */
function isOn({ structure }: MadePlan, slot: Slot): 0 | 1 {
  return structure === 'before/after with controls' && slot.period === 0 ? 0 : slot.level
}

const visitOf = ({ field, period, visit }: Slot): string => `${field.name}/${period}/${visit}`
const watchOf = (slot: Slot): string => `${visitOf(slot)}/${slot.watch}`

function unitOf({ structure }: MadePlan, slot: Slot): string {
  if (structure === 'within') return watchOf(slot)
  return isBeforeAfter(structure) ? `${slot.field.name}/${slot.period}` : slot.field.name
}

/** A number for each name, drawn from a stream of its own, so that it does not hang on what else is drawn. */
const named =
  (rng: Rng, label: string, draw: (own: Rng) => number) =>
  (name: string): number =>
    draw(rng.fork(`${label}/${name}`))

/** Year of a watch and its round within the season, where two or three seasons are planned. */
function seasonOf({ structure, visits }: MadePlan, { period, visit }: Slot): { readonly year: number; readonly round: number } {
  const half = Math.ceil(visits / 2)
  const inHalves = { year: visit < half ? 0 : 1, round: visit < half ? visit : visit - half }
  // Before in two seasons, afterwards in the second.
  if (structure === 'before/after') return period === 0 ? inHalves : { year: 1, round: half + visit }
  // Before in one season, afterwards in the two that follow.
  if (structure === 'before/after with controls')
    return period === 0 ? { year: 0, round: visit } : { year: 1 + inHalves.year, round: inHalves.round }
  return inHalves
}

export function watchesOf(plan: MadePlan, rng: Rng): { readonly watches: readonly Watch[]; readonly since: Day | null } {
  const { structure, planted, strength } = plan
  const chance = named(rng, 'chance', (own) => own.uniform())
  /** Whether a unit, or a visit, has gone over to its level's own. */
  const goesOver = (slot: Slot): boolean => chance(plan.byUnit ? unitOf(plan, slot) : visitOf(slot)) < strength
  const hasGone = (slot: Slot, name: Planted): boolean => planted === name && goesOver(slot)

  const shiftOf = (name: keyof typeof sizes): ((slot: Slot) => number) => {
    if (planted !== name && !(planted === 'date with stage' && name === 'stage')) return () => 0
    const { from, to, scatter } = sizes[name]
    const size = uniform(rng.fork(`size/${name}`), from, to)
    const coin = named(rng, 'coin', (own) => own.below(2))
    // Common days: two sets of days, and a visit is on its own level's set, or on either.
    if (name === 'date' && structure === 'between, common dates')
      return (slot) => size * ((goesOver(slot) ? isOn(plan, slot) : coin(visitOf(slot))) - 0.5)
    const scattered = named(rng, `scatter/${name}`, (own) => normal(own, (1 - strength) * scatter))
    return (slot) => strength * size * (isOn(plan, slot) - 0.5) + scattered(unitOf(plan, slot))
  }
  const shift = {
    date: shiftOf('date'),
    stage: shiftOf('stage'),
    hour: shiftOf('hour'),
    temperature: shiftOf('temperature'),
  }
  const ownDays = planted === 'date with stage' ? named(rng, 'own days', (own) => normal(own, 5)) : () => 0
  const early = named(rng, 'early', (own) => normal(own, 3))
  const phenology = named(rng, 'phenology', (own) => normal(own, 0.5))
  const warmth = named(rng, 'warmth', (own) => normal(own, 2.5))
  const jitter = named(rng, 'jitter', (own) => own.uniform() - 0.5)
  const minutes = named(rng, 'minutes', (own) => plan.durations[own.below(plan.durations.length)] as number)

  const startOf = (block: string, year: number): number =>
    (isBeforeAfter(structure) ? commonStart : (bloomStart[block] ?? commonStart)) + early(String(year))
  const seasons = planted === 'season'
  const since = sinceOf(plan, startOf('', firstYear + (seasons ? 1 : 0)))

  const watches = slotsOf(plan).map((slot): Watch => {
    const { field, period, visit, watch } = slot
    const on = isOn(plan, slot)
    const place = visit % 2 === 1 ? field.route - 1 - field.place : field.place

    const season = seasons ? seasonOf(plan, slot) : { year: 0, round: period * plan.visits + visit }
    const goneTo = structure === 'before/after with controls' ? period + on : on
    const year = firstYear + (hasGone(slot, 'season') ? goneTo : season.year)
    const start = startOf(field.block, year)
    const inRound = structure === 'between, own dates' ? Math.floor(place / 4) : 0
    const planned = start + 2 + season.round * plan.pace + inRound + (period === 1 ? plan.gap : 0)
    const day = onItsSide(Math.round(planned + shift.date(slot) + ownDays(unitOf(plan, slot))), year, period, since)

    const bloom = (8 * (day - start)) / plan.bloomDays
    const stage = clip(Math.round(60.5 + bloom + phenology(field.name) + shift.stage(slot)), 60, 69)

    const step = Math.min(0.75, 4.5 / Math.max(1, field.route - 1))
    // A short route fits into a morning or an afternoon.
    const begin = field.route * step < 2.3 && visit % 4 >= 2 ? 13 : earliest
    const wobble = 0.3 * jitter(`${watchOf(slot)}/hour`)
    const hour = planted === 'hour' ? 12.9 + shift.hour(slot) + wobble : begin + place * step + 0.25 * watch + wobble + 0.15

    const air = 20 + warmth(`${year}/${day}`) + 0.6 * Math.min(hour - 12.5, 2) + 0.8 * jitter(`${watchOf(slot)}/air`)
    const rotation = (Math.floor(place / 2) + visit) % plan.observers
    const byTurns =
      plan.plots === 1 && structure !== 'within'
        ? Math.floor(field.place / 2)
        : Math.floor(watch / (structure === 'within' ? 2 : 1))
    return {
      field: field.name,
      block: field.block,
      level: slot.level,
      period,
      day,
      year,
      hour: clip(hour, earliest, latest),
      minutes: minutes(watchOf(slot)),
      stage,
      temperature: Math.round(10 * clip(air + shift.temperature(slot), 15.2, 34)) / 10,
      observer: `observer ${1 + (hasGone(slot, 'observer') ? on : rotation)}`,
      position: (hasGone(slot, 'position') ? on : (byTurns + visit) % 2) === 1 ? 'edge' : 'centre',
    }
  })
  return { watches, since }
}

/** The day that divides before from after, planned before the first visit. */
function sinceOf(plan: MadePlan, start: number): Day | null {
  if (!isBeforeAfter(plan.structure)) return null
  if (plan.planted !== 'season') return { year: firstYear, day: Math.round(start + 2 + plan.visits * plan.pace) }
  // With controls, before lies in the season before; else some of it in the same season.
  if (plan.structure === 'before/after with controls') return { year: firstYear + 1, day: 1 }
  return { year: firstYear + 1, day: Math.round(start + 2 + Math.ceil(plan.visits / 2) * plan.pace) }
}

/** Nobody counts "before" afterwards: a shifted day stays on its side of the day that divides. */
function onItsSide(day: number, year: number, period: 0 | 1, since: Day | null): number {
  if (since === null || year !== since.year) return day
  return period === 0 ? Math.min(day, since.day - 1) : Math.max(day, since.day)
}
