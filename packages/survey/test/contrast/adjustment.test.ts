import { isoDate } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { answeredPair, ask, inflationBy } from '../asked.ts'
import { type CountRow, projectOfCounts } from '../project-of-counts.ts'

const day = (k: number): string => isoDate(22_400 + k)

function sixFields(columns: (k: number) => Partial<CountRow>, fields = 6): readonly CountRow[] {
  return Array.from({ length: fields }, (_, k) => ({
    field: `field ${k}`,
    level: k < fields / 2 ? 'a' : 'b',
    minutes: 60,
    tallies: { bee: 20 + ((7 * k) % 11) },
    ...columns(k),
  }))
}

const pairOf = (counts: readonly CountRow[], asked: Parameters<typeof ask>[1] = { between: 'level' }) =>
  answeredPair(ask(projectOfCounts({ counts }), asked))

describe('what enters the headline, by the design alone (methods 2.11)', () => {
  it('bloom stage whenever it varies between fields, though it is tangled with nothing', () => {
    const stages = [63, 64, 65, 63, 64, 65]
    const counts = sixFields((k) => ({ stage: stages[k] as number }))
    expect(inflationBy(ask(projectOfCounts({ counts }), { between: 'level' }), 'stage')).toBeCloseTo(1, 12)
    expect(pairOf(counts).adjusted).toEqual(['stage'])
  })

  it('not a stage that is as good as the same everywhere', () => {
    expect(pairOf(sixFields((k) => ({ stage: 64 + 0.1 * k }))).adjusted).toEqual([])
  })

  it('date where no stage was recorded', () => {
    const dates = [0, 4, 8, 0, 4, 8]
    expect(pairOf(sixFields((k) => ({ date: day(dates[k] as number) }))).adjusted).toEqual(['date'])
    const both = sixFields((k) => ({ date: day(dates[k] as number), stage: 64 }))
    expect(pairOf(both).adjusted).toEqual([])
  })

  it('others only above an inflation of 1.5, the greatest first, each while two degrees of freedom remain', () => {
    const temperatures = [15, 17, 19, 18, 20, 22]
    const hours = [600, 640, 700, 780, 730, 800]
    const counts = sixFields((k) => ({ temperature: temperatures[k] as number, start: hours[k] as number }))
    const seen = ask(projectOfCounts({ counts }), { between: 'level' })
    const pair = answeredPair(seen)
    expect(inflationBy(seen, 'hour')).toBeGreaterThan(inflationBy(seen, 'temperature') ?? 99)
    expect(inflationBy(seen, 'temperature')).toBeGreaterThan(1.5)
    // 6 - 2 leaves 4; the hour's two columns leave 2; a temperature would leave 1.
    expect(pair.adjusted).toEqual(['hour'])
    expect(pair.notAdjusted).toEqual([{ name: 'temperature', because: 'freedom' }])
    expect(pair.contrast.df).toBe(2)
    expect(pair.unadjusted.df).toBe(4)
  })

  it('never a nuisance from which the contrast cannot be told: that is said', () => {
    const pair = pairOf(sixFields((k) => ({ stage: k < 3 ? 62 : 65 })))
    expect(pair.adjusted).toEqual([])
    expect(pair.notAdjusted).toEqual([{ name: 'stage', because: 'rank' }])
    expect(pair.contrast).toEqual(pair.unadjusted)
  })

  it('before and after without control: a change that is the same everywhere is left out for rank', () => {
    const counts = sixFields(() => ({})).flatMap((row, k) =>
      [0, 1].map((period) => ({
        ...row,
        date: day(20 * period),
        stage: 62 + 3 * period,
        tallies: { bee: 20 + ((5 * k + 3 * period) % 11) },
      })),
    )
    const pair = pairOf(counts, { since: day(10) })
    expect(pair.adjusted).toEqual([])
    expect(pair.notAdjusted[0]).toEqual({ name: 'stage', because: 'rank' })
  })

  it('the same whatever was counted', () => {
    const columns = (k: number) => ({ stage: [63, 64, 66, 64, 65, 68][k] as number, temperature: 15 + ((3 * k) % 7) })
    const one = pairOf(sixFields(columns))
    const other = pairOf(sixFields((k) => ({ ...columns(k), tallies: { bee: 90 - ((13 * k) % 29) } })))
    expect(other.adjusted).toEqual(one.adjusted)
    expect(other.notAdjusted).toEqual(one.notAdjusted)
  })
})
