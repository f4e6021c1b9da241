import { describe, expect, it } from 'vitest'
import { factorNames, resolveFactor } from '../../src/index.ts'
import { projectOfCounts } from '../project-of-counts.ts'

const snapshot = projectOfCounts({
  counts: [
    { field: 'a', date: '2031-05-02', start: '11:59', strip: 'yes', hives: 10, position: 'edge', distance: 100 },
    { field: 'a', date: '2031-05-12', start: '12:00', strip: 'no', hives: 2, position: 'centre', distance: 20 },
    { field: 'b', date: '2032-04-02', strip: 'no', observer: 'observer 2' },
    { start: '10:00', observer: 'observer 1' },
  ],
  treatments: [
    { factor: 'mowing', level: 'early', field: 'a', from: '2031-05-10', assigned: 'at random' },
    { factor: 'mowing', level: 'never', field: 'a', to: '2031-05-09', assigned: 'at random' },
    { factor: 'mowing', level: 'never', field: 'b', assigned: 'at random' },
    { factor: 'move', level: 'hives near', field: 'a', assigned: 'chosen' },
    { factor: 'strip', level: 'sown', field: 'b', assigned: 'at random' },
    { factor: 'strip', level: 'sown late', field: 'b', assigned: 'chosen' },
  ],
})

const levels = (name: string) => {
  const factor = resolveFactor(snapshot, name)
  return Array.from(factor.levelOf, (code) => factor.levels[code] ?? null)
}

describe('factors', () => {
  it.each([
    ['field', ['a', 'a', 'b', null]],
    ['season', ['2031', '2031', '2032', null]],
    ['month', ['2031-05', '2031-05', '2032-04', null]],
    ['daypart', ['morning', 'afternoon', null, 'morning']],
    ['observer', [null, null, 'observer 2', 'observer 1']],
    ['mowing', ['never', 'early', 'never', null]],
    ['hives', ['10', '2', null, null]],
  ])('%s', (name, expected) => {
    expect(levels(name)).toEqual(expected)
  })

  it('numbers are ordered by size, not by their first digit; words by their letters', () => {
    expect(resolveFactor(snapshot, 'hives').levels).toEqual(['2', '10'])
    expect(resolveFactor(snapshot, 'distance').levels).toEqual(['20', '100'])
    expect(resolveFactor(snapshot, 'position').levels).toEqual(['centre', 'edge'])
  })

  it('a treatment set covers what a column says; the latest stands, the column elsewhere', () => {
    expect(levels('strip')).toEqual(['yes', 'no', 'sown late', null])
  })

  it('how levels were assigned: as said, and not known where it was said both ways', () => {
    expect(resolveFactor(snapshot, 'mowing').assigned).toBe('at random')
    expect(resolveFactor(snapshot, 'strip').assigned).toBe('not known')
    expect(resolveFactor(snapshot, 'season').assigned).toBe('chosen')
    expect(resolveFactor(snapshot, 'distance').assigned).toBe('not known')
  })

  it.each([
    ['hives', 'hives'],
    ['move', 'hives'],
    ['mowing', 'other'],
    ['daypart', 'hour'],
    ['month', 'date'],
    ['position', 'position'],
  ])('%s is about %s', (name, about) => {
    expect(resolveFactor(snapshot, name).about).toBe(about)
  })

  it('an unknown one is refused, naming those there are', () => {
    expect(() => resolveFactor(snapshot, 'strips')).toThrow(/survey\/factor\/unknown.*mowing/u)
    expect(() => resolveFactor(snapshot, 'constructor')).toThrow('survey/factor/unknown')
  })

  it('those offered have two levels or more', () => {
    const names = factorNames(snapshot)
    expect(names).toEqual(expect.arrayContaining(['field', 'season', 'strip', 'mowing', 'distance']))
    expect(names).not.toContain('crop')
    expect(names).not.toContain('move')
  })
})
