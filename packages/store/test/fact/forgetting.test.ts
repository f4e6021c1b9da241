import type { Fact } from '@thrum/model'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { whatIsForgotten, withoutForgotten } from '../../src/fact/forgetting.ts'
import { isSameCopy } from '../../src/fact/kept-of-two.ts'
import { field, forget, sheet } from '../facts.ts'

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
