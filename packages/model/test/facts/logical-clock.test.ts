import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Clock } from '../../src/ground/index.ts'
import { createLogicalClock, factEnvelope } from '../../src/index.ts'

/** A clock that shows what a test says, one reading after the other, and then stands still. */
function clockOf(readings: readonly number[]): Clock {
  let k = 0
  return { now: () => readings[Math.min(k++, readings.length - 1)] ?? 0, monotonic: () => k, zone: () => 'UTC' }
}

const isSorted = (texts: readonly string[]): boolean => texts.every((text, k) => k === 0 || (texts[k - 1] as string) < text)

describe('createLogicalClock', () => {
  it('tells time, counter and device, and ticks the counter while the wall clock stands', () => {
    const clock = createLogicalClock(clockOf([Date.UTC(2031, 4, 4, 9, 12, 31, 250)]), 'tablet')
    expect(clock.next()).toBe('2031-05-04T09:12:31.250Z/0000/tablet')
    expect(clock.next()).toBe('2031-05-04T09:12:31.250Z/0001/tablet')
  })

  it('takes whole milliseconds of a clock that shows parts of them', () => {
    expect(createLogicalClock(clockOf([1000.9]), 'd').next()).toBe('1970-01-01T00:00:01.000Z/0000/d')
  })

  it('identity: moments sort as they were given out, whatever the wall clock does', () => {
    const reading = fc.integer({ min: 0, max: 4_000_000_000_000 })
    fc.assert(
      fc.property(fc.array(reading, { minLength: 2, maxLength: 60 }), (readings) => {
        const clock = createLogicalClock(clockOf(readings), 'tablet')
        return isSorted(readings.map(() => clock.next()))
      }),
      { seed: 5, numRuns: 200 },
    )
  })

  it('a full counter goes on in the next millisecond', () => {
    const clock = createLogicalClock(clockOf([1000]), 'd')
    const given = Array.from({ length: 0x1_0002 }, () => clock.next())
    expect(given[0xffff]).toBe('1970-01-01T00:00:01.000Z/ffff/d')
    expect(given[0x1_0000]).toBe('1970-01-01T00:00:01.001Z/0000/d')
    expect(isSorted(given)).toBe(true)
  })

  it('is later than every moment it has seen, of any device', () => {
    const clock = createLogicalClock(clockOf([1000]), 'a')
    const seen = '2031-05-04T09:12:31.250Z/00ff/z'
    clock.see(seen)
    const next = clock.next()
    expect(next).toBe('2031-05-04T09:12:31.250Z/0100/a')
    expect(next > seen).toBe(true)
    clock.see('2030-01-01T00:00:00.000Z/ffff/z')
    expect(clock.next()).toBe('2031-05-04T09:12:31.250Z/0101/a')
  })

  it.each(['', 'yesterday', '/0000/x'])('a moment that cannot be read ("%s") changes nothing', (unreadable) => {
    const clock = createLogicalClock(clockOf([1000]), 'd')
    clock.see(unreadable)
    expect(clock.next()).toBe('1970-01-01T00:00:01.000Z/0000/d')
  })

  it('what it writes fits the envelope of a fact', () => {
    const at = createLogicalClock(clockOf([Date.UTC(2031, 0, 1)]), 'tablet of two words').next()
    expect(factEnvelope.shape.at.safeParse(at).success).toBe(true)
  })
})
