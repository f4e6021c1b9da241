import { dayNumber } from '@thrum/model'
import type { Rng } from '@thrum/model/ground'
import { drawGamma, drawNormal } from '@thrum/stats'
import { type Crop, countingDays, crops, seasons } from './calendar.ts'
import type { Watch } from './watches.ts'

/** One day at the valley's station. */
export interface DayWeather {
  readonly date: number
  readonly minimum: number
  readonly maximum: number
  readonly rain: number
}

/** The sky over one count. */
export interface WatchSky {
  readonly temperature: number
  /** Beaufort. */
  readonly wind: number
  /** Oktas. */
  readonly cloud: number
}

/** Mean of the year, half its swing, and how far days stray from it [degrees Celsius]; a mild oceanic year, invented. */
const yearMean = 11.5
const yearSwing = 8.5
const strays = { sd: 1.8, carriedOver: 0.7 }
/** Day of the year on which the rising year passes its mean. */
const risingDay = 115
/** Chance of rain after a dry and after a wet day; mean of a wet day [mm]. */
const wetDays = { afterDry: 0.25, afterWet: 0.55, shape: 0.8, scale: 5 }
/**
 * Counts are made on fair days, much alike within a crop, so that warmth tells no days of a season apart: the highest
 * temperature of such a day, how far it strays and at most strays, and how far it cooled down in the night before.
 */
const fairDay = { maximum: { 'sweet cherry': 19.5, sunflower: 25 }, sd: 0.3, most: 0.5, range: 9 } as const

const toTenth = (value: number): number => Math.round(value * 10) / 10

const within = (most: number, value: number): number => Math.max(-most, Math.min(most, value))

/** The crop counted on each of the counting days. */
function cropsByDate(): ReadonlyMap<number, Crop> {
  return new Map(crops.flatMap((crop) => countingDays[crop].flat().map(({ date }): [number, Crop] => [date, crop])))
}

/** A daily series of both years, from first of January to last of December. */
export function drawWeather(rng: Rng): readonly DayWeather[] {
  const fair = cropsByDate()
  const series: DayWeather[] = []
  let stray = 0
  let wet = false
  const last = dayNumber(`${seasons[1]}-12-31`)
  for (let date = dayNumber(`${seasons[0]}-01-01`), day = 1; date <= last; date++, day++) {
    stray = strays.carriedOver * stray + drawNormal(rng, 0, strays.sd)
    const mean = yearMean + yearSwing * Math.sin((2 * Math.PI * (day - risingDay)) / 365.25) + stray
    const range = Math.max(3, drawNormal(rng, 9, 1.5))
    wet = rng.uniform() < (wet ? wetDays.afterWet : wetDays.afterDry)
    const rain = toTenth(drawGamma(rng, wetDays.shape, wetDays.scale))
    const crop = fair.get(date)
    if (crop !== undefined) wet = false
    const fairer = crop === undefined ? null : fairDay.maximum[crop] + within(fairDay.most, drawNormal(rng, 0, fairDay.sd))
    const [low, high] = fairer === null ? [mean - range / 2, mean + range / 2] : [fairer - fairDay.range, fairer]
    series.push({ date, minimum: toTenth(low), maximum: toTenth(high), rain: wet ? rain : 0 })
  }
  return series
}

/** Hour of the highest temperature. */
const warmestHour = 15

/** The sky over each count: the day's own, the same over all fields but for a breath of warmth. */
export function drawSkies(rng: Rng, weather: readonly DayWeather[], watches: readonly Watch[]): readonly WatchSky[] {
  const byDate = new Map(weather.map((day) => [day.date, day]))
  const cloudOf = new Map<number, number>()
  const windOf = new Map<number, number>()
  return watches.map(({ date, start }) => {
    const day = byDate.get(date)
    const cloud = cloudOf.get(date) ?? rng.below(5)
    const wind = windOf.get(date) ?? 1 + rng.below(3)
    cloudOf.set(date, cloud)
    windOf.set(date, wind)
    const [low, high] = [day?.minimum ?? 0, day?.maximum ?? 0]
    const along = Math.cos((2 * Math.PI * (start / 60 - warmestHour)) / 24)
    const breath = within(0.5, drawNormal(rng, 0, 0.25))
    return { temperature: toTenth((low + high) / 2 + ((high - low) / 2) * along + breath), wind, cloud }
  })
}
