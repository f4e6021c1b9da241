import { requireCount, requireFinite } from '@thrum/model/ground'

/** Seasons of the honey bee year as the danced distances were grouped; `autumn` is all that is neither spring nor summer. */
export type ForagingSeason = 'spring' | 'summer' | 'autumn'

/** In the order of the year. */
export const foragingSeasons: readonly ForagingSeason[] = ['spring', 'summer', 'autumn']

/**
 * Scale `a` of the exponential distance kernel, half the mean distance [m]. Published means: 493, 2,156 and 1,275 m over
 * 5,097 dances, two years, one site. Long flights are the rule when food is short, so the range is a season's constant.
 *
 * @source Couvillon M.J., Schuerch R., Ratnieks F.L.W. (2014) PLoS ONE 9, e93495, abstract.
 */
export const honeyBeeRange: { readonly [season in ForagingSeason]: number } = { spring: 246.5, summer: 1078, autumn: 637.5 }

/**
 * Season of a month: spring March to May, summer June to August, autumn the rest; south of the equator half a year later.
 *
 * @param month 1 for January to 12 for December
 * @param latitude north positive [°]; the equator counts as north
 * @throws InputError ground/input/out-of-range
 */
export function foragingSeasonOf(month: number, latitude: number): ForagingSeason {
  requireCount('month', month, { min: 1, max: 12 })
  requireFinite('latitude', latitude)
  const northern = latitude < 0 ? ((month + 5) % 12) + 1 : month
  if (northern >= 3 && northern <= 5) return 'spring'
  return northern >= 6 && northern <= 8 ? 'summer' : 'autumn'
}
