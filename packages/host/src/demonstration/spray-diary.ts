import { dayNumber } from '@thrum/model'
import type { Crop } from './calendar.ts'
import { plantedFields } from './places.ts'

/** One application to one field. */
export interface Spray {
  readonly field: string
  readonly substance: string
  readonly date: number
  /** Minutes since local midnight. */
  readonly start: number
  readonly gramsPerHectare: number
}

/** What was sprayed on all fields of a crop, always after the day's last flights. No brands: there are none in the valley. */
const applications: readonly {
  readonly crop: Crop
  readonly date: string
  readonly substance: string
  readonly gramsPerHectare: number
}[] = [
  { crop: 'sweet cherry', date: '2031-05-08', substance: 'acetamiprid', gramsPerHectare: 50 },
  { crop: 'sunflower', date: '2031-06-26', substance: 'lambda-cyhalothrin', gramsPerHectare: 7.5 },
  { crop: 'sweet cherry', date: '2032-05-05', substance: 'acetamiprid', gramsPerHectare: 50 },
  { crop: 'sunflower', date: '2032-06-24', substance: 'lambda-cyhalothrin', gramsPerHectare: 7.5 },
]

const evening = 21 * 60

/** The spray diary of both seasons: a row a field and application, none of them while the crop blooms. */
export function sprayDiary(): readonly Spray[] {
  return applications.flatMap(({ crop, date, substance, gramsPerHectare }) =>
    plantedFields
      .filter((field) => field.crop === crop)
      .map((field, k) => ({ field: field.name, substance, date: dayNumber(date), start: evening + 20 * k, gramsPerHectare })),
  )
}
