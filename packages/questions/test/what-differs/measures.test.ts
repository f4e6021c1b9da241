import { describe, expect, it } from 'vitest'
import { checkAnswer } from '../answer-shape.ts'
import { headlineIn, said, whatDiffersIn } from '../ask.ts'
import { stripProject } from '../projects.ts'

const strips = { between: 'strip', levels: ['no', 'yes'], kinds: ['bee'], worth: 2 } as const
const isTreated = (k: number): boolean => Math.floor(k / 4) >= 6
const isTreated16 = (k: number): boolean => Math.floor(k / 4) >= 16

describe('rates per flower and per area stand side by side', () => {
  it('asked per flower, the ratio per area stands beside it; asked per time, neither', async () => {
    const snapshot = stripProject({ kinds: { bee: { ratio: 3, mean: 8 } } })
    const perFlower = await whatDiffersIn(snapshot, { ...strips, per: 'flower' })
    const ids = perFlower.estimates.map(({ id }) => id)
    expect(ids).toContain('ratio/bee/yes/per-area')
    expect(headlineIn(perFlower)).toContain('visitors per flower and minute')
    const beside = perFlower.estimates.find(({ id }) => id === 'ratio/bee/yes/per-area')
    // Flowers and area are the same in every watch here, so both ratios are one.
    expect(beside?.value).toBeCloseTo(perFlower.estimates[0]?.value ?? 0, 12)
    expect(beside?.role).toBe('beside')
    const perTime = await whatDiffersIn(snapshot, strips)
    expect(perTime.estimates.map(({ id }) => id).filter((id) => id.includes('/per-'))).toEqual([])
    checkAnswer(perFlower)
  })

  it('asked per area, the ratio per time stands beside it', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 3, mean: 8 } } }), { ...strips, per: 'area' })
    expect(answer.estimates.map(({ id }) => id)).toContain('ratio/bee/yes/per-time')
  })

  it('where they point in opposite directions the verdict is held at leaning, and why is said', async () => {
    // Plots with a strip are four times as large, by a little more or less, and hold twice the bees: fewer per area, more per time.
    const snapshot = stripProject({
      kinds: { bee: { ratio: 2, mean: 8 } },
      change: (_, k) => ({ area: isTreated(k) ? 8 : 2 }),
    })
    const answer = await whatDiffersIn(snapshot, { ...strips, worth: 1.2, per: 'area' })
    const [perArea, perTime] = ['ratio/bee/yes', 'ratio/bee/yes/per-time'].map(
      (id) => answer.estimates.find((own) => own.id === id) ?? null,
    )
    expect(perArea?.interval.high).toBeLessThan(1)
    expect(perTime?.interval.low).toBeGreaterThan(1)
    expect(answer.verdict).toBe('leaning')
    const codes = answer.cautions.map(({ code }) => code)
    expect(codes).toContain('measures-disagree')
    // It hangs on the measure and not on single visits: without any of them it would be held back just the same.
    expect(codes).not.toContain('influential-visit')
    expect(headlineIn(answer)).toContain('not enough to act on')
  })

  it('a kind for which the other measure has no answer is opposed by nothing', async () => {
    // Before and after: most fields have no flowers counted and no bee. Per area the poorest group is too poor; flies are answered.
    const snapshot = stripProject({
      arm: 16,
      kinds: { bee: { ratio: 1, mean: 8 }, fly: { ratio: 1, mean: 10 } },
      change: ({ tallies }, k) => {
        const isAfter = k % 4 >= 2
        const date = isAfter ? `2031-05-2${k % 4}` : `2031-05-0${1 + (k % 4)}`
        if (Math.floor(k / 4) % 16 >= 6) return { date, flowers: null, tallies: { bee: 0, fly: 8 + (k % 5) } }
        const bee = Number(tallies?.bee ?? 0) * (isAfter && isTreated16(k) ? 0.15 : 0.5)
        return { date, tallies: { ...tallies, bee: Math.round(bee) } }
      },
    })
    const asked = { ...strips, kinds: ['bee', 'fly'], since: '2031-05-10', per: 'flower' as const }
    const answer = await whatDiffersIn(snapshot, asked)
    const ids = answer.estimates.map(({ id }) => id)
    expect(ids).toContain('ratio/bee/yes')
    expect([ids.includes('ratio/bee/yes/per-area'), ids.includes('ratio/fly/yes/per-area')]).toEqual([false, true])
    expect(answer.cautions.map(({ code }) => code)).not.toContain('measures-disagree')
  })

  it('where the levels themselves differ in open flowers, per area is the headline', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 3, mean: 8 } },
      change: (_, k) => ({ flowers: Math.round((isTreated(k) ? 600 : 200) * (1 + 0.02 * (Math.floor(k / 4) % 3))) }),
    })
    const answer = await whatDiffersIn(snapshot, { ...strips, per: 'flower' })
    expect(headlineIn(answer)).toContain('per area and minute')
    expect(answer.cautions.map(({ code }) => code)).toContain('flowers-differ')
    expect(answer.estimates.map(({ id }) => id)).toContain('ratio/bee/yes/per-flower')
    checkAnswer(answer)
  })

  it('a rate per flower without flowers is blocked, and what was counted may be said', async () => {
    const snapshot = stripProject({ kinds: { bee: { ratio: 3, mean: 8 } }, change: () => ({ flowers: null }) })
    const answer = await whatDiffersIn(snapshot, { ...strips, per: 'flower' })
    expect(answer.verdict).toBe('design-blocks')
    expect(headlineIn(answer)).toContain('flowers were not counted')
    expect(answer.claims.canSay.map(said).join()).toContain('We counted bee in')
    checkAnswer(answer)
  })
})

describe('counts outside the weather window', () => {
  it('are left out of the headline; the ratio with them stands beside it', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 3, mean: 8 } },
      change: (_, k) => (k % 4 === 3 ? { rain: 'rain', temperature: 8 } : {}),
    })
    const answer = await whatDiffersIn(snapshot, strips)
    expect(answer.receipt.rows.selected).toBe(36)
    expect(answer.estimates.map(({ id }) => id)).toContain('ratio/bee/yes/window-all')
    expect(answer.cautions.map(({ code }) => code)).toContain('outside-window')
    const all = await whatDiffersIn(snapshot, { ...strips, window: 'all' })
    expect(all.receipt.rows.selected).toBe(48)
    const beside = answer.estimates.find(({ id }) => id === 'ratio/bee/yes/window-all')
    expect(all.estimates[0]?.value).toBeCloseTo(beside?.value ?? 0, 12)
  })
})
