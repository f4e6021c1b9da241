import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { intervalText, threeDigits } from '../../src/print/numbers.ts'

describe('threeDigits', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [0.001, '0.001'],
    [0.0012345, '0.00123'],
    [0.0001, '0.0001'],
    [0.00009999, '1.00e-4'],
    [0.9995, '1'],
    [1.005, '1'],
    [9.994, '9.99'],
    [9.995, '9.99'], // 9.995 is stored as 9.9949999...
    [9.996, '10'],
    [12.35, '12.3'], // stored as 12.3499999...
    [99.94, '99.9'],
    [99.96, '100'],
    [100, '100'],
    [100.5, '101'],
    [999.4, '999'],
    [999.6, '1000'],
    [1234.5, '1235'],
    [999_999.4, '999999'],
    [999_999.6, '1000000'],
    [1e6, '1.00e+6'],
    [12_345_678, '1.23e+7'],
    [-2.71666, '-2.72'],
    [-250.4, '-250'],
  ])('%f reads %s', (value, text) => {
    expect(threeDigits(value)).toBe(text)
  })

  it('identity: what is read back differs from the number by at most half of its third digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e12, noNaN: true }), (value) => {
        const third = 10 ** (Math.floor(Math.log10(value)) - 2)
        // A whole number from 100 on is told to the last digit before the point. One ulp for the log at a power of ten.
        expect(Math.abs(Number(threeDigits(value)) - value)).toBeLessThanOrEqual((Math.max(third, 0) / 2) * (1 + 1e-9))
      }),
      { seed: 24, numRuns: 500 },
    )
  })
})

describe('intervalText', () => {
  it('an absent limit is an open end', () => {
    expect(intervalText(1, 2, threeDigits)).toBe('1 – 2')
    expect(intervalText(null, 2, threeDigits)).toBe('… – 2')
    expect(intervalText(1, null, threeDigits)).toBe('1 – …')
  })
})
