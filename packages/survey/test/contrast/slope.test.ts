import { describe, expect, it } from 'vitest'
import { type Asked, ask } from '../asked.ts'
import { expectNear } from '../near.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

// Oracle: R 4.2.2, lm() and t.test(); distances enter as ln(metres + 10), a step of 2 is twice as far (methods 1.7 and 2.8).
const pairOf = (counts: readonly CountRow[], asked: Asked) => {
  const pair = ask(projectOfCounts({ counts }), { window: 'all', ...asked }).contrast.pairs[0]
  if (pair === undefined) throw new Error('no pair')
  return pair
}

const metres = [20, 60, 110, 180, 250, 400, 600, 900]
const numbers = [42, 35, 30, 22, 25, 15, 14, 9]
const between = numbers.map(
  (bee, k): CountRow => ({ field: `field ${k}`, minutes: 30, hives: 4, hiveDistance: metres[k] ?? 0, tallies: { bee } }),
)

const edges = [5, 50, 200]
const counted = [
  [20, 12, 8],
  [30, 22, 9],
  [15, 14, 6],
  [25, 11, 10],
]
const within = counted.flatMap((row, k) =>
  row.map((bee, e): CountRow => ({ field: `field ${k}`, minutes: 10, edgeDistance: edges[e] ?? 0, tallies: { bee } })),
)

describe('slope of a measured level', () => {
  it('oracle: between fields', () => {
    const pair = pairOf(between, { between: 'hive distance', step: 2 })
    if (pair.kind !== 'estimated') throw new Error('refused')
    expectNear(Math.exp(pair.contrast.estimate), 0.7443906058)
    expect(pair.contrast.df).toBe(6)
  })

  it('oracle: within fields', () => {
    const pair = pairOf(within, { between: 'edge distance', step: 2 })
    if (pair.kind !== 'estimated') throw new Error('refused')
    expectNear(Math.exp(pair.contrast.estimate), 0.7795958528)
    expect(pair.contrast.df).toBe(3)
  })

  it('identity: two steps are one step twice', () => {
    const [one, two] = [2, 4].map((step) => pairOf(between, { between: 'hive distance', step }))
    if (one?.kind !== 'estimated' || two?.kind !== 'estimated') throw new Error('refused')
    expectNear(two.contrast.estimate, 2 * one.contrast.estimate, 1e-12)
  })

  it('refuses a step far beyond what was measured, and too few fields', () => {
    expect(pairOf(between, { between: 'hive distance', step: 1e6 })).toMatchObject({
      kind: 'refused',
      refusal: { because: 'beyond-range' },
    })
    expect(pairOf(between.slice(0, 2), { between: 'hive distance', step: 2 })).toMatchObject({
      kind: 'refused',
      refusal: { because: 'few-pairs' },
    })
  })

  it('a level that is no number has no slope, and is told', () => {
    const counts = between.map((row, k) => ({ ...row, strip: k % 2 === 0 ? 'yes' : 'no' }))
    expect(() => pairOf(counts, { between: 'strip', step: 2 })).toThrow('survey/factor/not-measured')
  })
})
