import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isSameCopy, keptOfTwo } from '../../src/fact/kept-of-two.ts'
import { author, field } from '../facts.ts'

const at = (hour: number, device: string): string => `2026-05-04T0${hour}:00:00.000Z/0000/${device}`

const copy = fc
  .record({
    hour: fc.constantFrom(8, 9),
    device: fc.constantFrom('phone', 'tablet'),
    by: fc.constantFrom('observer 1', 'observer 2'),
    body: fc.constantFrom({ a: 1, b: 2 }, { b: 2, a: 1 }, {}),
    data: fc.constantFrom(null, Uint8Array.of(), Uint8Array.of(1), Uint8Array.of(2)),
  })
  .map(({ hour, device, ...rest }) => ({ ...field('Weir', author()), ...rest, device, at: at(hour, device) }))

describe('keptOfTwo', () => {
  it('identity: does not care which copy came first, nor how three are paired', () => {
    fc.assert(
      fc.property(copy, copy, copy, (a, b, c) => {
        expect(isSameCopy(keptOfTwo(a, b), keptOfTwo(b, a))).toBe(true)
        expect(isSameCopy(keptOfTwo(keptOfTwo(a, b), c), keptOfTwo(a, keptOfTwo(b, c)))).toBe(true)
        expect(keptOfTwo(a, a)).toBe(a)
      }),
      { numRuns: 500, seed: 2026 },
    )
  })

  it('keeps the earlier copy, then the smaller device', () => {
    const base = field('Weir')
    const early = { ...base, at: at(8, 'tablet'), device: 'tablet' }
    const late = { ...base, at: at(9, 'phone'), device: 'phone' }
    expect(keptOfTwo(late, early)).toBe(early)
    expect(keptOfTwo({ ...early, device: 'x' }, { ...early, device: 'a' }).device).toBe('a')
  })

  it('takes the order of keys for no difference', () => {
    const base = field('Weir')
    expect(isSameCopy({ ...base, body: { a: 1, b: 2 } }, { ...base, body: { b: 2, a: 1 } })).toBe(true)
    expect(isSameCopy(base, { ...base, data: new Uint8Array() })).toBe(false)
  })
})
