import { describe, expect, it } from 'vitest'
import { honeyBeeRange } from '../../src/reach/foraging-season.ts'
import {
  exposureOfField,
  exposureOfLevel,
  exposureRatio,
  findWithEveryRange,
  type HiveGroup,
  hiveExposure,
} from '../../src/reach/hive-exposure.ts'

const treated: readonly (readonly HiveGroup[])[] = [
  [
    { hives: 10, distance: 50 },
    { hives: 4, distance: 900 },
  ],
  [
    { hives: 8, distance: 120 },
    { hives: 4, distance: 1400 },
  ],
]
const control: readonly (readonly HiveGroup[])[] = [
  [
    { hives: 10, distance: 1500 },
    { hives: 8, distance: 1800 },
    { hives: 4, distance: 700 },
  ],
  [
    { hives: 10, distance: 2600 },
    { hives: 8, distance: 2200 },
    { hives: 4, distance: 1900 },
  ],
]
const { spring, summer, autumn } = honeyBeeRange
const level = (fields: readonly (readonly HiveGroup[])[], range: number): number =>
  exposureOfLevel(fields.map((groups) => hiveExposure(groups, range)))
const ratioAt = (range: number): number => exposureRatio(level(control, range), level(treated, range)) ?? Number.NaN
const hives10 = (distance: number): readonly HiveGroup[] => [{ hives: 10, distance }]

// Oracle: R 4.2.2, test/reference/hive-exposure/make.R. Half the last printed digit.
describe('hiveExposure', () => {
  it('oracle: spring exposure of the four fields', () => {
    const got = [...treated, ...control].map((groups) => hiveExposure(groups, spring))
    const printed = [8.267939, 4.930305, 0.261915, 0.003124]
    printed.forEach((value, i) => {
      expect(Math.abs((got[i] ?? Number.NaN) - value)).toBeLessThan(5e-7)
    })
  })

  it('oracle: summer exposure of the four fields', () => {
    const got = [...treated, ...control].map((groups) => hiveExposure(groups, summer))
    const printed = [11.282477, 8.248783, 6.082984, 2.622298]
    printed.forEach((value, i) => {
      expect(Math.abs((got[i] ?? Number.NaN) - value)).toBeLessThan(5e-7)
    })
  })

  it.each([
    [spring, 3.242908],
    [summer, 1.308677],
    [autumn, 1.576019],
  ])('oracle: hives moved from 300 m to 10 m, a = %d', (range, change) => {
    expect(Math.abs(hiveExposure(hives10(10), range) / hiveExposure(hives10(300), range) - change)).toBeLessThan(5e-7)
  })

  it('oracle: hives 3 m against 100 m and 1,000 m away', () => {
    const ratio = (far: number, range: number): number => hiveExposure(hives10(3), range) / hiveExposure(hives10(far), range)
    expect(ratio(100, spring)).toBeCloseTo(1.48, 2)
    expect(ratio(100, summer)).toBeCloseTo(1.09, 2)
    expect(ratio(1000, spring)).toBeCloseTo(57.1, 1)
    expect(ratio(1000, summer)).toBeCloseTo(2.52, 2)
  })

  it('identity: no hives, hives on the spot, and hives split into groups', () => {
    expect(hiveExposure([], spring)).toBe(0)
    expect(hiveExposure([{ hives: 0, distance: 10 }], spring)).toBe(0)
    expect(hiveExposure([{ hives: 7, distance: 0 }], spring)).toBe(7)
    expect(
      hiveExposure(
        [
          { hives: 3, distance: 40 },
          { hives: 4, distance: 40 },
        ],
        spring,
      ),
    ).toBeCloseTo(hiveExposure([{ hives: 7, distance: 40 }], spring), 14)
  })

  it('refuses a negative distance, half a hive, and no range', () => {
    expect(() => hiveExposure([{ hives: 1, distance: -1 }], spring)).toThrow(/distance is -1/)
    expect(() => hiveExposure([{ hives: 1.5, distance: 1 }], spring)).toThrow(/hives is 1.5/)
    expect(() => hiveExposure([], 0)).toThrow(/range is 0/)
  })
})

describe('exposure of fields and levels', () => {
  it('a field is the mean over its counts, by minutes', () => {
    expect(
      exposureOfField([
        { exposure: 4, minutes: 10 },
        { exposure: 1, minutes: 20 },
      ]),
    ).toBe(2)
    expect(() => exposureOfField([])).toThrow(/no counts/)
    expect(() => exposureOfField([{ exposure: 4, minutes: 0 }])).toThrow(/minutes is 0/)
  })

  it('a level is the plain mean over its fields', () => {
    expect(exposureOfLevel([1, 2, 6])).toBe(3)
    expect(() => exposureOfLevel([])).toThrow(/no fields/)
  })

  it('has no ratio where no hive stands anywhere near the treated fields', () => {
    expect(exposureRatio(0, 0)).toBe(null)
    expect(exposureRatio(0, 2)).toBe(0)
  })
})

describe('findWithEveryRange', () => {
  it.each([
    [spring, 0.020081],
    [summer, 0.44571],
    [autumn, 0.195821],
  ])('oracle: exposure ratio control over treated, a = %d', (range, ratio) => {
    expect(Math.abs(ratioAt(range) - ratio)).toBeLessThan(5e-7)
  })

  it('says when the finding hangs on how far bees fly', () => {
    const findingFor = (worth: number) => (range: number) => {
      const ratio = ratioAt(range)
      if (ratio < 0.1) return 'none'
      return ratio > 1 / worth ? 'block' : 'warn'
    }
    expect(findWithEveryRange(findingFor(2))).toEqual({
      findings: { spring: 'none', summer: 'warn', autumn: 'warn' },
      hangsOnRange: true,
    })
    expect(findWithEveryRange(findingFor(2.5)).findings.summer).toBe('block')
    expect(findWithEveryRange((range) => range > 0).hangsOnRange).toBe(false)
  })
})
