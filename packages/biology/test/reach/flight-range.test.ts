import { describe, expect, it } from 'vitest'
import { kindClasses } from '../../src/kind/kind-class.ts'
import { independenceOf, refusalDistance, warningDistance } from '../../src/reach/flight-range.ts'

describe('independenceOf', () => {
  it('warns below 300 m for small bees and hover flies, 1 km for bumble bees, 3 km for honey bees', () => {
    const kinds = ['solitary-bee', 'hover-fly', 'bumble-bee', 'honey-bee'] as const
    expect(kinds.map(warningDistance)).toEqual([300, 300, 1000, 3000])
  })

  it.each(kindClasses)('%s: refused below 250 m, warned up to its range, independent from there', (kind) => {
    expect(independenceOf(kind, 0)).toBe('refused')
    expect(independenceOf(kind, refusalDistance - 0.1)).toBe('refused')
    expect(independenceOf(kind, refusalDistance)).toBe('within-range')
    expect(independenceOf(kind, warningDistance(kind) - 0.1)).toBe('within-range')
    expect(independenceOf(kind, warningDistance(kind))).toBe('independent')
  })
})
