import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../src/ground/index.ts'

/** The same value with the keys of every object in another order. */
function reordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reordered)
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, item]) => [key, reordered(item)]),
  )
}

describe('canonicalJson', () => {
  it.each([
    [{ b: 1, a: [true, null, 'x'] }, '{"a":[true,null,"x"],"b":1}'],
    [{ a: undefined, b: [undefined] }, '{"b":[null]}'],
    [{ B: 1, a: 2, é: 3, Z: 4 }, '{"B":1,"Z":4,"a":2,"é":3}'],
    [{ '10': 1, '9': 2 }, '{"10":1,"9":2}'],
    [-0, '0'],
    [1e21, '1e+21'],
    ['a "quote"\n', '"a \\"quote\\"\\n"'],
    [[], '[]'],
    [{}, '{}'],
  ])('%j is written %s', (value, text) => {
    expect(canonicalJson(value)).toBe(text)
  })

  it('identity: the order of keys does not matter, and the text reads back as the value', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalJson(value)
        expect(canonicalJson(reordered(value))).toBe(text)
        expect(canonicalJson(JSON.parse(text))).toBe(text)
      }),
      { seed: 2, numRuns: 300 },
    )
  })
})
