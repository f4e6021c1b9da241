import { dayNumber } from '@thrum/model'
import type { Rng } from '@thrum/model/ground'
import { drawBinomial, drawNormal } from '@thrum/stats'
import { type Crop, seasons } from './calendar.ts'
import { plantedFields } from './places.ts'
import { plantedSet, plantSd } from './planted-truths.ts'

/** What became of the tagged flowers of one plant. */
export interface CropSample {
  readonly field: string
  readonly plot: string
  readonly treatment: 'open' | 'bagged' | 'hand'
  readonly flowers: number
  readonly fruit: number
  /** Of all fruit or seeds of these flowers [g]. */
  readonly weight: number
  readonly date: number
}

const treatments = ['open', 'bagged', 'hand'] as const
const plantsOfTreatment = 5
/** Tagged flowers of one plant, and the month and day on which fruit or seed was gathered. */
const gathering: { readonly [crop in Crop]: { readonly flowers: number; readonly plant: string; readonly on: string } } = {
  'sweet cherry': { flowers: 80, plant: 'tree', on: '06-24' },
  sunflower: { flowers: 400, plant: 'head', on: '09-09' },
}
/** Scatter of mean fruit or seed weight between plants, as a share of it. */
const weightSd = 0.06

const inverseLogit = (x: number): number => 1 / (1 + Math.exp(-x))

/** Open, bagged and hand-pollinated flowers on five plants each, in every field and season; treatments dealt out by lot. */
export function drawCropSamples(rng: Rng): readonly CropSample[] {
  return seasons.flatMap((season) =>
    plantedFields.flatMap((field) => {
      const own = rng.fork(`${field.name}/${season}`)
      const { flowers, plant, on } = gathering[field.crop]
      const set = plantedSet[field.crop]
      return treatments.flatMap((treatment, block) =>
        Array.from({ length: plantsOfTreatment }, (_, k): CropSample => {
          const chance = inverseLogit(Math.log(set[treatment] / (1 - set[treatment])) + drawNormal(own, 0, plantSd))
          const fruit = drawBinomial(own, flowers, chance)
          const each = set.weight * (1 + drawNormal(own, 0, weightSd))
          return {
            field: field.name,
            plot: `${plant} ${block * plantsOfTreatment + k + 1}`,
            treatment,
            flowers,
            fruit,
            weight: Math.round(fruit * each * 10) / 10,
            date: dayNumber(`${season}-${on}`),
          }
        }),
      )
    }),
  )
}
