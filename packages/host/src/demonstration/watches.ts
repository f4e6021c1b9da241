import type { Rng } from '@thrum/model/ground'
import { type Crop, countingDays, crops, isEdgeFirst } from './calendar.ts'
import { plantedFields } from './places.ts'

export type Position = 'edge' | 'centre'
export type Half = 'morning' | 'afternoon'

/** One 10-minute count as it was planned: where, when, by whom. */
export interface Watch {
  /** Position in `plantedFields`. */
  readonly field: number
  readonly crop: Crop
  /** 0 or 1. */
  readonly season: number
  /** 0 to 4. */
  readonly day: number
  /** Day number. */
  readonly date: number
  readonly stage: number
  readonly position: Position
  readonly half: Half
  /** 1 or 2. */
  readonly observer: 1 | 2
  /** Minutes since local midnight. */
  readonly start: number
}

export const watchMinutes = 10

/**
 * The two fields (by their place within the crop) of observer 1 on each of the ten days of a crop, the one watched first
 * named first; the others are observer 2's. Days go in twos: what one observer had on the first, the other has on the second,
 * and who was first becomes second. So each field is seen equally by both over all ten days, and without the last two.
 */
const rota: readonly { readonly one: readonly [number, number]; readonly two: readonly [number, number] }[] = [
  { one: [0, 1], two: [2, 3] },
  { one: [3, 2], two: [1, 0] },
  { one: [2, 0], two: [3, 1] },
  { one: [1, 3], two: [0, 2] },
  { one: [0, 3], two: [1, 2] },
  { one: [2, 1], two: [3, 0] },
  { one: [1, 0], two: [3, 2] },
  { one: [2, 3], two: [0, 1] },
  { one: [0, 2], two: [1, 3] },
  { one: [3, 1], two: [2, 0] },
]

/** Start of the first and the second field of a half day [minutes since midnight]; up to `delay` minutes later in fact. */
const starts: { readonly [half in Half]: readonly [number, number] } = {
  morning: [10 * 60 + 10, 11 * 60 + 5],
  afternoon: [13 * 60 + 5, 14 * 60],
}
const delay = 15

/** The 160 counts of the valley in the order in which they were made. */
export function planWatches(rng: Rng): readonly Watch[] {
  const watches: Watch[] = []
  for (const season of [0, 1]) for (const crop of crops) watches.push(...watchesOfSeason(rng, crop, season))
  return watches
}

function watchesOfSeason(rng: Rng, crop: Crop, season: number): readonly Watch[] {
  const own = plantedFields.flatMap((field, k) => (field.crop === crop ? [k] : []))
  return (countingDays[crop][season] ?? []).flatMap(({ date, stage }, day) => {
    const turn = rota[season * 5 + day]
    if (turn === undefined) return []
    const edgeFirst = isEdgeFirst(season, day)
    const made: Watch[] = []
    for (const half of ['morning', 'afternoon'] as const) {
      for (const [observer, pair] of [
        [1, turn.one],
        [2, turn.two],
      ] as const) {
        pair.forEach((place, order) => {
          made.push({
            field: own[place] ?? 0,
            crop,
            season,
            day,
            date,
            stage,
            position: edgeFirst === (half === 'morning') ? 'edge' : 'centre',
            half,
            observer,
            start: (starts[half][order] ?? 0) + rng.below(delay + 1),
          })
        })
      }
    }
    return made.sort((a, b) => a.start - b.start || a.field - b.field)
  })
}
