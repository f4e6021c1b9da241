import { describe, expect, it } from 'vitest'
import { dayOf } from '../../../survey/test/sound-project.ts'
import { checkAnswer } from '../answer-shape.ts'
import { canSay, said, whatDiffersIn } from '../ask.ts'
import { stripProject } from '../projects.ts'

const bees = { between: 'strip', levels: ['no', 'yes'], kinds: ['bee'] } as const
const widthOf = (low: number | null | undefined, high: number | null | undefined): number =>
  Math.log((high ?? Number.NaN) / (low ?? Number.NaN)) / 2

describe('what more counting would do', () => {
  it('before and after, with controls: every total of a unit carries counting noise', async () => {
    const change = (row: { readonly tallies?: unknown }, k: number) => {
      const tallies = row.tallies as { readonly bee: number }
      return { tallies: { bee: Math.max(0, tallies.bee + (((k * 7) % 11) - 5)) } }
    }
    const snapshot = stripProject({ kinds: { bee: { ratio: 1, mean: 8, scatter: 0.4 } }, assigned: 'at random', change })
    const answer = await whatDiffersIn(snapshot, { ...bees, since: dayOf(5), worth: 1.2 })
    expect(['unsettled', 'leaning']).toContain(answer.verdict)
    expect(answer.next.map(said).join()).toMatch(
      /more fields like these .* would settle it; more minutes|not to be settled by counting in fields like these/u,
    )
    checkAnswer(answer)
  })

  it('unequal arms: the width said to be enough is the width of the interval', async () => {
    // Three fields with a strip against nine without: as wide as the interval itself, not as of two arms of six.
    const snapshot = stripProject({
      kinds: { bee: { ratio: 1.3, scatter: 0.3, mean: 12 } },
      change: (_, k) => ({ strip: Math.floor(k / 4) % 4 === 3 ? 'yes' : 'no' }),
    })
    const first = await whatDiffersIn(snapshot, { ...bees, worth: 2 })
    const { low, high } = first.estimates.find(({ id }) => id === 'ratio/bee/yes')?.interval ?? {}
    const width = widthOf(low, high)
    for (const [target, isEnough] of [
      [width * 1.02, true],
      [width * 0.98, false],
    ] as const) {
      const answer = await whatDiffersIn(snapshot, { ...bees, worth: Math.exp(2 * target) })
      const told = answer.next.map(said).join()
      if (isEnough) expect(told).toMatch(/narrow enough|settled for what was asked/u)
      else expect(told).not.toContain('narrow enough')
    }
  })
})

describe('a direction declared beforehand, where the verdict is leaning', () => {
  it('is ruled out by the interval that decides, not by the narrower one that leans', async () => {
    const snapshot = stripProject({ kinds: { bee: { ratio: 1.67, scatter: 0.4, mean: 10 } } })
    const answer = await whatDiffersIn(snapshot, { ...bees, worth: 2 })
    const highAt = (id: string): number => answer.estimates.find((own) => own.id === id)?.interval.high ?? Number.NaN
    const between = (highAt('ratio/bee/yes') + highAt('ratio/bee/yes/90')) / 2
    const asked = await whatDiffersIn(snapshot, { ...bees, worth: between, expect: 'more' })
    expect(asked.verdict).toBe('leaning')
    expect(canSay(asked).join()).not.toContain('no gain worth acting on')
  })
})
