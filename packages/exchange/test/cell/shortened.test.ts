import { describe, expect, it } from 'vitest'
import { shortened } from '../../src/cell/shortened.ts'

describe('shortened', () => {
  it.each([
    ['', 3, ''],
    ['abc', 3, 'abc'],
    ['abcd', 3, 'ab…'],
    ['a\u{1f41d}b', 4, 'a\u{1f41d}b'],
    ['a\u{1f41d}bc', 3, 'a…'],
    ['a\u{1f41d}bc', 4, 'a\u{1f41d}…'],
  ])('"%s" in %i characters is "%s"', (text, most, beginning) => {
    expect(shortened(text, most)).toBe(beginning)
  })
})
