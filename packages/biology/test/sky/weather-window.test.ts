import { describe, expect, it } from 'vitest'
import { cucumberHours, squashHours } from '../../src/sky/counting-hours.ts'
import { markWeatherWindow, type WatchWeather } from '../../src/sky/weather-window.ts'

const fine: WatchWeather = { temperature: 20, sunshine: 80, cloud: 2, wind: 2, rain: 'none', solarHour: 12 }
const nothing: WatchWeather = { temperature: null, sunshine: null, cloud: null, wind: null, rain: null, solarHour: null }

describe('markWeatherWindow, temperature and sun', () => {
  // Published: Pollard & Yates (1993) 13 degrees with 60 % sun; Goodwin (1995) 11 degrees for bumble bees; the rest are the defaults.
  it.each([
    [15, 0, 'in', 'in'],
    [14.9, 60, 'in', 'in'],
    [14.9, 59.9, 'marginal', 'marginal'],
    [13, 60, 'in', 'in'],
    [13, 0, 'marginal', 'marginal'],
    [12.9, 100, 'out', 'marginal'],
    [11, 100, 'out', 'marginal'],
    [10.9, 100, 'out', 'out'],
    [35, 100, 'in', 'in'],
    [35.1, 100, 'marginal', 'marginal'],
    [0, 100, 'out', 'out'],
    [-4, 100, 'out', 'out'],
  ] as const)('%d degrees, %d %% sun: honey bees %s, bumble bees %s', (temperature, sunshine, honey, bumble) => {
    const weather = { ...fine, temperature, sunshine, cloud: 0 }
    expect(markWeatherWindow(weather, 'honey-bee').rows.temperature).toBe(honey)
    expect(markWeatherWindow(weather, 'hover-fly').mark).toBe(honey)
    expect(markWeatherWindow(weather, 'bumble-bee').mark).toBe(bumble)
  })

  it('sun that was not recorded does not let a cool watch in', () => {
    expect(markWeatherWindow({ ...fine, temperature: 14, sunshine: null, cloud: null }, 'honey-bee').mark).toBe('marginal')
  })

  it('takes sun from cloud where only cloud was recorded: 3 oktas are 62.5 % sun, 4 oktas 50 %', () => {
    expect(markWeatherWindow({ ...fine, temperature: 14, sunshine: null, cloud: 3 }, 'honey-bee').mark).toBe('in')
    expect(markWeatherWindow({ ...fine, temperature: 14, sunshine: null, cloud: 4 }, 'honey-bee').mark).toBe('marginal')
  })
})

describe('markWeatherWindow, the other rows', () => {
  it.each([
    [0, 'in'],
    [4, 'in'],
    [4.5, 'marginal'],
    [5, 'marginal'],
    [6, 'out'],
    [12, 'out'],
  ] as const)('wind %d Beaufort: %s', (wind, mark) => {
    expect(markWeatherWindow({ ...fine, wind }, 'honey-bee').mark).toBe(mark)
  })

  it.each([
    ['none', 'in'],
    ['drizzle', 'marginal'],
    ['rain', 'out'],
  ] as const)('rain %s: %s', (rain, mark) => {
    expect(markWeatherWindow({ ...fine, rain }, 'honey-bee').mark).toBe(mark)
  })

  it.each([
    [16.9, 4, 'in'],
    [16.9, 5, 'marginal'],
    [16.9, 8, 'marginal'],
    [17, 8, 'in'],
  ] as const)('%d degrees with %i oktas: %s', (temperature, cloud, mark) => {
    expect(markWeatherWindow({ ...fine, temperature, cloud, sunshine: null }, 'honey-bee').mark).toBe(mark)
  })

  it('takes cloud from sun where only sun was recorded', () => {
    expect(markWeatherWindow({ ...fine, temperature: 16, cloud: null, sunshine: 50 }, 'honey-bee').mark).toBe('in')
    expect(markWeatherWindow({ ...fine, temperature: 16, cloud: null, sunshine: 49 }, 'honey-bee').mark).toBe('marginal')
  })

  it.each([
    [8.9, 'out'],
    [9, 'marginal'],
    [9.9, 'marginal'],
    [10, 'in'],
    [16, 'in'],
    [16.1, 'marginal'],
    [17.5, 'marginal'],
    [17.6, 'out'],
    [0, 'out'],
  ] as const)('solar hour %d: %s', (solarHour, mark) => {
    expect(markWeatherWindow({ ...fine, solarHour }, 'honey-bee').mark).toBe(mark)
  })

  it('reads the hours of the crop: squash flowers are open at 7 and closed at 11, cucumber from 7 to 13', () => {
    const at = (solarHour: number, hours: typeof squashHours) =>
      markWeatherWindow({ ...fine, solarHour }, 'solitary-bee', hours).mark
    expect([5.9, 6, 7, 10, 10.1, 11].map((hour) => at(hour, squashHours))).toEqual(['out', 'in', 'in', 'in', 'out', 'out'])
    expect([6.9, 7, 13, 13.1].map((hour) => at(hour, cucumberHours))).toEqual(['out', 'in', 'in', 'out'])
  })
})

describe('markWeatherWindow, which row decides', () => {
  it('the worst row decides and is named', () => {
    const got = markWeatherWindow({ ...fine, temperature: 14, sunshine: 10, cloud: 7, rain: 'rain' }, 'honey-bee')
    expect(got).toMatchObject({ mark: 'out', because: ['rain'], unrecorded: [] })
    expect(markWeatherWindow({ ...fine, temperature: 14, sunshine: 10, cloud: 7 }, 'honey-bee')).toMatchObject({
      mark: 'marginal',
      because: ['temperature', 'cloud'],
    })
  })

  it('nothing recorded is unknown, never in', () => {
    expect(markWeatherWindow(nothing, 'honey-bee')).toEqual({
      mark: 'unknown',
      because: [],
      unrecorded: ['temperature', 'wind', 'rain', 'cloud', 'time'],
      rows: { temperature: 'unknown', wind: 'unknown', rain: 'unknown', cloud: 'unknown', time: 'unknown' },
    })
  })

  it('a good or marginal hour alone is unknown, a bad hour alone is out', () => {
    expect(markWeatherWindow({ ...nothing, solarHour: 12 }, 'honey-bee').mark).toBe('unknown')
    expect(markWeatherWindow({ ...nothing, solarHour: 17 }, 'honey-bee').mark).toBe('unknown')
    expect(markWeatherWindow({ ...nothing, solarHour: 20 }, 'honey-bee')).toMatchObject({
      mark: 'out',
      because: ['time'],
      unrecorded: ['temperature', 'wind', 'rain', 'cloud'],
    })
  })

  it('cloud or sun alone are unknown too', () => {
    expect(markWeatherWindow({ ...nothing, cloud: 0, sunshine: 100, solarHour: 12 }, 'honey-bee').mark).toBe('unknown')
  })

  it('one of temperature, wind and rain is enough for a mark, and the others are named as unrecorded', () => {
    expect(markWeatherWindow({ ...nothing, wind: 3, solarHour: 12 }, 'honey-bee')).toMatchObject({
      mark: 'in',
      unrecorded: ['temperature', 'rain', 'cloud'],
    })
    expect(markWeatherWindow({ ...nothing, wind: 7 }, 'honey-bee').mark).toBe('out')
  })

  it('much cloud without a temperature says nothing', () => {
    expect(markWeatherWindow({ ...fine, temperature: null, cloud: 8 }, 'honey-bee').rows.cloud).toBe('unknown')
    expect(markWeatherWindow({ ...fine, temperature: null, cloud: 4 }, 'honey-bee').rows.cloud).toBe('in')
  })

  it('refuses a number that is none, by name', () => {
    expect(() => markWeatherWindow({ ...fine, wind: Number.NaN }, 'honey-bee')).toThrow('wind is NaN')
  })
})
