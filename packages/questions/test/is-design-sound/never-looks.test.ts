import type { Snapshot } from '@thrum/model'
import { createRng } from '@thrum/model/ground'
import { describe, expect, it } from 'vitest'
import { type CountRow, projectOfCounts } from '../../../survey/test/project-of-counts.ts'
import { checkAnswer } from '../answer-shape.ts'
import { canSay, headlineIn, isDesignSoundIn, said } from '../ask.ts'
import { type StripAsked, stripCounts } from '../projects.ts'

const asked = { between: 'strip', levels: ['no', 'yes'], kinds: ['bee'] } as const
const made: StripAsked = { kinds: { bee: { ratio: 1.5, scatter: 0.5, mean: 6 }, fly: { ratio: 1, mean: 6 } } }

/** The same project with the tallies of its counts dealt out among them anew. */
function permuted(seed: string, project: StripAsked = made): Snapshot {
  const rng = createRng(seed)
  const counts = stripCounts(project).counts
  const tallies = counts.map((row) => row.tallies)
  for (let k = tallies.length - 1; k > 0; k--) {
    const other = rng.below(k + 1)
    ;[tallies[k], tallies[other]] = [tallies[other], tallies[k]]
  }
  return projectOfCounts({
    ...stripCounts(project),
    counts: counts.map((row, k): CountRow => ({ ...row, tallies: tallies[k] ?? {} })),
  })
}

/** An answer without what names its data or draws it. */
const told = ({ figures: _, receipt: { digest: __, ...receipt }, ...rest }: Awaited<ReturnType<typeof isDesignSoundIn>>) => ({
  ...rest,
  receipt,
})

describe('is-design-sound', () => {
  const designs: { readonly [name: string]: StripAsked } = {
    sound: made,
    'few fields': { ...made, arm: 2 },
    'tangled with bloom': { ...made, change: (_, k) => ({ stage: k >= 24 ? 67 : 62 }) },
    'one observer each': { ...made, change: (_, k) => ({ observer: k >= 24 ? 'walker 2' : 'walker 1' }) },
  }

  it.each(Object.entries(designs))('%s: the numbers of insects are never looked at', async (_, design) => {
    const first = await isDesignSoundIn(projectOfCounts(stripCounts(design)), asked)
    for (const seed of ['a', 'b', 'c']) expect(told(await isDesignSoundIn(permuted(seed, design), asked))).toEqual(told(first))
    checkAnswer(first)
  })

  it('the designs above are not answered alike: there is something to be found', async () => {
    const verdicts = []
    for (const design of Object.values(designs)) verdicts.push((await isDesignSoundIn(permuted('a', design), asked)).verdict)
    expect(verdicts).toEqual([null, 'design-blocks', 'design-blocks', 'design-blocks'])
  })

  it('sound: says what the comparison rests on, and promises no difference', async () => {
    const answer = await isDesignSoundIn(permuted('a'), asked)
    expect(headlineIn(answer)).toBe(
      'The design carries this comparison: 6 fields with no, 6 fields with yes; nothing that was recorded is tangled with it.',
    )
    expect(canSay(answer)[0]).toBe('The comparison rests on 48 watches: 6 fields with no, 6 fields with yes.')
    expect(answer.verdict).toBeNull()
  })

  it('blocked: names what is tangled, and the cure is the next step', async () => {
    const answer = await isDesignSoundIn(permuted('a', designs['tangled with bloom']), asked)
    expect(headlineIn(answer)).toMatch(/^The design cannot carry this comparison: .*bloom stage/u)
    const cures = answer.cautions.flatMap(({ severity, cure }) => (severity === 'note' || cure === null ? [] : [said(cure)]))
    expect(answer.next.map(said)).toEqual([...new Set(cures)])
    expect(answer.next.length).toBeGreaterThan(0)
  })

  it('uses the suggested S where none was set, and says so', async () => {
    const choices = async (options: Parameters<typeof isDesignSoundIn>[1]) =>
      (await isDesignSoundIn(permuted('a'), options)).method.choices.map(said).join(' ')
    expect(await choices(asked)).toContain('A ratio of 2 is taken as the smallest worth acting on, as suggested; nobody set it.')
    expect(await choices({ between: 'strip' })).toContain('A ratio of 1.5 is taken')
    expect(await choices({ ...asked, worth: 3 })).toContain('A ratio of 3 (or 1/3) is taken')
  })
})
