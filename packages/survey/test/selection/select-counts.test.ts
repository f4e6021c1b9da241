import { ThrumError } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { parseCondition, selectCounts } from '../../src/index.ts'
import { projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'

const rows = [
  { field: 'a', crop: 'cherry', date: '2031-04-20', stage: 61, unit: 'individuals' },
  { field: 'a', crop: 'cherry', date: '2031-05-02', stage: 65, unit: 'individuals' },
  { field: 'b', crop: 'sunflower', date: '2031-07-20', stage: 67, unit: 'individuals' },
  { field: 'b', crop: 'sunflower', date: '2032-07-21', unit: 'individuals' },
  { field: 'c', date: '2032-08-03', stage: 69, unit: 'individuals' },
]
const snapshot = projectOfCounts({ counts: rows })

const rowsOf = (where: readonly string[], except: readonly string[] = []) => [
  ...selectCounts(snapshot, { where, except, unit: null }).rows,
]

describe('conditions', () => {
  it.each([
    ['crop=cherry', [0, 1]],
    ['crop!=cherry', [2, 3]],
    ['crop=cherry|sunflower', [0, 1, 2, 3]],
    [' field = a | c ', [0, 1, 4]],
    ['season=2032', [3, 4]],
    ['season<=2031', [0, 1, 2]],
    ['date>=2031-05-02', [1, 2, 3, 4]],
    ['date<=2031-05-02', [0, 1]],
    ['month>=2031-07', [2, 3, 4]],
    ['month<=2031-07', [0, 1, 2]],
    ['date<=2031-07', [0, 1, 2]],
    ['date>=2032', [3, 4]],
    ['month>=2031-07-20', [3, 4]],
    ['stage<=65', [0, 1]],
    ['stage>=67', [2, 4]],
  ])('%s', (where, expected) => {
    expect(rowsOf([where])).toEqual(expected)
  })

  it('all that are given must hold; not recorded fulfils none', () => {
    expect(rowsOf(['crop=cherry', 'stage>=65'])).toEqual([1])
    expect(rowsOf(['stage!=61'])).toEqual([1, 2, 4])
  })

  it('counts for which all exceptions hold are left out, and counted', () => {
    const selected = selectCounts(snapshot, { where: [], except: ['crop=sunflower', 'season=2032'], unit: null })
    expect([...selected.rows]).toEqual([0, 1, 2, 4])
    expect(selected.excepted).toBe(1)
  })

  it.each([
    ['cherry', 'survey/condition/unreadable'],
    ['crop=', 'survey/condition/unreadable'],
    ['=cherry', 'survey/condition/unreadable'],
    ['crop>cherry', 'survey/condition/unreadable'],
    ['crop=chery', 'survey/condition/no-such-level'],
    ['crop!=chery', 'survey/condition/no-such-level'],
    ['crop>=cherry', 'survey/condition/not-ordered'],
    ['date>=2031-02-40', 'survey/condition/not-ordered'],
    ['crops=cherry', 'survey/factor/unknown'],
  ])('%s is refused: %s', (where, code) => {
    try {
      rowsOf([where])
    } catch (error) {
      expect(error).toBeInstanceOf(ThrumError)
      const { saying, remedy } = error as ThrumError
      expect(saying.id).toBe(code)
      expect(said(saying)).not.toBe('')
      expect(said(remedy)).not.toBe('')
      return
    }
    throw new Error(`${where} was not refused`)
  })

  it('identity: spaces around signs mean nothing', () => {
    expect(parseCondition('hive distance >= 300 m')).toEqual({ name: 'hive distance', sign: '>=', values: ['300 m'] })
    expect(parseCondition('hive distance>=300 m')).toEqual(parseCondition('hive distance >= 300 m'))
  })
})

describe('counting units', () => {
  const mixed = projectOfCounts({
    counts: [
      { field: 'a', unit: 'individuals' },
      { field: 'a', unit: 'visits' },
      { field: 'a', unit: 'snapshot' },
      { field: 'b', unit: 'visits' },
    ],
  })
  const select = (where: readonly string[], unit: string | null) => selectCounts(mixed, { where, except: [], unit })

  it('are never pooled', () => {
    expect(() => select([], null)).toThrow('survey/units-mixed')
    expect(() => select(['field=a'], null)).toThrow('survey/units-mixed')
  })

  it('one of them asked for, or one left by the selection, is told', () => {
    expect(select([], 'visits')).toEqual({ rows: Int32Array.of(1, 3), excepted: 0, unit: 'visits' })
    expect(select(['field=b'], null).unit).toBe('visits')
  })

  it('nobody said: no unit', () => {
    const silent = projectOfCounts({ counts: [{ field: 'a' }] })
    expect(selectCounts(silent, { where: [], except: [], unit: null }).unit).toBeNull()
  })
})
