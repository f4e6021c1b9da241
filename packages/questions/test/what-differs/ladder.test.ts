import type { Answer } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { dayOf } from '../../../survey/test/sound-project.ts'
import { cannotSay, canSay, headlineIn, isDesignSoundIn, said, sentences, whatDiffersIn, whoVisitsIn } from '../ask.ts'
import { stripProject } from '../projects.ts'

/**
 * The language ladder (methods handbook 0.3): which words the evidence allows. Everything an answer asserts is held against
 * it: all sentences but those under "may not be said".
 */
const asserted = (answer: Answer): readonly string[] => {
  const { claims, ...rest } = answer
  return [...sentences(rest), ...sentences(claims.canSay)]
}

/** Words no answer asserts, whatever the evidence. */
const neverAsserted = [
  /\bsignifican/iu,
  /\bp-values?\b/iu,
  /\bproved?\b/iu,
  /\bproof\b/iu,
  /\bbecause of\b/iu,
  /\bdue to\b/iu,
  /\bno effect\b/iu,
]
const causal = /\bcaus(?:e|es|ed|ing)\b/iu

const strips = { between: 'strip', levels: ['no', 'yes'], kinds: ['bee'], worth: 2 } as const
const kinds = { bee: { ratio: 3, mean: 8 }, fly: { ratio: 1 } }
/** Treated and control fields before and after a day between the visits, more bees after it where treated. */
const beforeAfter = (assigned: 'at random' | 'chosen') =>
  stripProject({
    kinds: { bee: { ratio: 1, mean: 8 }, fly: { ratio: 1 } },
    assigned,
    change: (row, k) => {
      const tallies = row.tallies as { readonly bee: number; readonly fly: number }
      const later = k % 4 >= 2 && Math.floor(k / 4) >= 6
      // A little scatter of the changes: with none at all no interval can be given.
      return { tallies: { ...tallies, bee: tallies.bee * (later ? 3 : 1) + ((k * 7) % 3) } }
    },
  })
const changed = { ...strips, since: dayOf(5) } as const

describe('the words an answer may use', () => {
  it('dealt out at random: caused, under these conditions; not beyond them', async () => {
    const answer = await whatDiffersIn(stripProject({ kinds, assigned: 'at random' }), strips)
    expect(headlineIn(answer)).toContain('yes caused, under these conditions,')
    expect(cannotSay(answer)).toEqual(['That yes does the same to bee in other crops, regions or seasons.'])
  })

  it.each(['chosen', 'not known'] as const)('%s: associated, and never a cause', async (assigned) => {
    const answer = await whatDiffersIn(stripProject({ kinds, assigned }), strips)
    expect(answer.verdict).toBe('shown')
    expect(headlineIn(answer)).toContain('yes was associated with')
    expect(asserted(answer).filter((sentence) => causal.test(sentence))).toEqual([])
    expect(cannotSay(answer)).toEqual(['That bee differs because of yes: the levels were not dealt out at random.'])
  })

  it('nobody said how the levels came to the fields: associated', async () => {
    expect(headlineIn(await whatDiffersIn(stripProject({ kinds }), strips))).toContain('was associated with')
  })

  it('before and after, with controls, chosen: changed so many times as much, and not proved', async () => {
    const answer = await whatDiffersIn(beforeAfter('chosen'), changed)
    expect(answer.verdict).toBe('shown')
    expect(headlineIn(answer)).toMatch(/yes changed \S+ times as much/u)
    expect(asserted(answer).filter((sentence) => causal.test(sentence))).toEqual([])
    expect(cannotSay(answer).join()).toContain('proved')
  })

  it('before and after without controls credits nothing', async () => {
    const answer = await whatDiffersIn(beforeAfter('chosen'), { kinds: ['bee'], since: dayOf(5), worth: 2 })
    expect(answer.verdict).toBe('design-blocks')
    expect(headlineIn(answer)).toContain('there is no control')
    expect(cannotSay(answer)).toEqual([
      `That the change on ${dayOf(5)} made a difference to bee.`,
      `That the change on ${dayOf(5)} has no effect on bee.`,
    ])
    expect(asserted(answer).filter((sentence) => causal.test(sentence) || /associated/u.test(sentence))).toEqual([])
  })

  it('fewer than three fields in a level: what was counted, in these fields; no word of more', async () => {
    const answer = await whatDiffersIn(stripProject({ arm: 2, kinds, assigned: 'at random' }), strips)
    expect(answer.verdict).toBe('design-blocks')
    expect(canSay(answer)[0]).toMatch(/^We counted bee in 4 fields: no: \d+ \(8 watches\), yes: \d+ \(8 watches\)\.$/u)
    expect(asserted(answer).filter((sentence) => causal.test(sentence) || /associated|higher in/u.test(sentence))).toEqual([])
    expect(answer.next.map(said).join()).toBe('More fields: one with no, one with yes.')
  })

  it('a verdict that shows nothing claims nothing, however the levels were dealt out', async () => {
    for (const ratio of [1, 1.4]) {
      const snapshot = stripProject({ kinds: { bee: { ratio, scatter: 0.4, mean: 8 } }, assigned: 'at random' })
      const answer = await whatDiffersIn(snapshot, strips)
      expect(['alike', 'unsettled', 'leaning']).toContain(answer.verdict)
      expect(asserted(answer).filter((sentence) => causal.test(sentence))).toEqual([])
    }
  })
})

describe('words that no answer asserts', () => {
  const projects = {
    'at random': stripProject({ kinds, assigned: 'at random' }),
    chosen: stripProject({ kinds, assigned: 'chosen' }),
    small: stripProject({ arm: 1, kinds }),
    'before and after': beforeAfter('chosen'),
    'no bees': stripProject({ kinds: { bee: { ratio: 1, mean: 0 }, fly: { ratio: 1 } } }),
    'nobody timed': stripProject({ kinds, change: () => ({ minutes: null }) }),
  }

  it.each(Object.entries(projects))('%s', async (_, snapshot) => {
    const answers = [
      await whatDiffersIn(snapshot, strips),
      await whatDiffersIn(snapshot, { ...strips, per: 'flower', expect: 'more' }),
      await whatDiffersIn(snapshot, changed),
      await whatDiffersIn(snapshot, { kinds: ['bee'], since: dayOf(5), worth: 2 }),
      await whatDiffersIn(snapshot, { between: 'kind', levels: ['bee', 'fly'], worth: 2 }),
      await whatDiffersIn(snapshot, { ...strips, against: 'fly' }),
      await whoVisitsIn(snapshot),
      await whoVisitsIn(snapshot, { by: 'field' }),
      await isDesignSoundIn(snapshot, strips),
    ]
    for (const answer of answers) {
      for (const word of neverAsserted) expect(asserted(answer).filter((sentence) => word.test(sentence))).toEqual([])
      expect(answer.claims.cannotSay.length).toBeGreaterThan(0)
      // Nor does what may not be said speak of significance.
      expect(cannotSay(answer).filter((sentence) => /significan|p-value/iu.test(sentence))).toEqual([])
    }
  })
})
