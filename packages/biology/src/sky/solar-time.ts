import { requireFinite } from '@thrum/model/ground'

/** A moment as a person reads it off a watch in the field. */
export interface ClockReading {
  /** days since 1 January 1970 in the local calendar [d] */
  readonly day: number
  /** minutes since local midnight [min] */
  readonly clockMinutes: number
  /** local clock minus UTC, summer time included [min]; null where not recorded */
  readonly utcOffset: number | null
  /** east positive [°]; null where the place is not known */
  readonly longitude: number | null
}

/** `basis: 'clock'` says that the sun could not be found and the clock was taken as it is, with what was missing. */
export interface SolarTime {
  /** 0 up to, not including, 24 [h] */
  readonly hour: number
  readonly basis: 'sun' | 'clock'
  readonly missing: readonly ('utc-offset' | 'longitude')[]
}

const minutesPerDay = 1440
const minutesPerDegree = 4
const msPerDay = 86_400_000

const hourOfDay = (minutes: number): number => (((minutes % minutesPerDay) + minutesPerDay) % minutesPerDay) / 60

/**
 * Equation of time: how far a sundial runs ahead of a clock that keeps mean time.
 *
 * @param day days since 1 January 1970; a fraction counts [d]
 * @returns apparent minus mean solar time [min], from about -14.3 in February to 16.4 in November
 * @source Spencer J.W. (1971) Fourier series representation of the position of the sun. Search 2, 172. Coefficients from memory.
 * @check within 0.7 min of the sun's apparent place by a low-precision ephemeris, through 2026 (test/reference/equation-of-time)
 */
export function equationOfTime(day: number): number {
  requireFinite('day', day)
  const year = new Date(day * msPerDay).getUTCFullYear()
  const start = Date.UTC(year, 0, 1) / msPerDay
  const length = Date.UTC(year + 1, 0, 1) / msPerDay - start
  const angle = (2 * Math.PI * (day - start)) / length
  const series =
    0.000075 +
    0.001868 * Math.cos(angle) -
    0.032077 * Math.sin(angle) -
    0.014615 * Math.cos(2 * angle) -
    0.040849 * Math.sin(2 * angle)
  return (series * minutesPerDay) / (2 * Math.PI)
}

/**
 * Local apparent solar time of a clock reading: 12 is when the sun stands due south (north of the tropics).
 *
 * Without a longitude, or without the clock's offset from UTC (which alone tells whether summer time was kept), the clock
 * time is returned as it is, and `basis` and `missing` say so. It may then be two hours off.
 *
 * @throws InputError ground/input/out-of-range for a number that is not finite
 * @source Solar = clock - offset + 4 min per degree east + equation of time: common knowledge of sundials, no source needed.
 * @check 21 June 2026, 13:00 at UTC+2, 15° E: 11.969 h; 3 November 2026, 12:00 at UTC+1, 15° E: 12.274 h
 */
export function localSolarTime(reading: ClockReading): SolarTime {
  const { day, clockMinutes, utcOffset, longitude } = reading
  requireFinite('day', day)
  requireFinite('clockMinutes', clockMinutes)
  if (utcOffset === null || longitude === null) {
    const missing: SolarTime['missing'] = [
      ...(utcOffset === null ? (['utc-offset'] as const) : []),
      ...(longitude === null ? (['longitude'] as const) : []),
    ]
    return { hour: hourOfDay(clockMinutes), basis: 'clock', missing }
  }
  requireFinite('utcOffset', utcOffset)
  requireFinite('longitude', longitude)
  const utcMinutes = clockMinutes - utcOffset
  const sundial = utcMinutes + minutesPerDegree * longitude + equationOfTime(day + utcMinutes / minutesPerDay)
  return { hour: hourOfDay(sundial), basis: 'sun', missing: [] }
}
