import { describe, expect, it } from 'vitest'
import {
  dayNumber,
  fieldDescribed,
  foldFacts,
  isoDate,
  kindDescribed,
  planMade,
  projectDescribed,
  textAt,
  treatmentSet,
} from '../../src/index.ts'
import { factOf, sheetOf, writer } from '../made-log.ts'

describe('what people describe', () => {
  it('an empty log folds to an empty project', () => {
    const snapshot = foldFacts([])
    expect(snapshot).toMatchObject({ project: null, fields: [], kinds: [], plan: null, sheets: [], worths: [], conflicts: [] })
    expect(snapshot.tables.count.rows + snapshot.tables.tally.rows).toBe(0)
  })

  it('a later description adds to an earlier one, and its own words win', () => {
    const author = writer()
    const { fields, kinds, project, plan } = foldFacts([
      factOf(author, 'p1', projectDescribed, { project: 'ostrel-vale', title: 'Ostrel' }),
      factOf(author, 'p2', projectDescribed, { project: 'ostrel-vale', title: 'Ostrel Vale' }),
      factOf(author, 'f1', fieldDescribed, { field: 'Weir', crop: 'cherry', latitude: 40, longitude: 5 }),
      factOf(author, 'f2', fieldDescribed, { field: 'Weir', crop: 'sweet cherry', hectares: 2 }),
      factOf(author, 'k1', kindDescribed, { kind: 'bee', taxon: 'Apis mellifera' }),
      factOf(author, 'k2', kindDescribed, { kind: 'bee', group: 'honey bee' }),
      factOf(author, 'plan', planMade, { lastVisit: '2031-06-01', block: 'soil' }),
    ])
    expect(project).toEqual({ id: 'ostrel-vale', title: 'Ostrel Vale' })
    expect(fields).toEqual([
      {
        name: 'Weir',
        crop: 'sweet cherry',
        cultivar: null,
        point: { latitude: 40, longitude: 5 },
        polygon: null,
        hectares: 2,
        address: 'f2',
      },
    ])
    expect(kinds).toEqual([{ name: 'bee', taxon: 'Apis mellifera', group: 'honey bee', address: 'k2' }])
    expect(plan).toMatchObject({ lastVisit: dayNumber('2031-06-01'), primaryKind: null, block: 'soil', address: 'plan' })
  })

  it('half a point is no point', () => {
    expect(foldFacts([factOf(writer(), 'f', fieldDescribed, { field: 'Weir', latitude: 40 })]).fields[0]?.point).toBeNull()
  })

  it('a factor whose levels came to fields in different ways is not known to be dealt at random', () => {
    const strip = (id: string, field: string, assigned: 'at random' | 'chosen') =>
      factOf(writer(id), id, treatmentSet, { factor: 'strip', level: 'yes', field, assigned })
    expect(foldFacts([strip('a', 'Weir', 'at random'), strip('b', 'Ings', 'at random')]).assigned.get('strip')).toBe('at random')
    expect(foldFacts([strip('a', 'Weir', 'at random'), strip('b', 'Ings', 'chosen')]).assigned.get('strip')).toBe('not known')
  })
})

describe('what counts do not say themselves', () => {
  const author = writer()
  const facts = [
    factOf(author, 'weir', fieldDescribed, { field: 'Weir', crop: 'cherry' }),
    ...sheetOf(author, 'sheet', {
      counts: [
        {
          field: ['Weir', 'Weir', 'Ings', null],
          crop: ['plum', null, null, null],
          date: [dayNumber('2031-12-31'), dayNumber('2032-01-01'), null, dayNumber('2033-05-01')],
          season: ['wet', null, null, null],
        },
      ],
      tallies: [{ count: [0], kind: ['bee'], number: [1] }],
    }),
  ]
  const { columns } = foldFacts(facts).tables.count

  it('the season is the year of the date, the crop that of the field; what was written stays', () => {
    const texts = (column: 'season' | 'crop') => Array.from(columns[column].codes, (_, row) => textAt(columns[column], row))
    expect(texts('season')).toEqual(['wet', '2032', null, '2033'])
    expect(texts('crop')).toEqual(['plum', 'cherry', null, null])
  })

  it('fields and kinds that are only named in rows are there, without a description', () => {
    const { fields, kinds, countField } = foldFacts(facts)
    expect(fields.map(({ name, address }) => [name, address])).toEqual([
      ['Weir', 'weir'],
      ['Ings', null],
    ])
    expect(kinds).toEqual([{ name: 'bee', taxon: null, group: null, address: null }])
    expect(Array.from(countField)).toEqual([0, 0, 1, -1])
  })

  it('days and dates are two ways to say one thing', () => {
    for (const day of [0, -1, 22_404, 11_016, 47_540]) expect(dayNumber(isoDate(day))).toBe(day)
    expect(isoDate(0)).toBe('1970-01-01')
    expect(dayNumber('2000-02-29')).toBe(11_016)
  })
})
