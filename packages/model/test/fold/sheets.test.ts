import { describe, expect, it } from 'vitest'
import { ThrumError } from '../../src/ground/index.ts'
import {
  type Fact,
  factorDescribed,
  fieldDescribed,
  foldFacts,
  redacted,
  rowAddress,
  sheetAccepted,
  sheetDiscarded,
  textAt,
  withdrawn,
} from '../../src/index.ts'
import { batchOf, type Cells, factOf, sheetOf, toldTallies, writer } from '../made-log.ts'

const counts: Cells = { field: ['Weir', 'Quern', 'Ings'], minutes: [10, 12, 15] }
const tallies: Cells = { count: [0, 1, 2], kind: ['bee', 'bee', 'fly'], number: [1, 2, 3] }
const made = (accepted = true): readonly Fact[] => sheetOf(writer(), 'sheet', { counts: [counts], tallies: [tallies], accepted })

describe('a sheet counts once it is accepted, or not at all', () => {
  it('accepted: its rows stand, each with its address', () => {
    const snapshot = foldFacts(made())
    expect(snapshot.sheets.map(({ sheet, file, fileHash }) => [sheet, file, fileHash])).toEqual([
      ['sheet', 'sheet.csv', 'hash of sheet'],
    ])
    expect(snapshot.unfinishedSheets).toEqual([])
    expect(toldTallies(snapshot)).toEqual(['0 bee 1', '1 bee 2', '2 fly 3'])
    expect(rowAddress(snapshot.tables.count, 2)).toBe('sheet/count/0#2')
    expect(rowAddress(snapshot.tables.tally, 0)).toBe('sheet/tally/1#0')
  })

  it('never accepted: told as unfinished, neither folded nor in the digest', () => {
    const author = writer()
    const before = foldFacts([factOf(author, 'weir', fieldDescribed, { field: 'Weir' })])
    const after = foldFacts([
      factOf(writer(), 'weir', fieldDescribed, { field: 'Weir' }),
      ...made(false),
      factOf(author, 'sheet/strip', factorDescribed, { factor: 'strip', assigned: 'at random' }, { subject: 'sheet' }),
    ])
    expect(after.unfinishedSheets).toEqual(['sheet'])
    expect(after.tables.count.rows).toBe(0)
    expect(after.assigned.size).toBe(0)
    expect(after.digest).toBe(before.digest)
  })

  it('accepted with a batch that is not there yet: unfinished, until it comes', () => {
    const facts = made()
    const late = facts.filter(({ id }) => id !== 'sheet/tally/1')
    expect(foldFacts(late).unfinishedSheets).toEqual(['sheet'])
    expect(foldFacts(late).tables.count.rows).toBe(0)
    expect(foldFacts([...late, ...facts]).tables.tally.rows).toBe(3)
  })

  it('discarded: gone from the tables, and told by its own fact', () => {
    const facts = made()
    const snapshot = foldFacts([...facts, factOf(writer('desk'), 'bin', sheetDiscarded, { sheet: 'sheet', reason: 'test' })])
    expect(snapshot.sheets).toEqual([])
    expect(snapshot.unfinishedSheets).toEqual([])
    expect(snapshot.tables.count.rows).toBe(0)
    expect(snapshot.digest).not.toBe(foldFacts(facts).digest)
  })

  it('identity: one sheet brought in two copies of a project is there once', () => {
    const here = sheetOf(writer('here'), 'sheet', { counts: [counts], tallies: [tallies] })
    const there = sheetOf(writer('there', Date.UTC(2030, 0, 1)), 'sheet', { counts: [counts], tallies: [tallies] })
    const merged = foldFacts([...here, ...there])
    expect(merged.tables.count.rows).toBe(3)
    expect(merged.digest).toBe(foldFacts(here).digest)
    expect(merged.digest).toBe(foldFacts(there).digest)
  })

  it('bytes that are damaged, or were lost, stop the fold with the words of a remedy', () => {
    for (const data of [null, Uint8Array.of(1, 2, 3)]) {
      const facts = made().map((fact): Fact => (fact.id === 'sheet/tally/1' ? { ...fact, data } : fact))
      expect(() => foldFacts(facts)).toThrow(ThrumError)
      expect(() => foldFacts(facts)).toThrow('model/batch/damaged')
    }
  })
})

describe('rows of tallies and their counts', () => {
  /** Three batches of two counts each, tallies over all of them in two batches. */
  const facts = sheetOf(writer(), 'sheet', {
    counts: [
      { field: ['a', 'b'], minutes: [1, 2] },
      { field: ['c', 'd'], minutes: [3, 4] },
      { field: ['e', 'f'], minutes: [5, 6] },
    ],
    tallies: [
      { count: [0, 1, 2, 3], kind: ['bee', 'bee', 'bee', 'bee'], number: [10, 11, 12, 13] },
      { count: [4, 5, 0], kind: ['bee', 'bee', 'fly'], number: [14, 15, 20] },
    ],
  })

  it('a tally stands with its count over batches, and with other sheets before it', () => {
    const before = sheetOf(writer('desk', Date.UTC(2030, 0, 1)), 'before', {
      counts: [{ field: ['z'], minutes: [9] }],
      tallies: [{ count: [0], kind: ['fly'], number: [1] }],
    })
    const snapshot = foldFacts([...facts, ...before])
    expect(toldTallies(snapshot)).toEqual([
      '0 fly 1',
      '1 bee 10',
      '2 bee 11',
      '3 bee 12',
      '4 bee 13',
      '5 bee 14',
      '6 bee 15',
      '1 fly 20',
    ])
  })

  it('a batch of counts that was forgotten takes its tallies along, and shifts no other to a count that is not its own', () => {
    const emptied = facts.map((fact): Fact => (fact.id === 'sheet/count/1' ? { ...fact, body: {}, data: null } : fact))
    const snapshot = foldFacts([
      ...emptied,
      factOf(writer('desk'), 'forget', redacted, { of: 'sheet/count/1', because: 'names' }),
    ])
    expect(snapshot.unfinishedSheets).toEqual([])
    expect(toldTallies(snapshot)).toEqual(['0 bee 10', '1 bee 11', '2 bee 14', '3 bee 15', '0 fly 20'])
    const { field, minutes } = snapshot.tables.count.columns
    expect(Array.from(field.codes, (_, row) => textAt(field, row))).toEqual(['a', 'b', 'e', 'f'])
    expect(Array.from(minutes.values)).toEqual([1, 2, 5, 6])
  })

  it('a count that was withdrawn takes its tallies along; a tally that was withdrawn leaves its count', () => {
    const snapshot = foldFacts([
      ...facts,
      factOf(writer('desk'), 'w1', withdrawn, { of: 'sheet/count/1#0', reason: 'twice' }),
      factOf(writer('desk'), 'w2', withdrawn, { of: 'sheet/tally/4#2', reason: 'not a fly' }),
    ])
    expect(toldTallies(snapshot)).toEqual(['0 bee 10', '1 bee 11', '2 bee 13', '3 bee 14', '4 bee 15'])
    expect(snapshot.tables.count.rows).toBe(5)
    expect(rowAddress(snapshot.tables.count, 2)).toBe('sheet/count/1#1')
  })

  it('a batch that was withdrawn as a whole is gone with its rows', () => {
    const gone = foldFacts([...facts, factOf(writer('desk'), 'w', withdrawn, { of: 'sheet/count/0', reason: 'twice' })])
    expect(toldTallies(gone)).toEqual(['0 bee 12', '1 bee 13', '2 bee 14', '3 bee 15'])
  })

  it('a row of any other table is taken back the same way', () => {
    const author = writer()
    const sprays = batchOf(author, 'diary', 'spray', 0, 0, { field: ['Weir', 'Ings'], substance: ['invented A', 'invented B'] })
    const [read] = sheetOf(author, 'diary', { counts: [], tallies: [], accepted: false })
    const snapshot = foldFacts([
      read as Fact,
      sprays,
      factOf(author, 'diary/accepted', sheetAccepted, { sheet: 'diary', batches: 1 }),
      factOf(author, 'w', withdrawn, { of: 'diary/spray/0#0', reason: 'never sprayed' }),
    ])
    const { spray } = snapshot.tables
    expect([spray.rows, textAt(spray.columns.substance, 0), rowAddress(spray, 0)]).toEqual([1, 'invented B', 'diary/spray/0#1'])
  })

  it('tallies of more rows than one batch holds stand with their counts', () => {
    const perBatch = 65_536
    const watches = 70_000
    const all = Array.from({ length: watches }, (_, k) => k)
    const parts = (size: number): readonly (readonly number[])[] => [all.slice(0, size), all.slice(size)]
    const large = sheetOf(writer(), 'large', {
      counts: parts(perBatch).map((rows) => ({ field: rows.map((k) => `field ${k % 8}`), minutes: rows.map((k) => k) })),
      tallies: parts(perBatch).map((rows) => ({ count: rows, kind: rows.map(() => 'bee'), number: rows.map((k) => k) })),
    })
    expect(large.filter(({ kind }) => kind === 'rows-brought')).toHaveLength(4)
    const snapshot = foldFacts(large)
    const { minutes } = snapshot.tables.count.columns
    const { number } = snapshot.tables.tally.columns
    expect(snapshot.tables.tally.rows).toBe(watches)
    const wrong = all.filter((row) => minutes.values[snapshot.tallyCount[row] ?? -1] !== number.values[row])
    expect(wrong).toEqual([])
    expect(rowAddress(snapshot.tables.count, 69_999)).toBe('large/count/1#4463')
  })
})
