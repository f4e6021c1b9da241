import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  amended,
  cellSettled,
  type Fact,
  factorDescribed,
  fieldDescribed,
  foldAsked,
  foldFacts,
  hivesLookedFor,
  hivesPlaced,
  isAboutAsking,
  kindDescribed,
  planMade,
  projectDescribed,
  questionLookedAt,
  redacted,
  sheetDiscarded,
  treatmentSet,
  withdrawn,
  worthSet,
} from '../../src/index.ts'
import { factOf, plain, sheetOf, writer } from '../made-log.ts'

/** A log with everything in it: two devices, corrections, withdrawals, sheets of every fate, facts of a newer version. */
function everything(): readonly Fact[] {
  const desk = writer('desk', Date.UTC(2031, 0, 1))
  const tablet = writer('tablet', Date.UTC(2031, 0, 1, 0, 0, 20))
  const counts = {
    field: ['Weir', 'Quern', 'Weir'],
    date: [22_404, 22_405, null],
    minutes: [10, 10, null],
    shade: ['none', 'deep', null],
  }
  const tallies = { count: [0, 0, 1, 2], kind: ['bee', 'fly', 'bee', 'bee'], number: [3, null, 0, 5] }
  const later = (id: string, fact: Fact): Fact => ({ ...fact, id, v: 2 })
  return [
    factOf(desk, 'project', projectDescribed, { project: 'ostrel-vale', title: 'Ostrel Vale' }),
    factOf(desk, 'weir', fieldDescribed, { field: 'Weir', crop: 'cherry', latitude: 40, longitude: 5 }),
    factOf(tablet, 'weir-again', fieldDescribed, { field: 'Weir', hectares: 2 }),
    factOf(desk, 'bee', kindDescribed, { kind: 'bee', group: 'honey bee' }),
    factOf(desk, 'strip-1', treatmentSet, { factor: 'strip', level: 'yes', field: 'Weir', assigned: 'at random' }),
    factOf(tablet, 'strip-2', treatmentSet, { factor: 'strip', level: 'no', field: 'Quern', assigned: 'chosen' }),
    factOf(desk, 'hives', hivesPlaced, { hives: 12, field: 'Weir', metres: 300, from: '2031-05-01' }),
    factOf(desk, 'looked-for', hivesLookedFor, { field: 'Weir', result: 'counted' }),
    factOf(tablet, 'plan', planMade, { lastVisit: '2031-06-01', primaryKind: 'bee' }),
    ...sheetOf(desk, 'first', { counts: [counts], tallies: [tallies] }),
    ...sheetOf(tablet, 'second', { counts: [counts, counts], tallies: [tallies, { ...tallies, count: [3, 4, 5, 1] }] }),
    factOf(tablet, 'second/shade', factorDescribed, { factor: 'shade', assigned: 'chosen' }, { subject: 'second' }),
    ...sheetOf(tablet, 'never', { counts: [counts], tallies: [tallies], accepted: false }),
    factOf(tablet, 'never/shade', factorDescribed, { factor: 'shade', assigned: 'at random' }, { subject: 'never' }),
    ...sheetOf(desk, 'gone', { counts: [counts], tallies: [tallies] }),
    factOf(desk, 'gone/discarded', sheetDiscarded, { sheet: 'gone', reason: 'the wrong valley' }, { subject: 'gone' }),
    factOf(desk, 'amend-1', amended, { of: 'first/tally/1#0', column: 'number', after: null, from: 3, to: 4, reason: 'slip' }),
    factOf(tablet, 'amend-2', amended, { of: 'first/tally/1#0', column: 'number', after: null, from: 3, to: 5, reason: 'slip' }),
    factOf(desk, 'settle', cellSettled, { of: 'first/tally/1#1', column: 'number', to: 7, approximate: true }),
    factOf(desk, 'take-row', withdrawn, { of: 'second/count/0#1', reason: 'another field' }),
    factOf(tablet, 'take-weir', withdrawn, { of: 'weir-again', reason: 'measured wrongly' }),
    factOf(desk, 'take-back', withdrawn, { of: 'take-weir', reason: 'it was right' }),
    factOf(desk, 'nest', fieldDescribed, { field: 'Nest', latitude: 41, longitude: 6 }),
    factOf(tablet, 'forget', redacted, { of: 'nest', because: 'an exact place' }),
    later('newer', factOf(tablet, 'newer', fieldDescribed, { field: 'Later' })),
    { ...factOf(tablet, 'unknown', fieldDescribed, { field: 'Weir' }), kind: 'nectar-measured' },
    factOf(desk, 'worth', worthSet, { question: 'what-differs', asked: '{}', worth: 2 }),
    factOf(tablet, 'look', questionLookedAt, { question: 'what-differs', asked: '{}', digest: 'd', verdict: 'shown' }),
  ]
}

describe('the order in which facts arrive', () => {
  const facts = everything()
  const expected = foldFacts(facts)

  it('identity: does not matter, to the digest or to anything else in the snapshot', () => {
    const told = plain(expected)
    fc.assert(
      fc.property(fc.shuffledSubarray([...facts], { minLength: facts.length }), (shuffled) => {
        expect(plain(foldFacts(shuffled))).toBe(told)
      }),
      { seed: 11, numRuns: 150 },
    )
  })

  it('identity: copies of facts from another device change nothing, wherever they lie', () => {
    const copies = facts.map((fact): Fact => ({ ...fact, at: fact.at.replace('2031', '2032'), by: 'another', device: 'zz' }))
    fc.assert(
      fc.property(fc.shuffledSubarray([...facts, ...copies], { minLength: facts.length * 2 }), (shuffled) => {
        expect(plain(foldFacts(shuffled))).toBe(plain(expected))
      }),
      { seed: 12, numRuns: 60 },
    )
  })

  it('identity: who read a file, and when, changes nothing: a sheet stands as of its acceptance', () => {
    // One machine read the file and left it; another read and accepted it. A third may have met either copy.
    const readEarlier = (sheet: string): readonly Fact[] =>
      facts.map((fact) =>
        fact.subject === sheet && fact.kind !== 'sheet-accepted'
          ? { ...fact, at: fact.at.replace('2031', '2030'), by: 'another', device: 'aa' }
          : fact,
      )
    for (const sheet of ['first', 'second']) expect(plain(foldFacts(readEarlier(sheet)))).toBe(plain(expected))
  })

  it('the log above holds what it should: the case is not an empty one', () => {
    expect(expected.tables.count.rows).toBe(8)
    expect(expected.tables.tally.rows).toBe(10)
    expect(expected.conflicts).toHaveLength(1)
    expect(expected.unfinishedSheets).toEqual(['never'])
    expect(expected.waitingFacts.map(({ id, because }) => `${id}: ${because}`)).toEqual([
      'newer: newer version',
      'unknown: unknown kind',
    ])
    expect(expected.fields.map(({ name, hectares }) => `${name} ${hectares}`)).toEqual(['Weir 2', 'Quern null'])
    expect([...expected.assigned]).toEqual([
      ['strip', 'not known'],
      ['shade', 'chosen'],
    ])
    expect(expected.worths).toHaveLength(1)
    expect(expected.looks).toHaveLength(1)
  })
})

describe('the digest', () => {
  const facts = everything()
  const without = (id: string): readonly Fact[] => facts.filter((fact) => fact.id !== id)

  it.each(['weir', 'first/tally/1', 'amend-1', 'take-row', 'take-weir', 'second/shade'])('changes without %s', (id) => {
    expect(foldFacts(without(id)).digest).not.toBe(foldFacts(facts).digest)
  })

  it.each(['never/read', 'never/count/0', 'never/shade', 'worth', 'look', 'unknown', 'newer'])('does not hang on %s', (id) => {
    expect(foldFacts(without(id)).digest).toBe(foldFacts(facts).digest)
  })

  it('about asking hangs on what was asked, and on nothing else', () => {
    const { askedDigest } = foldFacts(facts)
    expect(foldFacts(without('worth')).askedDigest).not.toBe(askedDigest)
    expect(foldFacts(without('weir')).askedDigest).toBe(askedDigest)
  })

  it('is the same whether a forgotten fact has been emptied already or not', () => {
    const emptied = facts.map((fact): Fact => (fact.id === 'nest' ? { ...fact, body: {} } : fact))
    expect(foldFacts(emptied).digest).toBe(foldFacts(facts).digest)
    expect(foldFacts(emptied).waitingFacts.map(({ id }) => id)).not.toContain('nest')
  })
})

describe('facts about asking that come to a snapshot', () => {
  const facts = everything()
  const more = [
    factOf(writer('desk', Date.UTC(2032, 0, 1)), 'worth-2', worthSet, { question: 'what-differs', asked: '{}', worth: 3 }),
    factOf(writer('zz', Date.UTC(2030, 0, 1)), 'look', questionLookedAt, {
      question: 'what-differs',
      asked: '{"between":"strip"}',
      digest: 'e',
      verdict: null,
    }),
  ]

  it('identity: give the snapshot of all facts, with the bytes of batches or without', () => {
    const before = foldFacts(facts)
    const whole = [...facts, ...more]
    const expected = plain(foldFacts(whole))
    expect(plain(foldAsked(before, whole))).toBe(expected)
    expect(plain(foldAsked(before, [...facts.map((fact) => ({ ...fact, data: null })), ...more]))).toBe(expected)
    expect(plain(before)).not.toBe(expected)
    expect(foldAsked(before, whole).tables).toBe(before.tables)
  })

  it('are told from all others, and from those that this version cannot read', () => {
    const asking = facts.filter(isAboutAsking).map(({ id }) => id)
    expect(asking).toEqual(['worth', 'look'])
    const [worth] = more
    expect(worth !== undefined && isAboutAsking({ ...worth, v: 99 })).toBe(false)
  })
})
