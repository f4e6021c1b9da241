import { describe, expect, it } from 'vitest'
import {
  amended,
  type BodyOf,
  cellSettled,
  type Fact,
  foldFacts,
  isContested,
  mark,
  readCorrections,
  readFact,
  withdrawn,
} from '../../src/index.ts'
import { factOf, sheetOf, toldTallies, writer } from '../made-log.ts'

const cell = { of: 'sheet/tally/1#0', column: 'number' } as const
const author = writer('desk', Date.UTC(2031, 1, 1))
const amend = (id: string, body: Partial<BodyOf<typeof amended>> & { readonly after: string | null }): Fact =>
  factOf(author, id, amended, { ...cell, from: 1, to: 11, reason: 'slip', ...body })
const only = (...facts: readonly Fact[]) => {
  const [history] = readCorrections(facts).histories
  if (history === undefined) throw new Error('no history')
  return history
}

describe('what happened to one cell', () => {
  const first = amend('a', { after: null, to: 11 })
  const unaware = amend('b', { after: null, to: 12 })

  it('identity: a correction made in knowledge of one of two does not decide between them', () => {
    const later = amend('c', { after: 'a', to: 13 })
    expect(only(first, unaware, later).open.map(({ to }) => to)).toEqual([12, 13])
    expect(isContested(only(first, unaware, later))).toBe(true)
  })

  it('one made in knowledge of both does, whatever it says', () => {
    const decided = amend('c', { after: 'b', knowing: ['a'], to: 12 })
    expect(isContested(only(first, unaware, decided))).toBe(false)
    expect(only(first, unaware, decided).standing?.to).toBe(12)
  })

  it('knowledge reaches through corrections that were taken back', () => {
    const between = amend('b', { after: 'a', to: 12 })
    const last = amend('c', { after: 'b', to: 13 })
    const taken = factOf(author, 'w', withdrawn, { of: 'b', reason: 'mine was wrong' })
    const history = only(first, between, last, taken)
    expect(history.open.map(({ to }) => to)).toEqual([13])
    expect(history.steps.map(({ takenBack }) => takenBack)).toEqual([false, true, false])
    expect(only(first, between, taken).standing?.to).toBe(11)
  })

  it('a settlement and an amendment of one cell are one history', () => {
    const settled = factOf(author, 's', cellSettled, { ...cell, after: null, to: 4, approximate: true })
    const history = only(settled, amend('a', { after: 's', to: 5 }))
    expect(history.steps.map(({ mark: code, reason }) => [code, reason])).toEqual([
      [mark.approximate, null],
      [mark.asWritten, 'slip'],
    ])
    expect(isContested(history)).toBe(false)
  })

  it('bodies of version 1 are read as they stand', () => {
    expect(readFact({ kind: 'cell-settled', v: 1, body: { ...cell, to: 4 } })).toMatchObject({ kind: 'read' })
    expect(readFact({ kind: 'amended', v: 1, body: { ...cell, after: null, from: 1, to: 2, reason: 'r' } })).toMatchObject({
      kind: 'read',
    })
    expect(readFact({ kind: 'redacted', v: 1, body: { of: 'x', because: 'asked to' } })).toMatchObject({ kind: 'read' })
    expect(readFact({ kind: 'redacted', v: 2, body: { because: 'asked to' } })).toMatchObject({ kind: 'waits' })
  })
})

describe('what a correction can say', () => {
  const sheet = sheetOf(writer(), 'sheet', {
    counts: [{ field: ['Weir', 'Ings'], minutes: [10, 15] }],
    tallies: [{ count: [0, 1], kind: ['bee', 'bee'], number: [1, 2] }],
  })

  it('that nobody looked, that it is at least so many, or that it waits: each keeps its mark', () => {
    const marked = (to: string | number | null, name: 'notLookedFor' | 'atLeast' | 'waiting') => {
      const { values, marks } = foldFacts([...sheet, amend('a', { after: null, to, mark: name })]).tables.tally.columns.number
      return [values[0], marks?.[0]]
    }
    expect(marked(null, 'notLookedFor')).toEqual([Number.NaN, mark.notLookedFor])
    expect(marked(51, 'atLeast')).toEqual([51, mark.atLeast])
    expect(marked('3-4', 'waiting')).toEqual([Number.NaN, mark.waiting])
  })

  it('something that no file had a column for', () => {
    const { factors } = foldFacts([
      ...sheet,
      factOf(author, 'a', amended, { of: 'sheet/count/0#1', column: 'strip', after: null, from: null, to: 'yes', reason: 'new' }),
    ]).tables.count
    expect(factors.get('strip')).toMatchObject({ type: 'text', dictionary: ['yes'], codes: Int32Array.from([-1, 0]) })
  })
})

describe('tallies that a mended file brings to a count of an earlier one', () => {
  const by = writer()
  const earlier = sheetOf(by, 'sheet', {
    counts: [{ field: ['Weir'] }, { field: ['Ings', 'Oxlea'] }],
    tallies: [{ count: [0, 1, 2], kind: ['bee', 'bee', 'bee'], number: [1, 2, 3] }],
  })
  const mended = sheetOf(writer('later', Date.UTC(2031, 5, 1)), 'mended', {
    counts: [{ field: ['New'] }],
    tallies: [
      {
        count: [0, null, null],
        of: [null, 'sheet/count/1#1', 'sheet/count/9#0'],
        kind: ['bee', 'fly', 'fly'],
        number: [4, 5, 6],
      },
    ],
  })

  it('stand with that count; one whose count is nowhere stands with none', () => {
    expect(toldTallies(foldFacts([...mended, ...earlier]))).toEqual(['0 bee 1', '1 bee 2', '2 bee 3', '3 bee 4', '2 fly 5'])
  })

  it('go with it when it is withdrawn', () => {
    const gone = factOf(by, 'w', withdrawn, { of: 'sheet/count/1#1', reason: 'wrong field' })
    expect(toldTallies(foldFacts([...earlier, ...mended, gone]))).toEqual(['0 bee 1', '1 bee 2', '2 bee 4'])
  })
})
