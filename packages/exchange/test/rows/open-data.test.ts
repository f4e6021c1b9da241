import { proposeMapping, readCounts, readSheet } from '@thrum/exchange'
import { unwatched } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { extractBytes, extractMapping, numbersOf, numbersOfKind, readBoth, textsOf, total, totals } from '../files.ts'

// Oracle: totals computed from the same open files with R 4.2.2 (expected.json of each data set).
// Sums of decimals written with 15 digits agree to 1e-8.
const sumTolerance = 8

describe('oilseed rape, Sweden', () => {
  it('oracle: open plots, bumble bees as the sum of three columns', async () => {
    const { sheet, read } = await readBoth(
      extractBytes('osr-sweden-2013/pollinators.txt'),
      extractMapping('osr-sweden-2013/mapping.json'),
    )
    expect(sheet.lineEnds).toBe('CR')
    expect(read.rows).toEqual({ read: 240, accepted: 240, waiting: 0, refused: 0 })
    const treatment = textsOf(read.tables.count, 'treatment')
    const open = (_: unknown, row: number): boolean => treatment[row] === 'Edge' || treatment[row] === 'Crop'
    const sum = (kind: string): number => total(numbersOfKind(read, kind).filter(open))
    expect(treatment.filter(open)).toHaveLength(180)
    expect(total(numbersOf(read.tables.count, 'minutes').filter(open))).toBe(908)
    expect([sum('honey bee'), sum('bumble bee'), sum('other wild bee'), sum('hover fly')]).toEqual([85, 37, 16, 117])
    expect(total(numbersOf(read.tables.count, 'minutes'))).toBe(1213)
    expect(totals(read)).toMatchObject({
      'honey bee': 122,
      'bumble bee': 48,
      'other wild bee': 25,
      'hover fly': 144,
      'other fly': 278,
      butterfly: 3,
    })
    expect(new Set(numbersOf(read.tables.count, 'date')).size).toBe(8)
    expect(new Set(textsOf(read.tables.count, 'field')).size).toBe(15)
    // Flower-hours of the open plots, in hundreds of flowers: 41.8958333333.
    const flowers = numbersOf(read.tables.count, 'flowers')
    const minutes = numbersOf(read.tables.count, 'minutes')
    const exposure = flowers.map((number, row) => ((number ?? 0) * (minutes[row] ?? 0)) / 6000).filter(open)
    expect(total(exposure)).toBeCloseTo(41.8958333333, sumTolerance)
  })

  it('proposes presence as no count, and asks for the year', () => {
    const { mapping, questions } = proposeMapping(readSheet(extractBytes('osr-sweden-2013/pollinators.txt')))
    expect(mapping.columns.find(({ header }) => header === 'Pollen_Beetle_Present')?.as).toBe('ignore')
    expect(questions.map(({ asks }) => asks.id)).toEqual(expect.arrayContaining(['exchange/ask/presence', 'exchange/ask/year']))
    expect(mapping.columns.find(({ header }) => header === 'Inflorescences_half_m2')?.as).toBe('flowerUnits')
    expect(mapping.columns.find(({ header }) => header === 'Flowers_per_Inflorescence')?.as).toBe('flowersPerUnit')
  })
})

describe('red clover, Denmark', () => {
  it('oracle: a long table grouped into 28 watches, by guild', async () => {
    const { read } = await readBoth(
      extractBytes('red-clover-denmark-2008-2009/insect_sampling.csv'),
      extractMapping('red-clover-denmark-2008-2009/mapping.json'),
    )
    expect(read.rows).toEqual({ read: 224, accepted: 224, waiting: 0, refused: 0 })
    expect(read.counts).toBe(28)
    expect(totals(read)).toEqual({ 'honey bee': 6854, 'bumble bee': 7248 })
    expect(total(numbersOf(read.tables.count, 'minutes'))).toBeCloseTo(3657.6166666667, sumTolerance)
    expect(total(numbersOf(read.tables.count, 'area'))).toBe(99468)
    expect(textsOf(read.tables.count, 'field')).toContain('Gjern, Tingvejen_2009')
    expect(new Set(textsOf(read.tables.count, 'zeros'))).toEqual(new Set(['none-seen']))
  })

  it('oracle: by species, with the file as proposed', async () => {
    const sheet = readSheet(extractBytes('red-clover-denmark-2008-2009/insect_sampling.csv'))
    const { mapping } = proposeMapping(sheet)
    const read = await readCounts(sheet, mapping, unwatched)
    expect(mapping.shape).toBe('long')
    expect(totals(read)).toEqual({
      'Apis mellifera': 6854,
      'Bombus hortorum': 337,
      'Bombus hypnorum': 10,
      'Bombus lapidarius': 1426,
      'Bombus muscorum': 55,
      'Bombus pascuorum': 914,
      'Bombus pratorum': 10,
      'Bombus terrestris': 4496,
    })
  })
})

describe('alpine networks', () => {
  it('oracle: visits and hours of each plot', async () => {
    const { read } = await readBoth(
      extractBytes('alpine-networks-2010/networks.csv'),
      extractMapping('alpine-networks-2010/mapping.json'),
    )
    const field = textsOf(read.tables.count, 'field')
    const hours = numbersOf(read.tables.count, 'minutes').map((minutes) => (minutes ?? 0) / 60)
    const visits = numbersOfKind(read, 'flower visitors')
    const of = (values: readonly (number | null)[], plot: string): number => total(values.filter((_, row) => field[row] === plot))
    const plots = ['1', '2', '3', '4', '5', '6']
    expect(plots.map((plot) => of(visits, plot))).toEqual([1500, 1707, 1660, 3492, 1367, 778])
    const expected = [82, 80.5666666667, 73.35, 61.5666666667, 69.4166666667, 54.9166666667]
    plots.forEach((plot, k) => {
      expect(of(hours, plot)).toBeCloseTo(expected[k] as number, sumTolerance)
    })
    expect(read.counts).toBe(68)
    expect(total(hours)).toBeCloseTo(421.8166666667, sumTolerance)
    // The table's unit of what was counted: flower visits, not insects.
    expect(read.tables.tally.find(({ name }) => name === 'number')?.unit).toBe('{visits}')
  })
})

describe('blueberry', () => {
  it('is refused as a whole: means, not counts, and the effort is gone', async () => {
    const bytes = extractBytes('blueberry-na-2013-2015/blueberry.csv')
    await expect(readBoth(bytes, extractMapping('blueberry-na-2013-2015/mapping.json'))).rejects.toMatchObject({
      code: 'exchange/sheet/not-counts',
      values: { column: 'honey_bee', written: '12.5' },
    })
    const sheet = readSheet(bytes)
    await expect(readCounts(sheet, proposeMapping(sheet).mapping, unwatched)).rejects.toMatchObject({
      code: 'exchange/sheet/not-counts',
    })
  })
})
