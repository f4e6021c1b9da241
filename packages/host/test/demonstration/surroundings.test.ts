import { greatCircleDistance } from '@thrum/biology'
import { numberAt, textAt } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { cropBloom } from '../../src/demonstration/calendar.ts'
import { droneFly, droneFlyShare, foodShortDays, plantedSet } from '../../src/demonstration/planted-truths.ts'
import { countRows, projectOf } from './made-project.ts'

const seeds = Array.from({ length: 40 }, (_, k) => `surroundings ${k}`)
const dayOf = (date: string | undefined): number => Date.parse(`${date}`) / 86_400_000

describe('food around the fields', () => {
  it('is short on 24 days between cherry and sunflower, in each season and for every field', () => {
    const snapshot = projectOf(seeds[0] ?? '')
    const { columns, rows } = snapshot.tables.habitat
    // Bumble bees' warning distance of 1 km stands for reach here.
    const reach = 1000
    for (const season of [0, 1]) {
      const from = dayOf(cropBloom['sweet cherry'][season]?.[1]) + 1
      const to = dayOf(cropBloom.sunflower[season]?.[0]) - 1
      for (const { point } of snapshot.fields) {
        const near = Array.from({ length: rows }, (_, row) => row).filter(
          (row) =>
            greatCircleDistance(
              [point?.longitude ?? 0, point?.latitude ?? 0],
              [columns.longitude.values[row] ?? 0, columns.latitude.values[row] ?? 0],
            ) < reach,
        )
        let short = 0
        for (let day = from; day <= to; day++) {
          const blooms = near.some(
            (row) => (columns.bloomFrom.values[row] ?? 0) <= day && day <= (columns.bloomTo.values[row] ?? 0),
          )
          if (!blooms) short += 1
        }
        expect(short).toBe(foodShortDays)
      }
    }
  })
})

describe('vouchers', () => {
  it('recovery: 12 % of the honey bee taps of sunflower are drone flies, and no other tap is', () => {
    let flies = 0
    let looked = 0
    for (const seed of seeds) {
      const snapshot = projectOf(seed)
      const crops = new Map(snapshot.fields.map(({ name, crop }) => [name, crop]))
      const { columns, rows } = snapshot.tables.voucher
      expect(rows).toBe(120)
      for (let row = 0; row < rows; row++) {
        const tapped = textAt(columns.tapped, row)
        const isFly = textAt(columns.determined, row) === droneFly
        const exposed = tapped === 'honey bee' && crops.get(textAt(columns.field, row) ?? '') === 'sunflower'
        if (!exposed) expect(textAt(columns.determined, row)).toBe(tapped)
        else {
          looked += 1
          if (isFly) flies += 1
        }
      }
    }
    // Four Monte Carlo standard errors of a share over 2,000 independent vouchers.
    expect(looked).toBe(50 * seeds.length)
    expect(Math.abs(flies / looked - droneFlyShare)).toBeLessThan(4 * Math.sqrt((droneFlyShare * (1 - droneFlyShare)) / looked))
  })

  it('identity: no more are taken of a kind on a day in a field than were tapped', () => {
    const snapshot = projectOf(seeds[1] ?? '')
    const { columns, rows } = snapshot.tables.voucher
    const taken = new Map<string, number>()
    for (let row = 0; row < rows; row++) {
      const key = `${textAt(columns.field, row)}/${numberAt(columns.date, row)}/${textAt(columns.tapped, row)}`
      taken.set(key, (taken.get(key) ?? 0) + 1)
    }
    const tapped = new Map<string, number>()
    for (const { field, date, kinds } of countRows(snapshot)) {
      for (const [kind, number] of kinds) {
        const key = `${field}/${date}/${kind}`
        tapped.set(key, (tapped.get(key) ?? 0) + number)
      }
    }
    for (const [key, number] of taken) expect(number, key).toBeLessThanOrEqual(tapped.get(key) ?? 0)
  })
})

describe('crop samples', () => {
  it('recovery: open, bagged and hand-pollinated flowers set as planted', () => {
    const sets = new Map<string, { flowers: number; fruit: number }>()
    for (const seed of seeds.slice(0, 10)) {
      const snapshot = projectOf(seed)
      const crops = new Map(snapshot.fields.map(({ name, crop }) => [name, crop]))
      const { columns, rows } = snapshot.tables.sample
      for (let row = 0; row < rows; row++) {
        const key = `${crops.get(textAt(columns.field, row) ?? '')}/${textAt(columns.treatment, row)}`
        const found = sets.get(key) ?? { flowers: 0, fruit: 0 }
        found.flowers += numberAt(columns.flowers, row) ?? Number.NaN
        found.fruit += numberAt(columns.fruit, row) ?? Number.NaN
        sets.set(key, found)
      }
    }
    expect(sets.size).toBe(6)
    for (const [key, { flowers, fruit }] of sets) {
      const [crop, treatment] = key.split('/') as [keyof typeof plantedSet, 'open' | 'bagged' | 'hand']
      const planted = plantedSet[crop][treatment]
      // 400 plants a cell whose logits scatter by 0.25: four standard errors, and as much again for the bend of the logit.
      const slope = planted * (1 - planted)
      const reach = 4 * ((0.25 * slope) / Math.sqrt(400) + Math.sqrt(slope / flowers)) + (0.25 ** 2 / 2) * slope
      expect(Math.abs(fruit / flowers - planted), key).toBeLessThan(reach)
    }
  })
})

describe('weather', () => {
  it('is dry on counting days, and holds the temperatures of the counts', () => {
    const snapshot = projectOf(seeds[2] ?? '')
    const { columns, rows } = snapshot.tables.weather
    const byDate = new Map(Array.from({ length: rows }, (_, row) => [columns.date.values[row], row]))
    expect(byDate.size).toBe(rows)
    for (const { date, temperature } of countRows(snapshot)) {
      const row = byDate.get(date) ?? -1
      expect(columns.rain.values[row]).toBe(0)
      // A plot may be half a degree warmer or cooler than the station.
      expect(temperature).toBeGreaterThan((columns.minimum.values[row] ?? Number.NaN) - 0.5)
      expect(temperature).toBeLessThan((columns.maximum.values[row] ?? Number.NaN) + 0.51)
    }
  })
})
