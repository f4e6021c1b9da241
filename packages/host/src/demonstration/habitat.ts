import { dayNumber } from '@thrum/model'
import { cropBloom, seasons } from './calendar.ts'
import { plantedFields, pointBeside } from './places.ts'

/** A patch and the days on which it blooms in one season. */
export interface HabitatBloom {
  readonly patch: string
  readonly habitat: string
  readonly latitude: number
  readonly longitude: number
  readonly hectares: number
  readonly bloomFrom: number
  readonly bloomTo: number
}

/**
 * What grows beside every field, the same beside each, and blooms on these days of every season [month and day]. Between the
 * hedges and the meadows nothing blooms: 21 May to 13 June, 24 days.
 */
const neighbours = [
  { word: 'willows', habitat: 'willow scrub', hectares: 0.3, east: -420, north: 260, from: '03-08', to: '04-18' },
  { word: 'hedge', habitat: 'flowering hedge', hectares: 0.4, east: 210, north: 330, from: '04-14', to: '05-20' },
  { word: 'meadow', habitat: 'hay meadow', hectares: 1.5, east: 380, north: -440, from: '06-14', to: '08-20' },
] as const

/** The flower strip of a field that has one. */
const strip = {
  word: 'strip',
  habitat: 'flower strip',
  hectares: 0.25,
  east: 130,
  north: -90,
  from: '06-20',
  to: '09-12',
} as const

/**
 * Habitat within 600 m of each field and the fields' own bloom, a row for each season.
 *
 * @param strips for each of `plantedFields` whether it has a flower strip
 */
export function habitatBlooms(strips: readonly boolean[]): readonly HabitatBloom[] {
  return seasons.flatMap((season, s) =>
    plantedFields.flatMap((field, k) => {
      const [from, to] = cropBloom[field.crop][s] ?? ['', '']
      const own: HabitatBloom = {
        patch: field.name,
        habitat: field.crop,
        ...field.point,
        hectares: field.hectares,
        bloomFrom: dayNumber(from),
        bloomTo: dayNumber(to),
      }
      const beside = [...neighbours, ...(strips[k] ? [strip] : [])].map(
        (patch): HabitatBloom => ({
          patch: `${field.name}, ${patch.word}`,
          habitat: patch.habitat,
          ...pointBeside(field.point, patch.east, patch.north),
          hectares: patch.hectares,
          bloomFrom: dayNumber(`${season}-${patch.from}`),
          bloomTo: dayNumber(`${season}-${patch.to}`),
        }),
      )
      return [own, ...beside]
    }),
  )
}
