import { describe, expect, it } from 'vitest'
import { amended, type Fact, foldFacts, readCorrections, redacted, withdrawn } from '../../src/index.ts'
import { factOf, sheetOf, toldTallies, writer } from '../made-log.ts'

const author = writer()
const first = sheetOf(author, 'first', {
  counts: [{ field: ['Weir', 'Ings'] }],
  tallies: [{ count: [0, 1], kind: ['bee', 'bee'], number: [1, 2] }],
})
const second = sheetOf(author, 'second', {
  counts: [{ field: ['Oxlea'] }],
  tallies: [{ count: [0], kind: ['bee'], number: [7] }],
})
const cell = { of: 'first/tally/1#0', column: 'number', after: null, from: 1 } as const
/** What the second file, a mended version of the first, said of the rows of the first. */
const mended = [
  factOf(author, 'said', amended, { ...cell, to: 5, reason: 'as in second.csv', sheet: 'second' }),
  factOf(author, 'gone', withdrawn, { of: 'first/count/0#1', reason: 'no longer in second.csv', sheet: 'second' }),
]
const takeBack = (id: string, of: string): Fact => factOf(author, id, withdrawn, { of, reason: 'r' })
const told = (...facts: readonly Fact[]) => toldTallies(foldFacts([...first, ...second, ...mended, ...facts]))

describe('withdrawing a mended file', () => {
  it('takes its corrections and withdrawals along, and a withdrawal of the withdrawal brings them back', () => {
    expect(told()).toEqual(['0 bee 5', '1 bee 7'])
    const withdrawal = takeBack('w', 'second/read')
    expect(told(withdrawal)).toEqual(['0 bee 1', '1 bee 2'])
    expect(told(withdrawal, takeBack('ww', 'w'))).toEqual(['0 bee 5', '1 bee 7'])
  })

  it('and forgetting it does the same', () => {
    const forgotten = ['second/read', 'second/count/0', 'second/tally/1'].map((of) =>
      factOf(author, `forget ${of}`, redacted, { of, because: 'asked to' }),
    )
    expect(told(...forgotten)).toEqual(['0 bee 1', '1 bee 2'])
  })
})

describe('withdrawals', () => {
  it('that take back each other do not go round for ever', () => {
    const round = [takeBack('w1', 'w2'), takeBack('w2', 'w1'), takeBack('self', 'self')]
    expect(readCorrections([...first, ...round]).takenBack.size).toBeLessThan(4)
  })
})

describe('what is said of a forgotten row', () => {
  const said = [
    factOf(author, 'said', amended, { ...cell, to: 'Secret Person', reason: 'typo by Secret Person' }),
    takeBack('w', 'said'),
    takeBack('ww', 'w'),
  ]
  const forgotten = (of: string): Fact => factOf(author, `forget ${of}`, redacted, { of, because: 'asked to' })
  /** As a log keeps what it was told to forget: nothing but what it speaks of. */
  const emptied = said.map((fact) => ({ ...fact, body: { of: String(fact.body.of) } }))

  it('is out of the log with it, whether it was emptied yet or not', () => {
    for (const of of [cell.of, 'first/tally/1']) {
      const before = foldFacts([...first, ...said, forgotten(of)])
      const after = foldFacts([...first, ...emptied, forgotten(of)])
      expect(after.digest).toBe(before.digest)
      expect(after.waitingFacts).toEqual([])
      expect(foldFacts([...first, forgotten(of)]).digest).toBe(after.digest)
    }
  })
})
