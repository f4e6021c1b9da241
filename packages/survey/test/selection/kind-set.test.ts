import { amended, makeFact } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { allKinds, classOf, kindSet, talliesOf, waitingTallies } from '../../src/index.ts'
import { type CountRow, projectOfCounts, tallyBatch } from '../project-of-counts.ts'

const kinds = [
  { kind: 'carder', group: 'bumble bee', taxon: 'Bombus pascuorum' },
  { kind: 'red-tail', group: 'bumble bee' },
  { kind: 'hive bee' },
  { kind: 'something small' },
]

const numbers = (counts: readonly CountRow[], name: string) => {
  const snapshot = projectOfCounts({ counts, kinds })
  return [...talliesOf(snapshot, kindSet(snapshot, name))]
}

describe('kinds and groups', () => {
  const snapshot = projectOfCounts({ counts: [{ field: 'a', tallies: { carder: 1, 'red-tail': 2, 'hive bee': 3 } }], kinds })

  it('a name is a kind; else a group; else all', () => {
    expect(kindSet(snapshot, 'carder')).toEqual({ label: 'carder', kinds: [0], class: 'bumble-bee' })
    expect(kindSet(snapshot, 'bumble bee')).toEqual({ label: 'bumble bee', kinds: [0, 1], class: 'bumble-bee' })
    // "something small" was described and never looked for: it belongs to no sum.
    expect(kindSet(snapshot, allKinds).kinds).toEqual([0, 1, 2])
  })

  it('an unknown one is refused, naming those there are', () => {
    expect(() => kindSet(snapshot, 'bumblebee')).toThrow(/survey\/kind\/unknown.*carder.*bumble bee.*all kinds/u)
  })

  it('what sort of insect: as somebody said, else as the name proposes, else other', () => {
    expect([0, 1, 2, 3].map((kind) => classOf(snapshot, kind))).toEqual(['bumble-bee', 'bumble-bee', 'honey-bee', 'other'])
  })
})

describe('how many of a kind', () => {
  it('none seen is 0; not looked for, lost, and no row at all are not', () => {
    const counts = [
      { field: 'a', tallies: { carder: 0 } },
      { field: 'a', tallies: { carder: null } },
      { field: 'a', tallies: { carder: { number: 4, mark: 'lost' as const } } },
      { field: 'a', tallies: { 'hive bee': 4 } },
      { field: 'a', tallies: { carder: 7 } },
    ]
    expect(numbers(counts, 'carder')).toEqual([0, Number.NaN, Number.NaN, Number.NaN, 7])
  })

  it('cells that wait, and limits, stay out; a number settled as approximate counts', () => {
    const marked = (mark: 'waiting' | 'atLeast' | 'atMost' | 'approximate') => ({
      field: 'a',
      tallies: { carder: { number: 9, mark } },
    })
    const counts = [marked('waiting'), marked('atLeast'), marked('atMost'), marked('approximate')]
    expect(numbers(counts, 'carder')).toEqual([Number.NaN, Number.NaN, Number.NaN, 9])
    const snapshot = projectOfCounts({ counts })
    const set = kindSet(snapshot, 'carder')
    expect(waitingTallies(snapshot, set, new Set([0, 1, 2, 3]))).toEqual([0, 1, 2])
    expect(waitingTallies(snapshot, set, new Set([2, 3]))).toEqual([2])
  })

  it('several rows of a kind in one watch are summed; one of them unknown leaves the sum unknown', () => {
    const counts = [
      { field: 'a', tallies: { carder: [2, 3] } },
      { field: 'a', tallies: { carder: [2, null] } },
    ]
    expect(numbers(counts, 'carder')).toEqual([5, Number.NaN])
  })

  it('a group has a number only where each of its kinds was looked for', () => {
    const counts = [
      { field: 'a', tallies: { carder: 2, 'red-tail': 3 } },
      { field: 'a', tallies: { carder: 2 } },
      { field: 'a', tallies: { carder: 2, 'red-tail': null } },
    ]
    expect(numbers(counts, 'bumble bee')).toEqual([5, Number.NaN, Number.NaN])
  })

  it('rows of two kinds that alternate do not stand for a third that nobody looked for', () => {
    const three = [...kinds, { kind: 'white-tail', group: 'bumble bee' }]
    const snapshot = projectOfCounts({
      kinds: three,
      counts: [
        { field: 'a', tallies: { carder: 1, 'red-tail': 2, 'hive bee': 4 } },
        { field: 'a', tallies: { 'white-tail': 1 } },
      ],
      // The third row is amended to be a second row of the first kind: carder, red-tail, carder.
      more: (author) => [
        makeFact(
          amended,
          { of: `${tallyBatch}#2`, column: 'kind', after: null, from: 'hive bee', to: 'carder', reason: 'was a queen carder' },
          author,
        ),
      ],
    })
    expect([...talliesOf(snapshot, kindSet(snapshot, 'carder'))]).toEqual([5, Number.NaN])
    expect([...talliesOf(snapshot, kindSet(snapshot, 'bumble bee'))]).toEqual([Number.NaN, Number.NaN])
  })
})
