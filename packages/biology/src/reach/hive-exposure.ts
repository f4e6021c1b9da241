import { InputError, requireCount, requirePositive } from '@thrum/model/ground'
import { type ForagingSeason, foragingSeasons, honeyBeeRange } from './foraging-season.ts'

/** Hives standing together, as seen from one plot. */
export interface HiveGroup {
  /** number of hives, 0 or more */
  readonly hives: number
  /** from the plot's point, else the field's centroid [m] */
  readonly distance: number
}

/** Exposure during one count and how long the count was watched [min]. */
export interface CountExposure {
  readonly exposure: number
  readonly minutes: number
}

/**
 * How much a plot is exposed to the hives around it: E = sum of hives * exp(-d / a), not truncated.
 *
 * Give it the hives of all owners. A model of reach, not of preference: measured gradients near hives can be steeper or absent.
 *
 * @param groups hives and their distances; an empty list says that hives were looked for and none found, and gives 0
 * @param range the season's scale `a` [m], from `honeyBeeRange`
 * @returns hives, each weighted by its nearness [hives]
 * @throws InputError for a negative or endless distance, a part of a hive, or a range that is not positive
 * @source Exponential kernel over Couvillon et al. (2014) PLoS ONE 9, e93495.
 * @check 10 hives at 50 m and 4 at 900 m in spring (a = 246.5): 8.267939 (R 4.2.2)
 */
export function hiveExposure(groups: readonly HiveGroup[], range: number): number {
  requirePositive('range', range)
  let exposure = 0
  for (const { hives, distance } of groups) {
    requireCount('hives', hives)
    if (!(distance >= 0 && Number.isFinite(distance))) {
      throw new InputError('biology/input/hive-distance', `distance is ${distance}; expected metres, 0 or more`)
    }
    exposure += hives * Math.exp(-distance / range)
  }
  return exposure
}

/**
 * Exposure of a field: the mean over its counts, weighted by minutes.
 *
 * @param counts at least one, each watched for more than 0 minutes
 * @throws InputError biology/input/no-counts for an empty list, ground/input/out-of-range for minutes that are not positive
 */
export function exposureOfField(counts: readonly CountExposure[]): number {
  if (counts.length === 0) throw new InputError('biology/input/no-counts', 'a field has no counts; expected at least one')
  let weighted = 0
  let minutes = 0
  for (const count of counts) {
    requirePositive('minutes', count.minutes)
    weighted += count.exposure * count.minutes
    minutes += count.minutes
  }
  return weighted / minutes
}

/**
 * Exposure of a level: the plain mean over its fields.
 *
 * @throws InputError biology/input/no-fields for an empty list
 */
export function exposureOfLevel(fields: readonly number[]): number {
  if (fields.length === 0) throw new InputError('biology/input/no-fields', 'a level has no fields; expected at least one')
  return fields.reduce((sum, exposure) => sum + exposure, 0) / fields.length
}

/**
 * Exposure of control fields over exposure of treated fields: near 0, the treated bees are their own; near 1, both levels are
 * worked by the same bees.
 *
 * @returns the ratio, or `null` where nothing known stands near the treated fields either, so that there is none
 * @check treated 8.267939 and 4.930305, control 0.261915 and 0.003124: 0.020081 (R 4.2.2)
 */
export function exposureRatio(control: number, treated: number): number | null {
  return treated > 0 ? control / treated : null
}

export interface RangeFindings<Finding> {
  readonly findings: { readonly [season in ForagingSeason]: Finding }
  /** True if not all seasons' ranges lead to the same finding: "this hangs on how far they fly". */
  readonly hangsOnRange: boolean
}

/**
 * Puts one question three times, with the range of every season, and tells whether the finding changes.
 *
 * @param find the finding (a word or number, compared by identity) under a range `a` [m]
 */
export function findWithEveryRange<Finding extends string | number | boolean | null>(
  find: (range: number) => Finding,
): RangeFindings<Finding> {
  const findings = {
    spring: find(honeyBeeRange.spring),
    summer: find(honeyBeeRange.summer),
    autumn: find(honeyBeeRange.autumn),
  }
  return { findings, hangsOnRange: foragingSeasons.some((season) => findings[season] !== findings.spring) }
}
