import { describe, expect, it } from 'vitest'
import { fieldRate, kindSet, rateData, talliesOf } from '../../src/index.ts'
import { expectNear } from '../near.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

const totals = [30, 12, 25, 8, 40, 18]
const minutes = [100, 100, 100, 80, 120, 100]
const counts: readonly CountRow[] = totals.map((bee, k) => ({ field: `field ${k}`, minutes: minutes[k], tallies: { bee } }))

function dataOf(rows: readonly CountRow[], measure: 'time' | 'flower' | 'area' = 'time', unit: 'snapshot' | null = null) {
  const snapshot = projectOfCounts({ counts: rows })
  const all = Array.from({ length: snapshot.tables.count.rows }, (_, k) => k)
  return rateData(snapshot, all, talliesOf(snapshot, kindSet(snapshot, 'bee')), measure, unit)
}

describe('rate over fields, methods 2.1a', () => {
  const rate = fieldRate(dataOf(counts))

  it('oracle: ratio of sums, 13.3 an hour (R)', () => {
    if (rate.fields.kind !== 'rate') throw new Error(rate.fields.kind)
    expectNear(60 * rate.fields.rate, 13.3, 1e-12)
    expectNear(60 * rate.fields.limits.lower, 8.427459)
    expectNear(60 * rate.fields.limits.upper, 20.989719)
  })

  it('oracle: plain mean of field rates beside it (R t.test)', () => {
    if (rate.mean.kind !== 'mean') throw new Error(rate.mean.kind)
    expectNear(60 * rate.mean.mean, 12.833333)
    expectNear(60 * rate.mean.limits.lower, 6.799063)
    expectNear(60 * rate.mean.limits.upper, 18.867603)
  })

  it('oracle: one field has the exact limits of its own watches (R poisson.test: 10 gives 4.795389 to 18.390356)', () => {
    const one = fieldRate(dataOf([{ field: 'lone', minutes: 20, tallies: { bee: 10 } }]))
    expect(one.fields.kind).toBe('too-few-units')
    expectNear(20 * one.pooled.limits.lower, 4.795389)
    expectNear(20 * one.pooled.limits.upper, 18.390356)
    expect(one.dispersion).toBeNull()
  })

  it('published: none in all watches has an upper limit of 3.688879 over the effort', () => {
    const none = fieldRate(dataOf(counts.map((row) => ({ ...row, tallies: { bee: 0 } }))))
    if (none.fields.kind !== 'none') throw new Error(none.fields.kind)
    expectNear(600 * none.fields.upper, 3.688879)
    expect(none.dispersion).toBeNull()
  })

  it('identity: dispersion is that of watches at one rate', () => {
    // Expected 20 in each of two equal watches; 26 and 14: (36 + 36) / 20 on one degree of freedom.
    const two = fieldRate(dataOf([26, 14].map((bee) => ({ field: 'lone', minutes: 10, tallies: { bee } }))))
    expectNear(two.dispersion ?? Number.NaN, 3.6, 1e-12)
  })
})

describe('what enters a rate', () => {
  it('a field is all of its watches together; not looked for and unknown effort stay out', () => {
    const data = dataOf([
      { field: 'one', minutes: 10, tallies: { bee: 3 } },
      { field: 'one', minutes: 20, tallies: { bee: 0 } },
      { field: 'one', minutes: 10, tallies: { bee: null } },
      { field: 'one', tallies: { bee: 50 } },
      { minutes: 10, tallies: { bee: 50 } },
      { field: 'two', minutes: 10, tallies: { fly: 9 } },
    ])
    expect(data.fields).toEqual([{ name: 'one', total: 3, effort: 30, counts: 2 }])
    expect(data.counts).toEqual([
      { total: 3, effort: 10 },
      { total: 0, effort: 20 },
    ])
  })

  it('per flower: 18 visits at 240 flowers in 15 minutes are 0.30 a flower and hour (methods 1.1)', () => {
    const data = dataOf([{ field: 'one', minutes: 15, flowers: 240, tallies: { bee: 18 } }], 'flower')
    expectNear(60 * fieldRate(data).pooled.rate, 0.3, 1e-12)
  })

  it('no open flower: no rate per flower', () => {
    expect(dataOf([{ field: 'one', minutes: 15, flowers: 0, tallies: { bee: 0 } }], 'flower').counts).toEqual([])
  })

  it('a snapshot has no minutes: its effort is the flowers, or the watch itself', () => {
    const rows = [{ field: 'one', unit: 'snapshot', flowers: 40, area: 2, tallies: { bee: 4 } }]
    expect(dataOf(rows, 'time', 'snapshot').counts).toEqual([{ total: 4, effort: 1 }])
    expect(dataOf(rows, 'flower', 'snapshot').counts).toEqual([{ total: 4, effort: 40 }])
    expect(dataOf(rows, 'area', 'snapshot').counts).toEqual([{ total: 4, effort: 2 }])
  })
})
