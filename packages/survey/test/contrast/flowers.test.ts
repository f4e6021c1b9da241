import { describe, expect, it } from 'vitest'
import { ask } from '../asked.ts'
import { expectNear } from '../near.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

// Oracle: R 4.2.2, z<-log((Y+.5)/(10*F)); x<-log(F); l<-lm(z~x+level); exp(c(coef(l)["level"],confint(l,"level"))).
const flowers = [100, 200, 400, 800, 150, 250, 500, 900]

function projectOf(numbers: readonly number[], open: readonly number[] = flowers): readonly CountRow[] {
  return numbers.map((bee, k) => ({
    field: `field ${k}`,
    strip: k < 4 ? 'no' : 'yes',
    minutes: 10,
    flowers: open[k] ?? 0,
    area: 4,
    tallies: { bee },
  }))
}

const pairOf = (counts: readonly CountRow[], measure: 'flower' | 'time' | 'area') => {
  const pair = ask(projectOfCounts({ counts }), { between: 'strip', measure, window: 'all' }).contrast.pairs[0]
  if (pair?.kind !== 'estimated') throw new Error('the contrast was refused')
  return pair
}

describe('open flowers in a rate per flower', () => {
  it('oracle: visitors that do not rise with flowers make them a covariate', () => {
    const pair = pairOf(projectOf([18, 22, 19, 23, 35, 41, 37, 44]), 'flower')
    expect(pair.adjusted).toEqual(['flowers'])
    expectNear(Math.exp(pair.fieldT.estimate), 1.85552866)
    expect(pair.fieldT.df).toBe(5)
  })

  it('oracle: visitors that rise in proportion leave them an offset', () => {
    const pair = pairOf(projectOf([9, 22, 38, 85, 30, 52, 101, 170]), 'flower')
    expect(pair.adjusted).toEqual([])
    expectNear(Math.exp(pair.fieldT.estimate), 1.96590804)
  })

  it('a rate per time or area knows nothing of them', () => {
    for (const measure of ['time', 'area'] as const)
      expect(pairOf(projectOf([18, 22, 19, 23, 35, 41, 37, 44]), measure).adjusted).toEqual([])
  })

  it('levels that differ in flowers themselves are seen', () => {
    const even = pairOf(projectOf([9, 22, 38, 85, 30, 52, 101, 170]), 'flower')
    expect(even.flowersDiffer).toBe(false)
    const apart = pairOf(projectOf([9, 12, 8, 11, 30, 32, 28, 35], [100, 110, 95, 105, 400, 420, 380, 410]), 'flower')
    expect(apart.flowersDiffer).toBe(true)
  })
})
