import { InputError } from '@thrum/model/ground'
import type { KindClass } from '../kind/kind-class.ts'
import { type CountingHours, generalHours } from './counting-hours.ts'
import {
  cloudAllowed,
  hot,
  sunEnough,
  tooColdForBumbleBees,
  warmEnough,
  warmEnoughWithSun,
  warmWhateverTheCloud,
  windAllowed,
  windMarginal,
} from './window-thresholds.ts'

/** How a watch stands to the window in which insects fly. */
export type WindowMark = 'in' | 'marginal' | 'out' | 'unknown'
/** Rows of the window's table, in the order in which they are told. */
export type WindowRow = 'temperature' | 'wind' | 'rain' | 'cloud' | 'time'
/** Rain during the watch; `drizzle` also where some fell within the hour before, or the plants are still wet. */
export type Rain = 'none' | 'drizzle' | 'rain'

/** The sky over one watch. `null` is "not recorded", which is never read as good weather. */
export interface WatchWeather {
  /** air temperature [°C] */
  readonly temperature: number | null
  /** share of the watch with sun, 0 to 100 [%] */
  readonly sunshine: number | null
  /** cloud, 0 to 8 [oktas] */
  readonly cloud: number | null
  /** wind [Beaufort]; `beaufortOf` makes it from m/s */
  readonly wind: number | null
  readonly rain: Rain | null
  /** local solar time at the start of the watch, 0 to 24 [h]; see `localSolarTime` */
  readonly solarHour: number | null
}

export interface WindowFinding {
  readonly mark: WindowMark
  /** The rows that made the mark; empty when it is `in` or `unknown`. */
  readonly because: readonly WindowRow[]
  /** Rows that could not be judged because nothing, or not enough, was recorded. */
  readonly unrecorded: readonly WindowRow[]
  readonly rows: { readonly [row in WindowRow]: WindowMark }
}

const rowOrder: readonly WindowRow[] = ['temperature', 'wind', 'rain', 'cloud', 'time']
const oktasOfFullCloud = 8

/** Sun from cloud and cloud from sun where only one was recorded: overcast is no sun. Common practice, no source. */
function fillSky(weather: WatchWeather): { readonly sun: number | null; readonly cloud: number | null } {
  const { sunshine, cloud } = weather
  return {
    sun: sunshine ?? (cloud === null ? null : 100 * (1 - cloud / oktasOfFullCloud)),
    cloud: cloud ?? (sunshine === null ? null : oktasOfFullCloud * (1 - sunshine / 100)),
  }
}

function temperatureMark(temperature: number | null, sun: number | null, kind: KindClass): WindowMark {
  if (temperature === null) return 'unknown'
  if (temperature > hot) return 'marginal'
  if (temperature >= warmEnough) return 'in'
  // Sun must be shown to let a cool watch in: unrecorded sun leaves it marginal, not in.
  if (temperature >= warmEnoughWithSun) return sun !== null && sun >= sunEnough ? 'in' : 'marginal'
  return kind === 'bumble-bee' && temperature >= tooColdForBumbleBees ? 'marginal' : 'out'
}

function windMark(wind: number | null): WindowMark {
  if (wind === null) return 'unknown'
  if (wind <= windAllowed) return 'in'
  return wind <= windMarginal ? 'marginal' : 'out'
}

const rainMarks = { none: 'in', drizzle: 'marginal', rain: 'out' } as const

function cloudMark(cloud: number | null, temperature: number | null): WindowMark {
  if (temperature !== null && temperature >= warmWhateverTheCloud) return 'in'
  if (cloud === null) return 'unknown'
  if (cloud <= cloudAllowed) return 'in'
  // Much cloud is harmless when it is warm: without a temperature nothing can be said.
  return temperature === null ? 'unknown' : 'marginal'
}

function timeMark(hour: number | null, hours: CountingHours): WindowMark {
  if (hour === null) return 'unknown'
  if (hour >= hours.from && hour <= hours.to) return 'in'
  return hour >= hours.marginalFrom && hour <= hours.marginalTo ? 'marginal' : 'out'
}

/**
 * Marks a timed count by whether insects of one kind could fly in it.
 *
 * The worst recorded row decides, in this order:
 * 1. any recorded row `out`: the count is `out`, however much else was not recorded. Time alone can do this;
 * 2. else temperature, wind and rain all unrecorded: `unknown`. A good hour says nothing about the weather;
 * 3. else any recorded row `marginal`: `marginal`;
 * 4. else `in`; `unrecorded` names the rows on which it does not stand.
 *
 * Nothing is dropped here: a headline leaves `out` counts aside and shows the answer with them beside it.
 *
 * @param weather what was recorded of the sky; `null` for what was not
 * @param kind the class of insect counted: bumble bees fly from 11 °C, others from 13 °C
 * @param hours local solar hours of the crop, from `countingHoursOf`
 * @throws InputError biology/input/weather for a number that is not finite
 * @source Thresholds and their sources: `window-thresholds.ts`.
 * @check 12 °C in full sun: marginal for bumble bees, out for honey bees; 14 °C with 60 % sun: in, with 59 %: marginal
 */
export function markWeatherWindow(weather: WatchWeather, kind: KindClass, hours: CountingHours = generalHours): WindowFinding {
  for (const [name, value] of Object.entries(weather)) {
    if (typeof value === 'number' && !Number.isFinite(value)) {
      throw new InputError(
        'biology/input/weather',
        `${name} is ${value}; expected a finite number, or null where it was not recorded`,
      )
    }
  }
  const { sun, cloud } = fillSky(weather)
  const rows: { readonly [row in WindowRow]: WindowMark } = {
    temperature: temperatureMark(weather.temperature, sun, kind),
    wind: windMark(weather.wind),
    rain: weather.rain === null ? 'unknown' : rainMarks[weather.rain],
    cloud: cloudMark(cloud, weather.temperature),
    time: timeMark(weather.solarHour, hours),
  }
  const having = (mark: WindowMark): readonly WindowRow[] => rowOrder.filter((row) => rows[row] === mark)
  const weatherUnrecorded = rows.temperature === 'unknown' && rows.wind === 'unknown' && rows.rain === 'unknown'
  const unrecorded = having('unknown')
  const out = having('out')
  if (out.length > 0) return { mark: 'out', because: out, unrecorded, rows }
  if (weatherUnrecorded) return { mark: 'unknown', because: [], unrecorded, rows }
  const marginal = having('marginal')
  return { mark: marginal.length > 0 ? 'marginal' : 'in', because: marginal, unrecorded, rows }
}
