import { describe, expect, it } from 'vitest'
import { amended, cellSettled, type Fact, fieldDescribed, foldFacts, mark, textAt, withdrawn } from '../../src/index.ts'
import { factOf, sheetOf, writer } from '../made-log.ts'

const sheet = sheetOf(writer(), 'sheet', {
  counts: [
    { field: ['Weir', 'Wier'], minutes: [10, null] },
    { field: ['Ings'], minutes: [15] },
  ],
  tallies: [{ count: [0, 1, 2], kind: ['bee', 'bea', 'fly'], number: [1, null, 3] }],
})
const desk = () => writer('desk', Date.UTC(2031, 1, 1))
const fold = (...facts: readonly Fact[]) => foldFacts([...sheet, ...facts])
const number = 'number'
const cell = 'sheet/tally/2#0'

describe('corrections of rows', () => {
  it('the latest amendment stands, each made after the one before', () => {
    const author = desk()
    const snapshot = fold(
      factOf(author, 'a1', amended, { of: cell, column: number, after: null, from: 1, to: 11, reason: 'slip' }),
      factOf(author, 'a2', amended, { of: cell, column: number, after: 'a1', from: 11, to: 12, reason: 'slip again' }),
    )
    expect(Array.from(snapshot.tables.tally.columns.number.values)).toEqual([12, Number.NaN, 3])
    expect(snapshot.conflicts).toEqual([])
  })

  it('two made after the same state, with different values, are shown to a person; the later stands meanwhile', () => {
    const snapshot = fold(
      factOf(desk(), 'a1', amended, { of: cell, column: number, after: null, from: 1, to: 11, reason: 'slip' }),
      factOf(writer('tablet', Date.UTC(2031, 2, 1)), 'a2', amended, {
        of: cell,
        column: number,
        after: null,
        from: 1,
        to: 12,
        reason: 'slip',
      }),
    )
    expect(snapshot.tables.tally.columns.number.values[0]).toBe(12)
    expect(snapshot.conflicts).toMatchObject([
      {
        of: cell,
        column: number,
        choices: [
          { fact: 'a1', to: 11, by: 'walker of desk' },
          { fact: 'a2', to: 12, by: 'walker of tablet' },
        ],
      },
    ])
  })

  it('two that say the same are no conflict; nor are two once a person decided after one of them', () => {
    const author = desk()
    const one = factOf(author, 'a1', amended, { of: cell, column: number, after: null, from: 1, to: 11, reason: 'slip' })
    const same = factOf(author, 'a2', amended, { of: cell, column: number, after: null, from: 1, to: 11, reason: 'slip' })
    const other = factOf(author, 'a3', amended, { of: cell, column: number, after: null, from: 1, to: 12, reason: 'slip' })
    const decided = factOf(author, 'a4', amended, {
      of: cell,
      column: number,
      after: 'a3',
      from: 12,
      to: 11,
      reason: 'asked the observer',
    })
    expect(fold(one, same).conflicts).toEqual([])
    expect(fold(one, other).conflicts).toHaveLength(1)
    expect(fold(one, other, decided).conflicts).toEqual([])
    expect(fold(one, other, decided).tables.tally.columns.number.values[0]).toBe(11)
  })

  it('of one moment the greater id stands', () => {
    const at = desk()
    const [a, b] = ['a', 'b'].map((id, k) => ({
      ...factOf(at, id, amended, { of: cell, column: number, after: null, from: 1, to: 20 + k, reason: 'slip' }),
      at: '2031-02-01T00:00:00.000Z/0000/desk',
    })) as [Fact, Fact]
    expect(fold(b, a).tables.tally.columns.number.values[0]).toBe(21)
  })

  it('an amendment that was withdrawn no longer stands', () => {
    const author = desk()
    const amendment = factOf(author, 'a1', amended, { of: cell, column: number, after: null, from: 1, to: 11, reason: 'slip' })
    expect(
      fold(amendment, factOf(author, 'w', withdrawn, { of: 'a1', reason: 'no slip' })).tables.tally.columns.number.values[0],
    ).toBe(1)
  })

  it('a cell that waits is settled by a person, as written or as approximate', () => {
    const author = desk()
    const { number: settled } = fold(
      factOf(author, 's1', cellSettled, { of: 'sheet/tally/2#1', column: number, to: 4, approximate: true }),
      factOf(author, 's2', cellSettled, { of: cell, column: number, to: 9 }),
    ).tables.tally.columns
    expect([Array.from(settled.values), Array.from(settled.marks ?? [])]).toEqual([
      [9, 4, 3],
      [mark.asWritten, mark.approximate, mark.asWritten],
    ])
  })

  it('settled to nothing: the number is lost, never zero', () => {
    const { number: lost } = fold(factOf(desk(), 's', cellSettled, { of: cell, column: number, to: null })).tables.tally.columns
    expect([lost.values[0], lost.marks?.[0]]).toEqual([Number.NaN, mark.lost])
  })

  it('texts are corrected, and a name that nobody uses any more is no field and no kind', () => {
    const author = desk()
    const snapshot = fold(
      factOf(author, 'f', amended, {
        of: 'sheet/count/0#1',
        column: 'field',
        after: null,
        from: 'Wier',
        to: 'Weir',
        reason: 'spelling',
      }),
      factOf(author, 'k', amended, {
        of: 'sheet/tally/2#1',
        column: 'kind',
        after: null,
        from: 'bea',
        to: 'bee',
        reason: 'spelling',
      }),
    )
    const { field } = snapshot.tables.count.columns
    expect(Array.from(field.codes, (_, row) => textAt(field, row))).toEqual(['Weir', 'Weir', 'Ings'])
    expect(snapshot.fields.map(({ name }) => name)).toEqual(['Weir', 'Ings'])
    expect(snapshot.kinds.map(({ name }) => name)).toEqual(['bee', 'fly'])
  })

  it('a row of one batch is corrected in that batch; an address beyond its rows touches no other', () => {
    const author = desk()
    const { minutes } = fold(
      factOf(author, 'a', amended, { of: 'sheet/count/1#0', column: 'minutes', after: null, from: 15, to: 16, reason: 'slip' }),
      factOf(author, 'b', amended, {
        of: 'sheet/count/0#2',
        column: 'minutes',
        after: null,
        from: 1,
        to: 99,
        reason: 'no such row',
      }),
      factOf(author, 'c', amended, {
        of: 'sheet/count/9#0',
        column: 'minutes',
        after: null,
        from: 1,
        to: 99,
        reason: 'no such batch',
      }),
      factOf(author, 'd', amended, {
        of: 'sheet/count/0#0',
        column: 'mood',
        after: null,
        from: null,
        to: 'good',
        reason: 'no such column',
      }),
    ).tables.count.columns
    expect(Array.from(minutes.values)).toEqual([10, Number.NaN, 16])
  })

  it('a fact that a person wrote is corrected by its columns', () => {
    const author = desk()
    const snapshot = fold(
      factOf(author, 'weir', fieldDescribed, { field: 'Weir', crop: 'cherry', hectares: 2 }),
      factOf(author, 'a', amended, { of: 'weir', column: 'hectares', after: null, from: 2, to: 3, reason: 'measured again' }),
    )
    expect(snapshot.fields.find(({ name }) => name === 'Weir')).toMatchObject({ crop: 'cherry', hectares: 3 })
  })
})

describe('what was taken back', () => {
  const described = () => factOf(desk(), 'oxlea', fieldDescribed, { field: 'Oxlea' })
  const take = (id: string, of: string) => factOf(writer(id, Date.UTC(2031, 3, 1)), id, withdrawn, { of, reason: 'a mistake' })
  const has = (...facts: readonly Fact[]): boolean =>
    foldFacts([described(), ...facts]).fields.some(({ name }) => name === 'Oxlea')

  it('a fact, its withdrawal, the withdrawal of that, and so on', () => {
    expect(has()).toBe(true)
    expect(has(take('w1', 'oxlea'))).toBe(false)
    expect(has(take('w1', 'oxlea'), take('w2', 'w1'))).toBe(true)
    expect(has(take('w1', 'oxlea'), take('w2', 'w1'), take('w3', 'w2'))).toBe(false)
  })

  it('taken back twice, it takes both withdrawals to be taken back before it stands again', () => {
    expect(has(take('w1', 'oxlea'), take('w2', 'oxlea'), take('w3', 'w1'))).toBe(false)
    expect(has(take('w1', 'oxlea'), take('w2', 'oxlea'), take('w3', 'w1'), take('w4', 'w2'))).toBe(true)
  })

  it('withdrawals that name each other end, whatever they mean', () => {
    expect(typeof has(take('w1', 'w2'), take('w2', 'w1'))).toBe('boolean')
  })
})
