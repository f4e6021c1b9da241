import { describe, expect, it } from 'vitest'
import { answeredPair, ask, refusedPair } from '../asked.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

/** One watch a field: totals of the levels, in order. */
function between(levels: { readonly [level: string]: readonly number[] }): readonly CountRow[] {
  return Object.entries(levels).flatMap(([level, totals]) =>
    totals.map((number, k) => ({ field: `${level} ${k}`, level, minutes: 60, tallies: { bee: number } })),
  )
}

const refusal = (counts: readonly CountRow[], asked: Parameters<typeof ask>[1] = { between: 'level' }) =>
  refusedPair(ask(projectOfCounts({ counts }), asked))
const isAnswered = (counts: readonly CountRow[], asked: Parameters<typeof ask>[1] = { between: 'level' }): boolean =>
  ask(projectOfCounts({ counts }), asked).contrast.pairs[0]?.kind === 'estimated'

describe('refusals of a contrast of fields, methods 2.8', () => {
  it('fewer than three fields in a level, naming the level', () => {
    expect(refusal(between({ a: [9, 12, 14], b: [20, 31] }))).toEqual({ because: 'few-fields', level: 'b', fields: 2 })
    expect(isAnswered(between({ a: [9, 12, 14], b: [20, 31, 25] }))).toBe(true)
  })

  it('fewer than three fields that hold both', () => {
    const pairs = (fields: number): readonly CountRow[] =>
      Array.from({ length: fields }, (_, k) => k).flatMap((k) => [
        { field: `field ${k}`, level: 'a', minutes: 60, tallies: { bee: 9 + k } },
        { field: `field ${k}`, level: 'b', minutes: 60, tallies: { bee: 12 + k * k } },
      ])
    expect(refusal(pairs(2))).toEqual({ because: 'few-pairs', fields: 2 })
    expect(isAnswered(pairs(3))).toBe(true)
  })

  it('fewer than two degrees of freedom', () => {
    const crops = ['apple', 'cherry', 'plum', 'plum', 'plum', 'cherry']
    const counts = between({ a: [9, 12, 14], b: [20, 31, 25] })
    const inBlocks = (words: readonly string[]) => counts.map((row, k) => ({ ...row, crop: words[k] }))
    // 6 fields less an intercept, two blocks and the level leave 2; a fourth block leaves 1.
    expect(isAnswered(inBlocks(crops))).toBe(true)
    expect(refusal(inBlocks(['apple', 'cherry', 'plum', 'pear', 'plum', 'cherry']))).toEqual({ because: 'no-freedom', df: 1 })
  })

  it('levels that are blocks', () => {
    const counts = between({ a: [9, 12, 14], b: [20, 31, 25] }).map((row, k) => ({ ...row, crop: k < 3 ? 'apple' : 'plum' }))
    expect(refusal(counts)).toEqual({ because: 'lost' })
  })

  it('fields that all say exactly the same have no scatter to judge by', () => {
    expect(refusal(between({ a: [10, 10, 10], b: [10, 10, 10] }))).toEqual({ because: 'no-scatter' })
  })

  it('a level without an insect', () => {
    expect(refusal(between({ a: [9, 12, 14], b: [0, 0, 0] }))).toEqual({ because: 'level-without-insects', level: 'b' })
  })

  it('few insects, and mostly none: a rate is answered by thinning', () => {
    for (const totals of [
      { a: [0, 0, 40, 30], b: [0, 0, 0, 50] },
      { a: [1, 0, 3, 1], b: [0, 0, 5, 0] },
    ]) {
      const pair = answeredPair(ask(projectOfCounts({ counts: between(totals) }), { between: 'level' }))
      expect(pair.isThinned).toBe(true)
      expect(pair.contrast.limits).toBeDefined()
      expect(pair.fieldT.limits).toBeUndefined()
    }
  })

  it('fewer than five insects in a level; just five are answered', () => {
    expect(refusal(between({ a: [9, 12, 14], b: [0, 3, 1] }))).toEqual({
      because: 'few-in-level',
      level: 'b',
      insects: 4,
      least: 5,
    })
    expect(isAnswered(between({ a: [9, 12, 14], b: [1, 3, 1] }))).toBe(true)
  })

  it('of a relative count, more than half of the totals are 0; just half is answered', () => {
    const counts = (totals: { readonly [level: string]: readonly number[] }) =>
      between(totals).map((row) => ({ ...row, tallies: { ...row.tallies, fly: 30 } }))
    const asked = { between: 'level', against: 'fly' }
    expect(refusal(counts({ a: [0, 0, 40, 30], b: [0, 0, 0, 50] }), asked)).toEqual({
      because: 'mostly-zero',
      zeros: 5,
      totals: 8,
    })
    expect(isAnswered(counts({ a: [0, 0, 40, 30], b: [0, 0, 20, 50] }), asked)).toBe(true)
  })

  it('of a relative count, a mean total below 2.5; just 2.5 is answered', () => {
    const counts = (totals: { readonly [level: string]: readonly number[] }) =>
      between(totals).map((row, k) => ({ ...row, tallies: { ...row.tallies, fly: 30 + (k % 3) } }))
    const asked = { between: 'level', against: 'fly' }
    expect(refusal(counts({ a: [1, 2, 3], b: [2, 3, 3] }), asked)).toEqual({
      because: 'few-insects',
      mean: 14 / 6,
      least: 2.5,
    })
    expect(isAnswered(counts({ a: [1, 2, 3], b: [2, 3, 4] }), asked)).toBe(true)
  })

  it('before and after with controls: fewer than 1.5 in the poorest of the four groups, from six fields a group on', () => {
    const change = (treatedAfter: readonly number[]): readonly CountRow[] =>
      treatedAfter
        .map((_, k) => k)
        .flatMap((k) =>
          (['control', 'treated'] as const).flatMap((side) =>
            ['2031-05-02', '2031-05-20'].map((date, period) => ({
              field: `${side} ${k}`,
              side,
              date,
              minutes: 60,
              tallies: { bee: side === 'treated' && period === 1 ? (treatedAfter[k] ?? 0) : 9 + k * (period + 1) },
            })),
          ),
        )
    const asked = { between: 'side', since: '2031-05-10' }
    expect(refusal(change([1, 2, 1, 1, 2, 1]), asked)).toEqual({ because: 'few-insects', mean: 8 / 6, least: 1.5 })
    expect(isAnswered(change([1, 2, 2, 1, 2, 1]), asked)).toBe(true)
    expect(isAnswered(change([1, 2, 1]), asked)).toBe(true)
  })

  it('before and after with controls: the rules hold for the cells of each arm', () => {
    const cell = (field: string, side: string, period: number, number: number): CountRow => ({
      field,
      side,
      date: period === 0 ? '2031-05-02' : '2031-05-20',
      minutes: 60,
      tallies: { bee: number },
    })
    const counts = [0, 1, 2].flatMap((k) => [
      cell(`c${k}`, 'control', 0, 9 + k),
      cell(`c${k}`, 'control', 1, 12 + k * k),
      cell(`t${k}`, 'treated', 0, 0),
      cell(`t${k}`, 'treated', 1, 0),
    ])
    expect(refusal(counts, { between: 'side', since: '2031-05-10' })).toEqual({
      because: 'level-without-insects',
      level: 'treated',
    })
  })

  it('a relative count is refused for either kind', () => {
    const counts = between({ a: [9, 12, 14], b: [20, 31, 25] }).map((row, k) => ({
      ...row,
      tallies: { ...row.tallies, fly: k < 3 ? 8 : 0 },
    }))
    expect(refusal(counts, { between: 'level', against: 'fly' })).toEqual({ because: 'level-without-insects', level: 'b' })
  })

  it('a field of no effort is left out and named', () => {
    const counts = [...between({ a: [9, 12, 14], b: [20, 31, 25] }), { field: 'unwatched', level: 'b', tallies: { bee: 4 } }]
    const seen = ask(projectOfCounts({ counts }), { between: 'level' })
    expect(seen.design.leftOut).toEqual([{ because: 'no-effort', rows: [6], fields: ['unwatched'] }])
    expect(answeredPair(seen).contrast.df).toBe(4)
  })
})
