import { type Fact, makeFact, packColumns, rowsBrought, textColumn } from '@thrum/model'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { forgettingOf, whatIsForgotten, withoutForgotten } from '../../src/fact/forgetting.ts'
import { isSameCopy } from '../../src/fact/kept-of-two.ts'
import { author, field, forget, forgetName, sheet } from '../facts.ts'

describe('withoutForgotten', () => {
  const batch = sheet('spring')[1] as Fact

  it('identity: rows in any order, at once or one by one, twice or once, give the same bytes', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3]), fc.shuffledSubarray([0, 1, 2, 3]), (first, second) => {
        const atOnce = withoutForgotten(batch, [...first, ...second])
        const oneByOne = [...second, ...first, ...first].reduce((fact, row) => withoutForgotten(fact, [row]), batch)
        expect(isSameCopy(atOnce, oneByOne)).toBe(true)
      }),
      { numRuns: 100, seed: 2026 },
    )
  })

  it('gives the fact itself where nothing of it is to be forgotten', () => {
    expect(withoutForgotten(batch, [])).toBe(batch)
    expect(withoutForgotten(batch, [3])).toBe(batch)
    expect(withoutForgotten(field('Weir'), [2])).toEqual(field('Weir'))
  })

  it('leaves a batch of a newer version as it is, unless the whole of it is meant', () => {
    const newer = { ...batch, v: 9 }
    expect(withoutForgotten(newer, [0])).toBe(newer)
    expect(withoutForgotten(newer, [0, -1])).toEqual({ ...newer, body: { sheet: 'spring' }, data: null })
  })

  it('reads what is meant from the fact', () => {
    expect(whatIsForgotten(forget('field-Weir'))).toEqual({ fact: 'field-Weir', row: -1 })
    expect(whatIsForgotten(forget('spring-batch-0#2'))).toEqual({ fact: 'spring-batch-0', row: 2 })
    expect(whatIsForgotten(field('Weir'))).toBeNull()
    expect(whatIsForgotten({ ...forget('x'), body: {} })).toBeNull()
  })
})

describe('a name in the columns of a batch', () => {
  const person = 'Orla Invented'
  const forgetting = forgettingOf([forgetName(person, 'project of the test').body])
  const wordsOf = (table: string, name: string, word = person): readonly unknown[] => {
    const packed = packColumns([{ name, column: textColumn([word, 'Weir']) }])
    const body = { sheet: 's', table, batch: 0, first: 0, rows: 2, columns: [...packed.heads] }
    const fact = makeFact(rowsBrought, body, author(), { id: 'the batch', data: packed.data })
    const left = withoutForgotten(fact, [], forgetting).body.columns as readonly { readonly dictionary: readonly unknown[] }[]
    return left[0]?.dictionary ?? []
  }

  it.each(['owner', 'source', 'group', 'method 2', 'version', 'result', 'because', 'kind', 'sheet', 'from'])(
    'goes from a column %s that the file named itself',
    (name) => expect(wordsOf('count', name)).toEqual([expect.stringMatching(/^observer withheld/u), 'Weir']),
  )

  it('stays where a declared column holds kinds, methods or keys, and in addresses of rows', () => {
    expect(wordsOf('count', 'method')).toContain(person)
    expect(wordsOf('tally', 'kind')).toContain(person)
    expect(wordsOf('tally', 'of')).toContain(person)
    expect(wordsOf('heldLine', 'source')).toContain(person)
  })
})
