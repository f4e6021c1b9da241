import { describe, expect, it } from 'vitest'
import { across, layAxis, scaleOfRates, upright } from '../../src/figure/axis.ts'
import { spreadApart, stepAside } from '../../src/figure/spread.ts'
import { dateTicks, linearTicks, logTicks, rootTicks } from '../../src/figure/ticks.ts'
import { threeDigits } from '../../src/print/numbers.ts'

describe('spreadApart', () => {
  const gapsOf = (places: readonly number[]): readonly number[] => {
    const sorted = places.toSorted((a, b) => a - b)
    return sorted.slice(1).map((place, k) => place - (sorted[k] ?? 0))
  }

  it('leaves places that have room', () => {
    expect(spreadApart([10, 50, 90], 14, 0, 100)).toEqual([10, 50, 90])
  })

  it.each([[[50, 50, 50]], [[0, 1, 2, 99, 100]], [[90, 5, 91, 6, 92]]])(
    'identity: %j keep their order and their distance, inside',
    (places) => {
      const got = spreadApart(places, 14, 0, 100)
      for (const gap of gapsOf(got)) expect(gap).toBeGreaterThan(14 - 1e-9)
      for (const place of got) expect(place >= 0 && place <= 100).toBe(true)
      for (const [a, wanted] of places.entries())
        for (const [b, other] of places.entries()) if (wanted < other) expect(got[a]).toBeLessThan(got[b] ?? 0)
    },
  )

  it('identity: a run stays about the mean of its places', () => {
    const got = spreadApart([49, 51], 14, 0, 100)
    expect(((got[0] ?? 0) + (got[1] ?? 0)) / 2).toBeCloseTo(50, 10)
  })
})

describe('stepAside', () => {
  it('identity: marks of one place touch and do not cover each other', () => {
    const got = stepAside([5, 5, 5, 5, 5], 8, 40)
    expect(got.toSorted((a, b) => a - b)).toEqual([-16, -8, 0, 8, 16])
  })

  it('leaves marks that are apart in their line, and gives up beyond the most', () => {
    expect(stepAside([0, 20, 40], 8, 40).map(Math.abs)).toEqual([0, 0, 0])
    expect(Math.max(...stepAside(Array(50).fill(1), 8, 16).map(Math.abs))).toBeLessThanOrEqual(16)
  })
})

describe('ticks', () => {
  it('ratios have doublings and pairs about 1; rates have parts of decades', () => {
    expect(logTicks(0.2, 4.5)).toContainEqual([0.125, 0.25, 0.5, 1, 2, 4, 8])
    expect(logTicks(0.6, 1.7)[0]).toEqual([0.5, 2 / 3, 0.8, 1, 1.25, 1.5, 2])
    expect(logTicks(6, 280)).toContainEqual([5, 10, 20, 50, 100, 200, 500])
  })

  it('round steps without the dust of floating point', () => {
    expect(linearTicks(0, 0.7)).toContainEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7])
    expect(linearTicks(64, 68, 1)[0]).toEqual([64, 65, 66, 67, 68])
    expect(rootTicks(40)[0]).toContain(0)
  })

  it('dates: days, then first days of months', () => {
    const firstOfMay2031 = Date.UTC(2031, 4) / 86_400_000
    expect(dateTicks(firstOfMay2031 - 10, firstOfMay2031 + 80)).toContainEqual([
      firstOfMay2031,
      firstOfMay2031 + 31,
      firstOfMay2031 + 61,
    ])
    expect(dateTicks(-1e6, 1e6).every((list) => list.length < 300)).toBe(true)
  })
})

describe('layAxis', () => {
  const ends = [
    ['linear', 0, 275],
    ['linear', 0, 4],
    ['linear', 0, 0.0731],
    ['linear', -3.2, 8.8],
    ['log', 0.149, 2],
    ['log', 0.5, 1.7],
    ['log', 0.083, 1e12],
    ['log', 7, 4200],
    ['root', 0, 341],
  ] as const

  it.each(ends)('identity: on a %s axis from %f to %f no value lies beyond the last tick', (scale, low, high) => {
    for (const [from, to, room] of [
      [200, 760, across],
      [20, 300, across],
      [250, 40, upright],
    ] as const) {
      const axis = layAxis({ scale, low, high, from, to }, { room, say: (value) => threeDigits(value, 'en') })
      expect(axis.ticks[0]?.value).toBeLessThanOrEqual(low)
      expect(axis.ticks.at(-1)?.value).toBeGreaterThanOrEqual(high)
      expect(axis.ticks.length).toBeLessThanOrEqual(10)
      expect([axis.low, axis.high]).toEqual([axis.ticks[0]?.value, axis.ticks.at(-1)?.value])
    }
  })

  it('an axis of whole numbers has no tick between them', () => {
    const { finest, ...whole } = scaleOfRates([1, 2, 4])
    const axis = layAxis({ ...whole, from: 0, to: 1200 }, { room: across, finest, say: String })
    expect(axis.ticks.map(({ label }) => label)).toEqual(['0', '1', '2', '3', '4'])
  })
})

describe('scaleOfRates', () => {
  it('includes 0 on linear and root axes, and every rate on each', () => {
    for (const rates of [[1, 2, 3], [0, 0], [0, 1, 400], [0.1, 90], []]) {
      const { scale, low, high } = scaleOfRates(rates)
      if (scale !== 'log') expect(low).toBe(0)
      expect(low).toBeLessThan(high)
      for (const rate of rates) expect(rate >= low && rate <= high).toBe(true)
    }
  })
})
