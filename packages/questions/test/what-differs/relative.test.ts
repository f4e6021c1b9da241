import { describe, expect, it } from 'vitest'
import { checkAnswer } from '../answer-shape.ts'
import { cannotSay, canSay, headlineIn, said, stoppedBy, whatDiffersIn, whoVisitsIn } from '../ask.ts'
import { stripProject } from '../projects.ts'

const strips = { between: 'strip', levels: ['no', 'yes'], worth: 2 } as const
const isTreated = (k: number): boolean => Math.floor(k / 4) >= 6
/** All strips were watched late in the bloom: the rate of every kind is tangled with it. */
const faded = stripProject({
  kinds: { bee: { ratio: 0.4, mean: 12 }, fly: { ratio: 0.4, mean: 12 } },
  change: (_, k) => ({ stage: (isTreated(k) ? 68 : 62) + (k % 2) / 2 }),
})

describe('where a rate is blocked by bloom', () => {
  it('the relative count is offered, with the caution that kinds may respond differently', async () => {
    const answer = await whatDiffersIn(faded, { ...strips, kinds: ['bee'] })
    expect(answer.verdict).toBe('design-blocks')
    expect(headlineIn(answer)).toMatch(/cannot tell what yes did: .*bloom/u)
    expect(canSay(answer).filter((sentence) => sentence.includes('kinds may respond differently'))).toHaveLength(1)
    const offered = answer.estimates.find(({ id }) => id === 'relative/bee/yes')
    expect(offered?.value).toBeGreaterThan(0.7)
    expect(offered?.value).toBeLessThan(1.4)
    expect(answer.estimates.filter(({ role }) => role === 'headline')).toEqual([])
    checkAnswer(answer)
  })

  it('asked against another kind, the same counts are answered', async () => {
    const answer = await whatDiffersIn(faded, { ...strips, kinds: ['bee'], against: 'fly' })
    expect(answer.verdict).toBe('alike')
    expect(headlineIn(answer)).toContain('visitors for each fly')
    checkAnswer(answer)
  })

  it('shares of kinds at each level may be said', async () => {
    const shares = canSay(await whatDiffersIn(faded, { ...strips, kinds: ['bee'] })).filter((own) =>
      own.includes('Of all visitors'),
    )
    expect(shares).toHaveLength(2)
    expect(shares[0]).toMatch(/^Of all visitors counted \(no\), over fields: bee \d\d\u00a0% \(.*\), fly \d\d\u00a0%/u)
  })

  it('a kind is not held against itself, nor against a group it is part of', async () => {
    expect(await stoppedBy(whatDiffersIn(faded, { ...strips, kinds: ['bee'], against: 'bee' }))).toEqual({
      code: 'questions/against-itself',
      values: { kind: 'bee' },
    })
  })
})

describe('kind against kind in the same watches', () => {
  const asked = { between: 'kind', levels: ['bee', 'fly'], worth: 2 } as const
  const project = (fly: number, arm = 3, scatter = 0.1) =>
    stripProject({ arm, kinds: { bee: { ratio: 1, mean: 20, scatter }, fly: { ratio: 1, mean: fly, scatter } } })

  it.each([
    { fly: 60, scatter: 0.1, verdict: 'shown', headline: /^fly: 3\.\d\d for each bee in the same watches/u },
    { fly: 20, scatter: 0.1, verdict: 'alike', headline: /about equally frequent/u },
    { fly: 30, scatter: 0.5, verdict: 'unsettled', headline: /^fly: not settled/u },
  ])('$fly flies beside 20 bees, scatter $scatter: $verdict', async ({ fly, scatter, verdict, headline }) => {
    const answer = await whatDiffersIn(project(fly, 3, scatter), asked)
    expect(answer.verdict).toBe(verdict)
    expect(headlineIn(answer)).toMatch(headline)
    expect(canSay(answer).at(-1)).toMatch(/^We counted \d+ fly and \d+ bee in 24 watches of 6 fields\.$/u)
    expect(cannotSay(answer)).toHaveLength(1)
    checkAnswer(answer)
  })

  it('several kinds asked together: the sentence names the level of the interval that decided', async () => {
    const kinds = { bee: { ratio: 1, mean: 20 }, fly: { ratio: 1, mean: 60 }, moth: { ratio: 1, mean: 60 } }
    const answer = await whatDiffersIn(stripProject({ arm: 3, kinds }), { ...asked, levels: ['bee', 'fly', 'moth'] })
    // Two comparisons: 1 - 0.05/2. The plain 95 % interval stands among the estimates.
    expect(canSay(answer)[0]).toContain('97.5\u00a0% interval')
    expect(answer.estimates.every(({ interval }) => interval.level === 0.95)).toBe(true)
    expect(headlineIn(answer)).toMatch(/^2 comparisons asked together: fly for each bee: shown.* moth for each bee: shown\.$/u)
  })

  it('two fields: these watches only, blocked, with what was counted', async () => {
    const answer = await whatDiffersIn(project(60, 1), asked)
    expect(answer.verdict).toBe('design-blocks')
    expect(canSay(answer)).toEqual([expect.stringMatching(/^We counted \d+ fly and \d+ bee in 8 watches of 2 fields\.$/u)])
    expect(answer.next.map(said)).not.toContain('Settled for what was asked.')
    checkAnswer(answer)
  })

  it('one of the two was never seen: nothing is shown, and nothing is called settled', async () => {
    const answer = await whatDiffersIn(project(0), asked)
    expect(answer.verdict).toBe('design-blocks')
    expect(canSay(answer)).toEqual(['We counted 0 fly and 472 bee in 24 watches of 6 fields.'])
    expect(answer.next.map(said)).toEqual(['fly: watch longer, or larger plots, or ask about kinds counted together.'])
    checkAnswer(answer)
  })

  it('neither was ever seen: it is still said what was looked at', async () => {
    const snapshot = stripProject({
      arm: 3,
      kinds: { bee: { ratio: 1, mean: 0 }, fly: { ratio: 1, mean: 0 }, moth: { ratio: 1 } },
    })
    const answer = await whatDiffersIn(snapshot, asked)
    expect(answer.verdict).toBe('design-blocks')
    expect(canSay(answer)).toEqual(['We counted 0 fly and 0 bee in 24 watches of 6 fields.'])
    checkAnswer(answer)
  })

  it('S set after the first look, and looks at other counts before, are said here too', async () => {
    const answer = await whatDiffersIn(project(60), { ...asked, worthSet: 'after-looking', looks: 2 })
    expect(headlineIn(answer)).toMatch(/\(2\) was set after the answer had been looked at\.$/u)
    expect(answer.cautions.map(({ code }) => code)).toContain('repeated-peeks')
  })

  it('needs two kinds, and says which there are', async () => {
    expect(await stoppedBy(whatDiffersIn(project(20), { between: 'kind', levels: ['bee'], worth: 2 }))).toEqual({
      code: 'questions/two-kinds-needed',
      values: { known: 'bee, fly' },
    })
  })

  it('S is needed here too', async () => {
    const { code } = await stoppedBy(whatDiffersIn(project(20), { between: 'kind', levels: ['bee', 'fly'] }))
    expect(code).toBe('questions/worth-needed')
  })

  it('three kinds are two comparisons, each at 1 - 0.05/2', async () => {
    const snapshot = stripProject({ arm: 3, kinds: { bee: { ratio: 1 }, fly: { ratio: 1, mean: 60 }, moth: { ratio: 1 } } })
    const answer = await whatDiffersIn(snapshot, { ...asked, levels: ['bee', 'fly', 'moth'] })
    expect(answer.verdict).toBe('shown')
    expect(answer.estimates.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['relative/fly/bee', 'shown'],
      ['relative/moth/bee', 'alike'],
    ])
  })
})

describe('what cancels is not asked for', () => {
  const kinds = { bee: { ratio: 3, mean: 20 }, fly: { ratio: 1, mean: 20 } }
  const asked = { ...strips, kinds: ['bee'], against: 'fly' } as const

  it('a relative count without a single minute is answered as with them, and tells no rate', async () => {
    const [timed, untimed] = [
      await whatDiffersIn(stripProject({ kinds }), asked),
      await whatDiffersIn(stripProject({ kinds, change: () => ({ minutes: null }) }), asked),
    ]
    expect(untimed.verdict).toBe('shown')
    expect(untimed.estimates[0]?.value).toBeCloseTo(timed.estimates[0]?.value ?? 0, 10)
    expect(untimed.cautions.map(({ code }) => code)).not.toContain('effort-unknown')
    expect(untimed.figures.map(({ kind }) => kind)).not.toContain('rates-by-level')
    checkAnswer(untimed)
  })

  it('a rate without a single minute is blocked, and shares and the relative count of those watches are offered', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds, change: () => ({ minutes: null }) }), { ...strips, kinds: ['bee'] })
    expect(answer.verdict).toBe('design-blocks')
    expect(answer.estimates.find(({ id }) => id === 'relative/bee/yes')?.value).toBeGreaterThan(2)
    expect(canSay(answer).filter((own) => own.startsWith('Of all visitors counted'))).toHaveLength(2)
    checkAnswer(answer)
  })

  it('kinds in the same watches: minutes are not needed; counts outside the window are left out unless asked for', async () => {
    const cold = (_: unknown, k: number) => ({ minutes: null, ...(k % 4 === 0 ? { temperature: 3 } : {}) })
    const snapshot = stripProject({ arm: 3, kinds: { bee: { ratio: 1 }, fly: { ratio: 1 } }, change: cold })
    const of = { between: 'kind', levels: ['bee', 'fly'], worth: 2 } as const
    const inside = await whatDiffersIn(snapshot, of)
    expect(inside.verdict).toBe('alike')
    expect(inside.cautions.map(({ code }) => code)).toEqual(['outside-window'])
    expect(inside.receipt.rows.selected).toBe(18)
    expect((await whatDiffersIn(snapshot, { ...of, window: 'all' })).receipt.rows.selected).toBe(24)
  })

  it.each([{ since: '2031-05-07' }, { against: 'fly' }, { step: 2 }, { expect: 'more' as const }])(
    'kinds in the same watches take no %j',
    async (more) => {
      const asking = whatDiffersIn(faded, { between: 'kind', levels: ['bee', 'fly'], worth: 2, ...more })
      expect((await stoppedBy(asking)).code).toBe('questions/not-of-kinds')
    },
  )
})

describe('what is offered and adjusted', () => {
  it('says for what, and stands beside the plain ratio', async () => {
    // All strips late in the bloom; where it is later still, flies are more.
    const snapshot = stripProject({
      kinds: { bee: { ratio: 1, mean: 30 }, fly: { ratio: 1, mean: 30 } },
      change: (row, k) => {
        const late = (Math.floor(k / 4) % 6) / 2
        const tallies = row.tallies as { readonly bee: number; readonly fly: number }
        return { stage: (isTreated(k) ? 68 : 62) + late, tallies: { ...tallies, fly: Math.round(tallies.fly * 1.3 ** late) } }
      },
    })
    const answer = await whatDiffersIn(snapshot, { ...strips, kinds: ['bee'] })
    expect(answer.verdict).toBe('design-blocks')
    const ids = answer.estimates.map(({ id }) => id)
    expect(ids).toContain('relative/bee/yes/unadjusted')
    expect(canSay(answer).join()).toMatch(/adjusted for (the )?bloom stage.*; as counted, \d\S* times/u)
    checkAnswer(answer)
  })
})

describe('shares where an absent kind may only not have been written down', () => {
  it('are among sightings, in words, units and both questions alike', async () => {
    const snapshot = stripProject({
      kinds: { bee: { ratio: 1 }, fly: { ratio: 1 } },
      change: (row, k) => ({
        zeros: 'not-known',
        tallies: k % 3 === 0 ? { bee: (row.tallies as { readonly bee: number }).bee } : row.tallies,
      }),
    })
    const blocked = await whatDiffersIn(snapshot, { ...strips, kinds: ['bee'] })
    expect(blocked.verdict).toBe('design-blocks')
    expect(canSay(blocked).join()).toContain('Of all sightings (no), over fields')
    const units = blocked.estimates.filter(({ id }) => id.startsWith('share/')).map(({ unit }) => unit.id)
    expect(new Set(units)).toEqual(new Set(['questions/unit/share-sightings']))
    const whole = await whoVisitsIn(snapshot, { by: 'strip' })
    const shareOf = (answer: typeof whole, id: string) => answer.estimates.find((own) => own.id === id)?.value
    expect(shareOf(blocked, 'share/bee/no')).toBeCloseTo(shareOf(whole, 'no/share/bee') ?? Number.NaN, 12)
    expect(canSay(whole).join()).toContain('of all sightings, over fields')
  })
})
