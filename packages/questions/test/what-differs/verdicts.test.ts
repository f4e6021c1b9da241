import { describe, expect, it } from 'vitest'
import { checkAnswer } from '../answer-shape.ts'
import { cannotSay, canSay, headlineIn, said, stoppedBy, whatDiffersIn } from '../ask.ts'
import { stripProject } from '../projects.ts'

const strips = { between: 'strip', levels: ['no', 'yes'] } as const
const bees = { ...strips, kinds: ['bee'] } as const
const estimate = (answer: Awaited<ReturnType<typeof whatDiffersIn>>, id: string) => answer.estimates.find((own) => own.id === id)

describe('each verdict, from counts made up for it', () => {
  it.each([
    { ratio: 3, scatter: 0.1, verdict: 'shown', headline: /2\.\d\d times .* worth acting on\.$/u },
    { ratio: 3, scatter: 0.5, verdict: 'shown', headline: /the direction is shown, the size may be too small to matter\.$/u },
    { ratio: 1, scatter: 0.1, verdict: 'alike', headline: /alike for practical purposes/u },
    { ratio: 1.25, scatter: 0.1, verdict: 'alike', headline: /a difference between no and yes, too small to act on/u },
    { ratio: 1.67, scatter: 0.4, verdict: 'leaning', headline: /leaning towards more with yes, not enough to act on/u },
    { ratio: 0.6, scatter: 0.4, verdict: 'leaning', headline: /leaning towards fewer with yes, not enough to act on/u },
    { ratio: 1.4, scatter: 0.4, verdict: 'unsettled', headline: /not settled\. .* fits the counts/u },
  ])('ratio $ratio, scatter $scatter: $verdict', async ({ ratio, scatter, verdict, headline }) => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio, scatter, mean: 10 } } }), { ...bees, worth: 2 })
    expect(answer.verdict).toBe(verdict)
    expect(headlineIn(answer)).toMatch(headline)
    expect(estimate(answer, 'ratio/bee/yes')).toMatchObject({ role: 'headline', verdict, n: 12, counts: 'fields' })
    checkAnswer(answer)
  })

  it('leaning: 95 % includes 1, 90 % does not, and both can be read', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 1.67, scatter: 0.4, mean: 10 } } }), {
      ...bees,
      worth: 2,
    })
    const [at95, at90] = ['ratio/bee/yes', 'ratio/bee/yes/90'].map((id) => estimate(answer, id)?.interval)
    expect(at95?.low).toBeLessThan(1)
    expect(at95?.high).toBeGreaterThan(1)
    expect(at90?.low).toBeGreaterThan(1)
    expect(at90?.level).toBe(0.9)
    expect(cannotSay(answer)).toEqual(['That a difference in bee between no and yes has been shown.'])
  })

  it('unsettled: says how much more counting would settle it, and that absence is not to be read from it', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 1.4, scatter: 0.4, mean: 10 } } }), {
      ...bees,
      worth: 2,
    })
    expect(answer.next.map(said).join()).toMatch(/about \d+ more fields like these \(\d+ in all\) would settle it; more minutes/u)
    expect(cannotSay(answer).join()).toContain('the interval is too wide for that')
  })

  it('the reference is the level named first', async () => {
    const snapshot = stripProject({ kinds: { bee: { ratio: 3, mean: 10 } } })
    const [there, back] = [
      await whatDiffersIn(snapshot, { ...bees, worth: 2 }),
      await whatDiffersIn(snapshot, { ...bees, levels: ['yes', 'no'], worth: 2 }),
    ].map((answer) => answer.estimates[0])
    expect((there?.value ?? 0) * (back?.value ?? 0)).toBeCloseTo(1, 12)
  })
})

describe('S, the smallest ratio worth acting on', () => {
  const snapshot = stripProject({ kinds: { bee: { ratio: 1.5 }, fly: { ratio: 1 } } })

  it.each([
    [['bee'], 2],
    [['bee', 'fly'], 2],
    [undefined, 1.5],
  ])('has no silent default: for %j the suggested one is named', async (kinds, suggested) => {
    const asked = kinds === undefined ? strips : { ...strips, kinds }
    expect(await stoppedBy(whatDiffersIn(snapshot, asked))).toEqual({ code: 'questions/worth-needed', values: { suggested } })
  })

  it('decides between shown and alike over the same interval', async () => {
    const verdicts = []
    for (const worth of [1.2, 1.5, 2]) verdicts.push((await whatDiffersIn(snapshot, { ...bees, worth })).verdict)
    expect(verdicts).toEqual(['shown', 'shown', 'alike'])
  })

  it('set after the first look, it is said in the headline', async () => {
    const before = await whatDiffersIn(snapshot, { ...bees, worth: 2, worthSet: 'before-looking' })
    const after = await whatDiffersIn(snapshot, { ...bees, worth: 2, worthSet: 'after-looking' })
    const note = 'The smallest ratio worth acting on (2) was set after the answer had been looked at.'
    expect(headlineIn(before)).not.toContain(note)
    expect(headlineIn(after)).toBe(`${headlineIn(before)} ${note}`)
    expect(after.verdict).toBe(before.verdict)
  })
})

describe('a direction declared beforehand', () => {
  const noGain = 'bee: no gain worth acting on with yes (a fall is not excluded).'
  const lower = stripProject({ kinds: { bee: { ratio: 0.7, scatter: 0.4, mean: 10 } } })

  it('an upper limit below S rules out a gain: in the headline and in what may be said; the verdict stays', async () => {
    const plain = await whatDiffersIn(lower, { ...bees, worth: 2 })
    const expected = await whatDiffersIn(lower, { ...bees, worth: 2, expect: 'more' })
    expect(plain.verdict).toBe('unsettled')
    expect(expected.verdict).toBe('unsettled')
    expect(canSay(expected)).toContain(noGain)
    expect(headlineIn(expected)).toBe(`${headlineIn(plain)} ${noGain}`)
    expect(canSay(plain)).not.toContain(noGain)
  })

  it('the other direction says nothing of it, and mirrors it', async () => {
    expect(headlineIn(await whatDiffersIn(lower, { ...bees, worth: 2, expect: 'fewer' }))).not.toContain('worth acting on')
    const higher = stripProject({ kinds: { bee: { ratio: 1.4, scatter: 0.4, mean: 10 } } })
    expect(canSay(await whatDiffersIn(higher, { ...bees, worth: 2, expect: 'fewer' }))).toContain(
      'bee: no fall worth acting on with yes (a gain is not excluded).',
    )
  })

  it('where both directions are ruled out the verdict says so, and nothing is called open', async () => {
    const alike = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 1 } } }), { ...bees, worth: 2, expect: 'more' })
    expect(alike.verdict).toBe('alike')
    expect(canSay(alike).join()).not.toContain('is not excluded')
  })
})

describe('several asked together', () => {
  // A ratio whose 95 % interval excludes 1 and whose 98.3 % interval does not.
  const kinds = { bee: { ratio: 1.95, scatter: 0.4, mean: 10 }, fly: { ratio: 1 }, moth: { ratio: 1 } }
  const three = ['bee', 'fly', 'moth']
  const planned = { lastVisit: '2031-05-10', primaryKind: 'bee' }

  it('alone it is shown; with two more kinds the level is 1 - 0.05/3, and it is leaning', async () => {
    const snapshot = stripProject({ kinds })
    const alone = await whatDiffersIn(snapshot, { ...bees, worth: 2 })
    const together = await whatDiffersIn(snapshot, { ...strips, kinds: three, worth: 2 })
    expect(alone.verdict).toBe('shown')
    expect(estimate(together, 'ratio/bee/yes')?.verdict).toBe('leaning')
    expect(estimate(together, 'ratio/bee/yes/together')?.interval.level).toBeCloseTo(1 - 0.05 / 3, 12)
    // The plain 95 % interval stands beside it, the same as alone.
    expect(estimate(together, 'ratio/bee/yes')?.interval).toEqual(estimate(alone, 'ratio/bee/yes')?.interval)
    expect(together.method.choices.map(said).join(' ')).toContain('3 comparisons asked together')
    expect(together.method.checks.map(said).join(' ')).toContain('Holm p values')
    checkAnswer(together)
  })

  it('the kind that the plan declared primary before counting is asked alone; the others are not', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds, plan: planned }), { ...strips, kinds: three, worth: 2 })
    expect(estimate(answer, 'ratio/bee/yes')?.verdict).toBe('shown')
    expect(answer.verdict).toBe('shown')
    expect(estimate(answer, 'ratio/bee/yes/together')).toBeUndefined()
    expect(estimate(answer, 'ratio/fly/yes/together')?.interval.level).toBeCloseTo(1 - 0.05 / 3, 12)
    expect(answer.method.choices.map(said).join(' ')).toContain('bee was declared primary before counting')
    expect(answer.method.choices.map(said).join(' ')).toContain('3 comparisons asked together')
  })

  it('a plan made after counting began declares nothing', async () => {
    const snapshot = stripProject({ kinds })
    const late = {
      lastVisit: 22_409,
      primaryKind: 'bee',
      block: null,
      at: '2031-05-06T00:00:00.000Z/0000/tablet',
      address: 'plan',
    }
    const answer = await whatDiffersIn({ ...snapshot, plan: late }, { ...strips, kinds: three, worth: 2 })
    expect(estimate(answer, 'ratio/bee/yes')?.verdict).toBe('leaning')
    const onTheDay = { ...late, at: '2031-05-05T06:00:00.000Z/0000/tablet' }
    const timely = await whatDiffersIn({ ...snapshot, plan: onTheDay }, { ...strips, kinds: three, worth: 2 })
    expect(estimate(timely, 'ratio/bee/yes')?.verdict).toBe('shown')
  })

  it('the question is shown if one kind is, and alike only if all are', async () => {
    const strong = stripProject({ kinds: { bee: { ratio: 4 }, fly: { ratio: 1 } } })
    expect((await whatDiffersIn(strong, { ...strips, kinds: ['bee', 'fly'], worth: 2 })).verdict).toBe('shown')
    const even = stripProject({ kinds: { bee: { ratio: 1 }, fly: { ratio: 1 } } })
    const alike = await whatDiffersIn(even, { ...strips, kinds: ['bee', 'fly'], worth: 2 })
    expect(alike.verdict).toBe('alike')
    expect(headlineIn(alike)).toBe('2 comparisons asked together: bee (yes against no): alike, fly (yes against no): alike.')
  })

  it('three levels are two pairs against the reference, and m is kinds times pairs', async () => {
    const snapshot = stripProject({
      arm: 6,
      kinds: { bee: { ratio: 1 }, fly: { ratio: 1 } },
      change: (_, k) => ({ strip: ['no', 'narrow', 'wide'][Math.floor(k / 4) % 3] }),
    })
    const answer = await whatDiffersIn(snapshot, {
      between: 'strip',
      levels: ['no', 'narrow', 'wide'],
      kinds: ['bee', 'fly'],
      worth: 3,
    })
    const headlines = answer.estimates.filter(({ role, id }) => role === 'headline' && id.startsWith('ratio/'))
    expect(headlines.map(({ id }) => id)).toEqual(['ratio/bee/narrow', 'ratio/bee/wide', 'ratio/fly/narrow', 'ratio/fly/wide'])
    expect(estimate(answer, 'ratio/bee/wide/together')?.interval.level).toBeCloseTo(1 - 0.05 / 4, 12)
    checkAnswer(answer)
  })
})

describe('before the last visit that was planned', () => {
  const soon = { lastVisit: '2031-06-30' }
  const done = { lastVisit: '2031-05-14' }

  it('what is shown at the end is leaning before it, unless 99.9 % settles it', async () => {
    const kinds = { bee: { ratio: 2.2, scatter: 0.4, mean: 10 } }
    const early = await whatDiffersIn(stripProject({ kinds, plan: soon }), { ...bees, worth: 1.5 })
    const late = await whatDiffersIn(stripProject({ kinds, plan: done }), { ...bees, worth: 1.5 })
    expect([early.verdict, late.verdict]).toEqual(['leaning', 'shown'])
    expect(early.method.choices.map(said).join(' ')).toMatch(/An early look, .* only a 99\.9\u00a0% interval can settle it now/u)
    expect(late.method.choices.map(said).join(' ')).not.toContain('An early look')
    const strong = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 4 } }, plan: soon }), { ...bees, worth: 1.5 })
    expect(strong.verdict).toBe('shown')
    expect(headlineIn(strong)).toContain('99.9\u00a0% interval')
  })

  it('alike needs 99.9 % as well', async () => {
    const kinds = { bee: { ratio: 1, scatter: 0.22 } }
    expect((await whatDiffersIn(stripProject({ kinds, plan: done }), { ...bees, worth: 1.5 })).verdict).toBe('alike')
    expect((await whatDiffersIn(stripProject({ kinds, plan: soon }), { ...bees, worth: 1.5 })).verdict).toBe('unsettled')
  })

  it('without a plan counting is taken as finished, with a note', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds: { bee: { ratio: 3 } } }), { ...bees, worth: 2 })
    expect(answer.method.choices.map(said)).toContain('No plan says when counting ends; it is taken as finished.')
  })
})
