import { dayNumber } from '@thrum/model'
import { hiveMove } from './planted-truths.ts'

/** Crops of the valley, in the order in which they bloom. */
export const crops = ['sweet cherry', 'sunflower'] as const
export type Crop = (typeof crops)[number]

/** Years far from any survey that was made. */
export const seasons = ['2031', '2032'] as const

/** One day on which all fields of a crop are visited. */
export interface CountingDay {
  /** Day number. */
  readonly date: number
  /** BBCH code, the same in all fields of the crop. */
  readonly stage: number
}

const days = (dates: readonly string[], stages: readonly number[]): readonly CountingDay[] =>
  dates.map((date, k) => ({ date: dayNumber(date), stage: stages[k] ?? 65 }))

const { stageBefore, stageAfter } = hiveMove

/** Five days a crop and season. All lie in full flowering but the last two of sunflower in season 2. */
export const countingDays: { readonly [crop in Crop]: readonly (readonly CountingDay[])[] } = {
  'sweet cherry': [
    days(['2031-04-16', '2031-04-18', '2031-04-21', '2031-04-23', '2031-04-25'], [64, 65, 65, 65, 65]),
    days(['2032-04-13', '2032-04-15', '2032-04-17', '2032-04-20', '2032-04-22'], [64, 65, 65, 65, 65]),
  ],
  sunflower: [
    days(['2031-07-15', '2031-07-18', '2031-07-22', '2031-07-25', '2031-07-29'], [65, 65, 65, 65, 65]),
    days(
      ['2032-07-12', '2032-07-15', '2032-07-19', '2032-07-23', '2032-07-26'],
      [stageBefore, stageBefore, stageBefore, stageAfter, stageAfter],
    ),
  ],
}

/** First day of the fade, and of the hives at their new place: day 4 of sunflower in season 2. */
export const firstFadingDate = '2032-07-23'
/** First day on which the hives stand at their new place. */
export const hivesMovedOn = '2032-07-21'
/** The last date counted, which is the last the plan names. */
export const lastVisit = '2032-07-26'

/** Days on which each crop blooms, fields of both seasons alike. */
export const cropBloom: { readonly [crop in Crop]: readonly (readonly [string, string])[] } = {
  'sweet cherry': [
    ['2031-04-12', '2031-04-30'],
    ['2032-04-08', '2032-04-27'],
  ],
  sunflower: [
    ['2031-07-10', '2031-08-05'],
    ['2032-07-07', '2032-08-01'],
  ],
}

/** True where the edge plot is watched before noon: days 1, 3 and 5 of season 1, days 2 and 4 of season 2. */
export function isEdgeFirst(season: number, day: number): boolean {
  return (season + day) % 2 === 0
}

/** True on the days on which sunflower fades and its hives stand near. */
export function isFading(crop: Crop, season: number, day: number): boolean {
  return crop === 'sunflower' && season === 1 && day >= 3
}
