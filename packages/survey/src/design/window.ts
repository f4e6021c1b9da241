import {
  type CountingHours,
  countingHoursOf,
  generalHours,
  type KindClass,
  localSolarTime,
  markWeatherWindow,
  type Rain,
  type WindowMark,
} from '@thrum/biology'
import { type NumberColumn, numberAt, type Snapshot, textAt } from '@thrum/model'
import { type Skies, skiesOf } from './skies.ts'

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

/** Solar hours of all counts of a project: NaN where no time was recorded, with whether the sun's or only the clock's. */
interface SolarHours {
  readonly hours: Float64Array
  /** 1 where only the clock's. */
  readonly byClock: Uint8Array
}

function solarHours(snapshot: Snapshot): SolarHours {
  const { rows, columns } = snapshot.tables.count
  const { date, start, offset, minutes } = columns
  const hours = new Float64Array(rows).fill(Number.NaN)
  const byClock = new Uint8Array(rows)
  for (let row = 0; row < rows; row++) {
    const clock = numberAt(start, row)
    if (clock === null) continue
    const half = (numberAt(minutes, row) ?? 0) / 2
    const point = snapshot.fields[snapshot.countField[row] ?? -1]?.point ?? null
    const { hour, basis } = localSolarTime({
      day: numberAt(date, row) ?? 0,
      clockMinutes: clock + half,
      utcOffset: numberAt(offset, row),
      longitude: point?.longitude ?? null,
    })
    hours[row] = hour
    byClock[row] = basis === 'clock' ? 1 : 0
  }
  return { hours, byClock }
}

/** What is worked out once of a snapshot for every question about its windows. */
interface WindowsOf {
  readonly solar: SolarHours
  readonly skies: Skies
  readonly hoursOfCrop: readonly CountingHours[]
  /** By class of insect: for each sky and stretch of the day its outcome and 1, or 0 where it was not looked up yet. */
  readonly found: Map<KindClass, Uint8Array>
}

/** A cache and nothing else: a snapshot is never changed, and what is kept goes with it. */
const kept = new WeakMap<Snapshot, WindowsOf>()

function windowsOf(snapshot: Snapshot): WindowsOf {
  const known = kept.get(snapshot)
  if (known !== undefined) return known
  const made = {
    solar: solarHours(snapshot),
    skies: skiesOf(snapshot),
    hoursOfCrop: snapshot.tables.count.columns.crop.dictionary.map(countingHoursOf),
    found: new Map(),
  }
  kept.set(snapshot, made)
  return made
}

/** Local solar hour of a count's middle, whether it is the sun's or only the clock's; null where no time was recorded. */
export function solarHour(snapshot: Snapshot, row: number): { readonly hour: number; readonly basis: 'sun' | 'clock' } | null {
  const { hours, byClock } = windowsOf(snapshot).solar
  const hour = hours[row] ?? Number.NaN
  return Number.isNaN(hour) ? null : { hour, basis: byClock[row] === 1 ? 'clock' : 'sun' }
}

/** Stretches of the day between and at the four limits of a crop's hours, and one for no hour: a window is the same in each. */
const stretches = 10

function stretchOf(hour: number, { marginalFrom, from, to, marginalTo }: CountingHours): number {
  if (Number.isNaN(hour)) return stretches - 1
  let stretch = 0
  for (const limit of [marginalFrom, from, to, marginalTo]) stretch += hour > limit ? 2 : hour === limit ? 1 : 0
  return stretch
}

const outcomes = ['in', 'marginal', 'unknown', 'out', 'out-by-time-alone'] as const

function outcomeOf(snapshot: Snapshot, row: number, kind: KindClass, hour: number, hours: CountingHours): number {
  const { temperature, sun, cloud, wind, rain } = snapshot.tables.count.columns
  const at = (column: NumberColumn): number | null => numberAt(column, row)
  const weather = {
    temperature: at(temperature),
    sunshine: at(sun),
    cloud: at(cloud),
    wind: at(wind),
    rain: rainWords[(textAt(rain, row) ?? '').toLowerCase()] ?? null,
    solarHour: Number.isNaN(hour) ? null : hour,
  }
  const { mark, because } = markWeatherWindow(weather, kind, hours)
  return outcomes.indexOf(mark === 'out' && because.every((reason) => reason === 'time') ? 'out-by-time-alone' : mark)
}

/**
 * Marks a count by whether insects of a kind could fly: in, marginal, out, unknown. A clock that may be off the sun by two
 * hours leaves no count out on its own.
 */
export function windowMark(snapshot: Snapshot, row: number, kind: KindClass): WindowMark {
  const { solar, skies, hoursOfCrop, found } = windowsOf(snapshot)
  const hour = solar.hours[row] ?? Number.NaN
  const hours = hoursOfCrop[snapshot.tables.count.columns.crop.codes[row] ?? -1] ?? generalHours
  let ofKind = found.get(kind)
  if (ofKind === undefined) {
    ofKind = new Uint8Array(skies.number * stretches)
    found.set(kind, ofKind)
  }
  const place = (skies.skyOf[row] ?? 0) * stretches + stretchOf(hour, hours)
  if (ofKind[place] === 0) ofKind[place] = outcomeOf(snapshot, row, kind, hour, hours) + 1
  const outcome = outcomes[(ofKind[place] ?? 0) - 1] ?? 'unknown'
  if (outcome !== 'out-by-time-alone') return outcome
  const nearEnough = hour >= hours.marginalFrom - clockSlack && hour <= hours.marginalTo + clockSlack
  return solar.byClock[row] === 1 && nearEnough ? 'marginal' : 'out'
}
