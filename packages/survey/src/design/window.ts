import { countingHoursOf, type KindClass, localSolarTime, markWeatherWindow, type Rain, type WindowMark } from '@thrum/biology'
import { type NumberColumn, numberAt, type Snapshot, textAt } from '@thrum/model'

/**
 * How far a clock may be from the sun when neither longitude nor summer time is known [h]: one hour of summer time and one
 * of a wide time zone. Common practice, no source.
 */
const clockSlack = 2

const rainWords: { readonly [word: string]: Rain } = {
  none: 'none',
  no: 'none',
  dry: 'none',
  drizzle: 'drizzle',
  rain: 'rain',
  yes: 'rain',
}

/** Local solar hour of a count's middle, whether it is the sun's or only the clock's; null where no time was recorded. */
export function solarHour(snapshot: Snapshot, row: number): { readonly hour: number; readonly basis: 'sun' | 'clock' } | null {
  const { date, start, offset, minutes } = snapshot.tables.count.columns
  const clock = numberAt(start, row)
  if (clock === null) return null
  const half = (numberAt(minutes, row) ?? 0) / 2
  const point = snapshot.fields[snapshot.countField[row] ?? -1]?.point ?? null
  return localSolarTime({
    day: numberAt(date, row) ?? 0,
    clockMinutes: clock + half,
    utcOffset: numberAt(offset, row),
    longitude: point?.longitude ?? null,
  })
}

/**
 * Marks a count by whether insects of a kind could fly: in, marginal, out, unknown. A clock that may be off the sun by two
 * hours leaves no count out on its own.
 */
export function windowMark(snapshot: Snapshot, row: number, kind: KindClass): WindowMark {
  const { temperature, sun, cloud, wind, rain, crop } = snapshot.tables.count.columns
  const at = (column: NumberColumn): number | null => numberAt(column, row)
  const solar = solarHour(snapshot, row)
  const hours = countingHoursOf(textAt(crop, row))
  const weather = {
    temperature: at(temperature),
    sunshine: at(sun),
    cloud: at(cloud),
    wind: at(wind),
    rain: rainWords[(textAt(rain, row) ?? '').toLowerCase()] ?? null,
    solarHour: solar?.hour ?? null,
  }
  const strict = markWeatherWindow(weather, kind, hours)
  if (strict.mark !== 'out' || solar?.basis !== 'clock' || strict.because.some((reason) => reason !== 'time')) return strict.mark
  const nearEnough = solar.hour >= hours.marginalFrom - clockSlack && solar.hour <= hours.marginalTo + clockSlack
  return nearEnough ? 'marginal' : 'out'
}
