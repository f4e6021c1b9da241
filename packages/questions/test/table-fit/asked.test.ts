import type { FitWords } from '@thrum/questions'
import { describe, expect, it } from 'vitest'
import { codeOf, tableOf, thrown, watches } from './tables.ts'

const bees: FitWords = { response: 'bees', family: 'nb2' }

describe('what cannot be asked', () => {
  it.each<[string, FitWords, string]>([
    ['no response', {}, 'response-needed'],
    ['no family', { response: 'bees' }, 'family-needed'],
    ['an unknown family', { response: 'bees', family: 'normal' }, 'no-such-family'],
    ['a column that is not there', { ...bees, fixed: 'strip,mood' }, 'no-such-column'],
    ['an operator of another language', { ...bees, fixed: 'strip*stage' }, 'no-such-column'],
    ['a term twice', { ...bees, fixed: 'strip,stage,strip' }, 'named-twice'],
    ['a term twice, the other way round', { ...bees, fixed: 'strip and stage,stage and strip' }, 'named-twice'],
    ['a column with itself', { ...bees, fixed: 'strip and strip' }, 'named-twice'],
    ['five columns together', { ...bees, fixed: 'strip and stage and period and observer and year' }, 'too-many-together'],
    ['joined columns where single ones go', { ...bees, asLevels: 'year and stage' }, 'one-column'],
    ['effort of measured numbers', { response: 'weight', family: 'gaussian', effort: 'minutes' }, 'not-of-family'],
    ['zeros of shares', { response: 'bees', family: 'binomial', trials: 'seen', zeros: true }, 'not-of-family'],
    ['a whole of counts', { ...bees, trials: 'seen' }, 'not-of-family'],
    ['restricted likelihood of counts', { ...bees, reml: true }, 'not-of-family'],
    ['nodes of measured numbers', { response: 'weight', family: 'gaussian', random: 'field', nodes: '15' }, 'not-of-family'],
    ['a profile of measured numbers', { response: 'weight', family: 'gaussian', by: 'profile' }, 'not-of-family'],
    ['shares without a whole', { response: 'bees', family: 'binomial' }, 'trials-needed'],
    ['means per effort without effort', { ...bees, per: '60' }, 'only-with'],
    ['refits without bootstrap', { ...bees, refits: '500' }, 'only-with'],
    ['slopes apart without a slope', { ...bees, slopeApart: true }, 'only-with'],
    ['a slope without a grouping', { ...bees, slope: 'stage by field' }, 'only-with'],
    ['a slope by what is not drawn', { ...bees, random: 'observer', slope: 'stage by field' }, 'slope-not-random'],
    ['a slope without its word', { ...bees, random: 'field', slope: 'stage field' }, 'slope'],
    ['limits by magic', { ...bees, by: 'magic' }, 'by'],
    ['means of no effort', { ...bees, effort: 'minutes', per: '0' }, 'per'],
    ['too few nodes', { ...bees, random: 'field', nodes: '3' }, 'whole-number'],
    ['refits by halves', { ...bees, by: 'bootstrap', refits: '99.5' }, 'whole-number'],
    ['quadrature of two groupings', { ...bees, random: 'field,observer', nodes: '15' }, 'nodes-one-grouping'],
    ['a response that hangs on itself', { ...bees, fixed: 'bees' }, 'response-on-itself'],
    ['an order of no column', { ...bees, levels: ['none>sown'] }, 'levels'],
    ['a level that no cell has', { ...bees, fixed: 'strip', levels: ['strip=mown>sown'] }, 'no-such-level'],
    ['an order twice', { ...bees, fixed: 'strip', levels: ['strip=none', 'strip=sown'] }, 'named-twice'],
    ['without what is not there', { ...bees, fixed: 'strip', without: 'stage' }, 'without-unknown'],
    ['without a part of what stays', { ...bees, fixed: 'strip,strip and stage', without: 'strip' }, 'without-contained'],
    [
      'without a grouping that has a slope',
      { ...bees, fixed: 'stage', random: 'field', slope: 'stage by field', without: 'field' },
      'without-sloped',
    ],
    ['without what is both', { ...bees, fixed: 'observer', random: 'observer', without: 'observer' }, 'without-both'],
    ['means of numbers', { ...bees, fixed: 'stage', compare: 'stage' }, 'not-compared'],
    ['means of what is not in the model', { ...bees, fixed: 'strip', compare: 'observer' }, 'not-compared'],
    ['text where a number must be', { response: 'strip', family: 'nb2' }, 'not-a-number'],
    ['a slope of names', { ...bees, random: 'field', slope: 'strip by field' }, 'not-a-number'],
    ['measured numbers as counts', { response: 'weight', family: 'poisson' }, 'not-a-count'],
  ])('%s', async (_, words, code) => {
    expect(await codeOf(watches, words)).toBe(code)
  })

  it('a family is proposed by what the numbers are', async () => {
    expect(await thrown(watches, { response: 'bees' })).toMatchObject({ kind: 'counts' })
    expect(await thrown(watches, { response: 'bees', trials: 'seen' })).toMatchObject({ kind: 'shares' })
    expect(await thrown(watches, { response: 'weight' })).toMatchObject({ kind: 'measured' })
  })

  it('names lines of the file, the column and what stands there', async () => {
    const odd = tableOf('bees,strip,minutes,seen\n3,a,10,4\n4,b,ca. 10,3\n5,a,10,9\n2,b,0,9\n')
    expect(await thrown(odd, { ...bees, effort: 'minutes' })).toMatchObject({
      option: 'effort',
      column: 'minutes',
      line: 3,
      found: 'ca. 10',
    })
    const mixed = await thrown(odd, { ...bees, fixed: 'minutes' })
    expect(mixed).toMatchObject({ column: 'minutes', line: 3, found: 'ca. 10', texts: 1, numbers: 3 })
    const idle = tableOf('bees,minutes,seen\n3,10,4\n4,0,3\n5,-1,9\n')
    expect(await thrown(idle, { ...bees, effort: 'minutes' })).toMatchObject({
      column: 'minutes',
      rows: 2,
      lines: '3, 4',
      found: '0',
    })
    expect(await thrown(odd, { response: 'bees', family: 'binomial', trials: 'seen' })).toMatchObject({
      column: 'bees',
      rows: 1,
      lines: '3',
    })
  })

  it('says when no row is left, and by which columns', async () => {
    const table = tableOf('bees,strip\n3,\n,sown\n')
    expect(await codeOf(table, { ...bees, fixed: 'strip' })).toBe('no-rows')
    expect(await thrown(table, { ...bees, fixed: 'strip' })).toEqual({ columns: 'bees, strip' })
  })

  it('too many columns and too many levels are refused before anything is fitted', async () => {
    const rows = Array.from({ length: 900 }, (_, i) => `${i % 7},s${i % 300},t${Math.floor(i / 3)},u${i}`)
    const table = tableOf(['bees,site,plot,row', ...rows].join('\n'))
    expect(await codeOf(table, { ...bees, fixed: 'site' })).toBe('too-many-columns')
    expect(await codeOf(table, { ...bees, fixed: 'site and plot' })).toBe('too-many-columns')
    const long = tableOf(['bees,a,b', ...Array.from({ length: 700 }, (_, i) => `${i % 7},a${i},b${i % 600}`)].join('\n'))
    expect(await codeOf(long, { ...bees, random: 'a,b' })).toBe('too-many-levels')
  })
})

describe('what can be asked', () => {
  it.each<[string, FitWords]>([
    ['names in other capitals', { response: 'BEES', family: 'poisson', fixed: 'Strip' }],
    ['a name that holds "and"', { ...bees, fixed: 'wet and dry,strip' }],
    ['it, together with another', { ...bees, fixed: 'wet and dry and strip' }],
    ['blanks about commas', { ...bees, fixed: ' strip , stage ' }],
  ])('%s', async (_, words) => {
    expect(await codeOf(watches, words)).toBe('fitted')
  })

  it('a name that holds a comma', async () => {
    const [first, ...others] = watches.columns
    const table = { ...watches, columns: [{ ...(first ?? { texts: [], numbers: [] }), name: 'field, plot' }, ...others] }
    expect(await codeOf(table, { ...bees, fixed: 'strip,stage', random: 'field, plot,observer' })).toBe('fitted')
  })
})
