import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { equationOfTime, localSolarTime } from '../../src/sky/solar-time.ts'

const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / 86_400_000

const oracle = readFileSync(new URL('../reference/equation-of-time/noon.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number) as [number, number])

describe('equationOfTime', () => {
  it('oracle: has fourteen days', () => {
    expect(oracle).toHaveLength(14)
  })

  // The series calls itself good to 35 s (0.58 min); the ephemeris adds a few seconds.
  it.each(oracle)('oracle: noon of day %i, %d min', (day, minutes) => {
    expect(Math.abs(equationOfTime(day + 0.5) - minutes)).toBeLessThan(0.7)
  })

  it('identity: the years join, leap years included', () => {
    for (const newYear of ['2024-01-01', '2025-01-01', '2100-01-01']) {
      // Half a minute a day is the steepest the curve ever gets.
      expect(Math.abs(equationOfTime(dayOf(newYear)) - equationOfTime(dayOf(newYear) - 1))).toBeLessThan(0.55)
    }
  })
})

describe('localSolarTime', () => {
  it('identity: on the meridian of the zone only the equation of time is left', () => {
    const day = dayOf('2026-11-03')
    const got = localSolarTime({ day, clockMinutes: 720, utcOffset: 60, longitude: 15 })
    expect(got.basis).toBe('sun')
    // 11:00 UTC, 0.01 h for the series
    expect(got.hour).toBeCloseTo(12 + equationOfTime(day + 11 / 24) / 60, 10)
    expect(Math.abs(got.hour - (12 + 16.4337 / 60))).toBeLessThan(0.7 / 60)
  })

  it('takes summer time away', () => {
    const day = dayOf('2026-06-21')
    const got = localSolarTime({ day, clockMinutes: 13 * 60, utcOffset: 120, longitude: 15 })
    expect(Math.abs(got.hour - (12 - 1.8361 / 60))).toBeLessThan(0.7 / 60)
  })

  it('one degree east is four minutes', () => {
    const reading = { day: dayOf('2026-05-10'), clockMinutes: 700, utcOffset: 0, longitude: 3 }
    expect(localSolarTime({ ...reading, longitude: 4 }).hour - localSolarTime(reading).hour).toBeCloseTo(4 / 60, 10)
  })

  it('stays within the day on both sides of midnight', () => {
    const late = localSolarTime({ day: dayOf('2026-11-03'), clockMinutes: 1439, utcOffset: 0, longitude: 10 })
    const early = localSolarTime({ day: dayOf('2026-02-11'), clockMinutes: 1, utcOffset: 0, longitude: -10 })
    expect(late.hour).toBeGreaterThan(0)
    expect(late.hour).toBeLessThan(1.5)
    expect(early.hour).toBeGreaterThan(22)
    expect(early.hour).toBeLessThan(24)
  })

  it('falls back to the clock and says what was missing', () => {
    const reading = { day: dayOf('2026-06-21'), clockMinutes: 630, utcOffset: 120, longitude: 15 }
    expect(localSolarTime({ ...reading, longitude: null })).toEqual({ hour: 10.5, basis: 'clock', missing: ['longitude'] })
    expect(localSolarTime({ ...reading, utcOffset: null })).toEqual({ hour: 10.5, basis: 'clock', missing: ['utc-offset'] })
    expect(localSolarTime({ ...reading, utcOffset: null, longitude: null }).missing).toEqual(['utc-offset', 'longitude'])
  })
})
