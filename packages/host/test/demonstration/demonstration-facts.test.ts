import { foldFacts, textAt } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { demonstrationFacts } from '../../src/demonstration/demonstration-facts.ts'
import { shippedSeed } from '../../src/demonstration/shipped-seed.ts'
import { authorAt, countRows, factsOf, projectOf } from './made-project.ts'

describe('the facts of the valley', () => {
  const facts = factsOf(shippedSeed)
  const snapshot = foldFacts(facts)

  it('fold whole: nothing waits, every sheet is accepted, nothing contradicts', () => {
    expect(snapshot.waitingFacts).toEqual([])
    expect(snapshot.unfinishedSheets).toEqual([])
    expect(snapshot.conflicts).toEqual([])
    expect(snapshot.sheets).toHaveLength(6)
  })

  it('hold what was promised', () => {
    const rows = Object.fromEntries(Object.values(snapshot.tables).map((table) => [table.name, table.rows]))
    expect(rows).toEqual({
      count: 160,
      tally: 640,
      setAside: 0,
      voucher: 120,
      sample: 240,
      weather: 365 + 366,
      habitat: 72,
      spray: 16,
    })
    expect(snapshot.fields.map(({ crop }) => crop).sort()).toEqual([
      ...new Array(4).fill('sunflower'),
      ...new Array(4).fill('sweet cherry'),
    ])
    expect(snapshot.fields.every(({ point, polygon, hectares, cultivar }) => point && polygon && hectares && cultivar)).toBe(true)
    expect(snapshot.kinds.map(({ name }) => name)).toEqual(['honey bee', 'bumble bee', 'small solitary bee', 'hover fly'])
    expect(snapshot.assigned.get('strip')).toBe('at random')
  })

  it('finish the plan with their last count, and name the primary kind before the first', () => {
    const dates = snapshot.tables.count.columns.date.values
    expect(snapshot.plan?.lastVisit).toBe(Math.max(...dates))
    expect(snapshot.plan?.primaryKind).toBe('bumble bee')
  })

  it('leave no cell of a count empty, and every kind looked for in every count', () => {
    for (const row of countRows(snapshot)) {
      expect([...row.kinds.values()].every((number) => Number.isInteger(number) && number >= 0)).toBe(true)
      expect(row.kinds.size).toBe(4)
      expect(row.flowers).toBeGreaterThan(0)
      expect(row.temperature).toBeGreaterThanOrEqual(15)
    }
    expect(textAt(snapshot.tables.count.columns.zeros, 0)).toBe('typed')
  })

  it('place every fact once', () => {
    expect(new Set(facts.map(({ id }) => id)).size).toBe(facts.length)
  })
})

describe('identity: the seed alone decides', () => {
  it('gives the same facts for the same seed, whoever writes them and whenever', () => {
    const here = factsOf('a')
    const there = demonstrationFacts({ seed: 'a', author: authorAt(Date.UTC(2029, 5, 1), 'other desk') })
    const plain = (facts: typeof here) => facts.map(({ id, kind, body, data }) => ({ id, kind, body, data }))
    expect(plain(there)).toEqual(plain(here))
    expect(foldFacts(there).digest).toBe(foldFacts(here).digest)
  })

  it('gives other facts for another seed', () => {
    expect(projectOf('a').digest).not.toBe(projectOf('b').digest)
    expect(projectOf('a').project?.id).not.toBe(projectOf('b').project?.id)
  })

  it('golden: the shipped log', () => {
    expect(foldFacts(factsOf(shippedSeed)).digest).toBe('f4123ce0166678ead9e20bd341bfa6ed468899c1e731c68d17c77bd1760143f2')
  })
})
