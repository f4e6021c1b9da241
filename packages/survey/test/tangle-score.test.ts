import { describe, expect, it } from 'vitest'
import { type Planted, type Structure, scoreDesign, type Watch } from '../../../trials/tangle-score.ts'
import { expectNear } from './near.ts'

// The trial's own measure, held against the handbook's values of R (methods 2.11): partial R2 = 1 - 1 / inflation.

const ordinary: Watch = {
  field: '',
  block: 'cherry',
  level: 0,
  period: 0,
  day: 120,
  year: 2031,
  hour: 13,
  minutes: 10,
  stage: 64,
  temperature: 20,
  observer: 'observer 1',
  position: 'edge',
}
const score = (structure: Structure, planted: Planted, watches: readonly Partial<Watch>[]) =>
  scoreDesign(
    structure,
    planted,
    watches.map((watch, k) => ({ ...ordinary, field: `field ${k}`, ...watch })),
  )
const arm = (k: number): 0 | 1 => (k < 4 ? 0 : 1)

describe('the measure that the trial of tangles scores by', () => {
  it('oracle: dates between fields', () => {
    const near = [2, 4, 5, 7, 6, 8, 9, 11].map((day, k) => ({ day: 100 + day, level: arm(k) }))
    const apart = [1, 2, 3, 4, 8, 9, 10, 11].map((day, k) => ({ day: 100 + day, level: arm(k) }))
    expectNear(score('between, own dates', 'date', near).planted, 0.551724)
    expectNear(score('between, own dates', 'date', apart).planted, 1 - 1 / 10.8)
  })

  it('oracle: dates in two blocks', () => {
    const watches = [10, 12, 13, 15, 60, 63, 64, 66].map((day, k) => ({
      day,
      block: k < 4 ? 'cherry' : 'plum',
      level: (k >> 1) % 2 === 0 ? (0 as const) : (1 as const),
    }))
    expectNear(score('between, own dates', 'date', watches).planted, 1 - 1 / 2.988235)
  })

  it('oracle: stages before and after with controls', () => {
    const before = [62, 63, 61, 63, 62, 64]
    const after = [66, 67, 65, 69, 68, 69]
    const watches = before.flatMap((stage, k) =>
      ([0, 1] as const).map((period) => ({
        field: `field ${k}`,
        level: k < 3 ? (0 as const) : (1 as const),
        period,
        stage: period === 0 ? stage : (after[k] as number),
      })),
    )
    expectNear(score('before/after with controls', 'stage', watches).planted, 1 - 1 / 7.25)
  })

  it('oracle: hours within fields, from the watches', () => {
    const watches = [0, 1, 2].flatMap((field) =>
      ([0, 1] as const).flatMap((level) =>
        [0, 1, 2, 3, 4].map((visit) => ({ field: `field ${field}`, level, hour: visit < 3 - level ? 11 : 15 })),
      ),
    )
    expectNear(score('within', 'hour', watches).planted, 0.04, 1e-9)
  })

  it('what is lost is aliased, what is crossed is sound, and what hardly differs is even', () => {
    const days = (shift: number) => [0, 1, 2, 3, 4, 5, 6, 7].map((k) => ({ day: 100 + shift * arm(k), level: arm(k) }))
    expect(score('between, own dates', 'date', days(9)).verdict).toBe('aliased')
    expect(score('between, own dates', 'date', days(1)).verdict).toBe('even')
    expect(score('between, own dates', 'date', days(0)).verdict).toBe('sound')
  })
})
