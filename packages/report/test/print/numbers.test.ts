import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { intervalText, roundWords, threeDigits, valueWords } from '../../src/print/numbers.ts'

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
    expect(threeDigits(value, 'en')).toBe(text)
  })

  it('identity: what is read back differs from the number by at most half of its third digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e12, noNaN: true }), (value) => {
        const third = 10 ** (Math.floor(Math.log10(value)) - 2)
        // A whole number from 100 on is told to the last digit before the point. One ulp for the log at a power of ten.
        expect(Math.abs(Number(threeDigits(value, 'en')) - value)).toBeLessThanOrEqual((Math.max(third, 0) / 2) * (1 + 1e-9))
      }),
      { seed: 24, numRuns: 500 },
    )
  })
})

describe('valueWords', () => {
  it.each([
    [42, '42.0'],
    [9.6, '9.60'],
    [1.005, '1.00'],
    [9.996, '10.0'],
    [99.96, '100'],
    [1234.5, '1235'],
    [0, '0'],
    [-0, '0'],
    [-2.71666, '-2.72'],
    [12_345_678, '1.23e+7'],
  ])('%f reads %s, as in a sentence', (value, text) => {
    expect(valueWords(value, 'plain', 'en')).toBe(text)
  })

  it.each([
    [0, '0'],
    [0.0004, '0.040'],
    [0.03, '3.0'],
    [0.054, '5.4'],
    [0.0994, '9.9'],
    [0.0996, '10'],
    [0.342, '34'],
    [1, '100'],
  ])('a share of %f reads %s per cent', (value, text) => {
    expect(valueWords(value, 'share', 'en')).toBe(`${text}\u00a0%`)
  })
})

describe('roundWords', () => {
  it('has no digit more than it takes', () => {
    expect([0, -0, 0.5, 20, 1e6, 1e-6].map((value) => roundWords(value, 'plain', 'en'))).toEqual([
      '0',
      '0',
      '0.5',
      '20',
      '1e+6',
      '1e-6',
    ])
    expect([0.025, 0.2].map((value) => roundWords(value, 'share', 'en'))).toEqual(['2.5\u00a0%', '20\u00a0%'])
  })
})

describe('intervalText', () => {
  it.each([
    [0.461, 1.2, '0.461 – 1.20'],
    [7, 26.3, '7.00 – 26.3'],
    [77.8, 122, '77.8 – 122'],
    [0.076, 16.7, '0.0760 – 16.7'],
    [0, 3, '0 – 3.00'],
    [-5, -1, '-5.00 – -1.00'],
    [4.28e-23, 7.66e46, '4.28e-23 – 7.66e+46'],
  ])('%f and %f read %s, as in a sentence', (low, high, text) => {
    expect(intervalText(low, high, 'plain', 'en')).toBe(text)
  })

  it('shares have two digits', () => {
    expect(intervalText(0.018, 0.15, 'share', 'en')).toBe('1.8\u00a0% – 15\u00a0%')
    expect(intervalText(0.004, 1, 'share', 'en')).toBe('0.40\u00a0% – 100\u00a0%')
  })

  it('an absent limit is an open end', () => {
    expect(intervalText(null, 2, 'plain', 'en')).toBe('… – 2.00')
    expect(intervalText(1, null, 'plain', 'en')).toBe('1.00 – …')
  })
})

describe('in a language that has a comma', () => {
  it('stands between whole and parts wherever a number is written', () => {
    expect([threeDigits(0.5, 'es'), threeDigits(1234, 'es'), threeDigits(2.5e9, 'es')]).toEqual(['0,5', '1234', '2,50e+9'])
    expect(valueWords(0.025, 'share', 'es')).toBe('2,5\u00a0%')
    expect(roundWords(1.5, 'plain', 'es')).toBe('1,5')
    expect(intervalText(0.018, 2, 'plain', 'es')).toBe('0,0180 – 2,00')
  })
})
