import { describe, expect, it } from 'vitest'
import { foragingSeasonOf, honeyBeeRange } from '../../src/reach/foraging-season.ts'

const months = Array.from({ length: 12 }, (_, i) => i + 1)

describe('foragingSeasonOf', () => {
  it('spring is March to May, summer June to August, autumn the rest', () => {
    expect(months.map((month) => foragingSeasonOf(month, 52).slice(0, 2)).join(' ')).toBe('au au sp sp sp su su su au au au au')
  })

  it('identity: the south is half a year later, the equator is north', () => {
    for (const month of months) {
      expect(foragingSeasonOf(month, -33)).toBe(foragingSeasonOf(month > 6 ? month - 6 : month + 6, 33))
      expect(foragingSeasonOf(month, 0)).toBe(foragingSeasonOf(month, 1))
    }
    expect(foragingSeasonOf(10, -33)).toBe('spring')
  })

  it.each([0, 13, 5.5])('refuses month %d', (month) => {
    expect(() => foragingSeasonOf(month, 50)).toThrow(/month/)
  })
})

describe('honeyBeeRange', () => {
  it('published: half the mean danced distances of 493, 2,156 and 1,275 m', () => {
    expect(honeyBeeRange).toEqual({ spring: 493 / 2, summer: 2156 / 2, autumn: 1275 / 2 })
  })
})
